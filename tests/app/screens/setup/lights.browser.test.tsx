import { produce } from 'immer';
import { beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { render } from 'vitest-browser-react';

import { SetupScreen } from '../../../../src/app/screens/setup/SetupScreen.tsx';
import { DocumentsProvider } from '../../../../src/app/state/documents.tsx';
import { openServices } from '../../../../src/app/state/open-services.ts';
import { ServicesContext, type Services } from '../../../../src/app/state/services.ts';
import { useView } from '../../../../src/app/state/view.ts';
import { demoKit } from '../../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../../src/core/plan/demo-shoot.ts';
import { editSetup, type Edit } from '../../../../src/core/plan/edits.ts';
import type { Shoot } from '../../../../src/core/plan/shoot.ts';
import { putSiteEntry } from '../../../../src/core/plan/site-edits.ts';
import { instantAtClock } from '../../../../src/core/units/civil-time.ts';
import { memoryRepository } from '../../../../src/storage/memory-repository.ts';
import '../../../../src/app/shell/theme.css';
import '../../../../src/app/ui/ui.css';

const tenDaysBefore = (instantAtClock('2027-05-14', '12:00', 'Europe/Rome') ?? NaN) - 864_000_000;

const find = (selector: string): HTMLElement => {
  const found = document.querySelector<HTMLElement>(selector);
  if (found === null) throw new Error(`nothing on the page is ${selector}`);
  return found;
};
const isThere = (selector: string): boolean => document.querySelector(selector) !== null;
const figure = (name: string): string =>
  document.querySelector(`[data-figure="${name}"]`)?.textContent?.trim() ?? '';
const value = (name: string): string => (find(`[data-field="${name}"]`) as HTMLInputElement).value;

let services: Services;
let ids = 0;

beforeAll(async () => {
  services = await openServices({
    repository: memoryRepository(),
    newId: () => `made-${(ids += 1)}`,
    nowMs: () => 0,
  });
});
beforeEach(async () => {
  await page.viewport(1440, 900);
});

const open = async (edit: Edit<Shoot> = () => undefined): Promise<void> => {
  const repository = memoryRepository();
  await repository.create('kit', demoKit());
  await repository.create('shoot', produce(demoShoot(), edit));
  useView.setState({ spotId: null, setupId: 'quartet', minuteMs: null, said: '' });
  await render(
    <ServicesContext value={{ ...services, repository, nowMs: () => tenDaysBefore }}>
      <DocumentsProvider shootId="demo" kitId="kit" waiting={null}>
        <SetupScreen />
      </DocumentsProvider>
    </ServicesContext>,
  );
  await vi.waitFor(() => find('[data-first-figures="drawn"]'));
};

const type = async (name: string, text: string): Promise<void> => {
  await userEvent.fill(find(`[data-field="${name}"]`), text);
  await userEvent.keyboard('{Enter}');
};
const choose = async (name: string, option: string): Promise<void> =>
  userEvent.selectOptions(find(`[data-field="${name}"]`), option);
const press = async (selector: string): Promise<void> => userEvent.click(find(selector));

describe('a light', () => {
  test('bounced off a scouted wall takes over what it reflects, shows its loss, and is aimed again', async () => {
    await open(
      putSiteEntry('pier', 'surfaces', 'hut', {
        order: 'a',
        name: 'Hut, white boards',
        kind: 'wall',
        reflectance: 0.7,
        note: '',
      }),
    );
    const distance = value('distance-key');
    await press('[data-field="bounced-key"]');
    await vi.waitFor(() =>
      expect(figure('bounce-key')).toMatch(/^\d\.\d stops under the same head/),
    );
    expect(isThere('[data-field="feather-key"]')).toBe(false);
    await choose('bounce-surface-key', 'hut');
    await vi.waitFor(() => expect(value('bounce-reflectance-key')).toBe('70'));
    await type('bounce-colour-key', '#B06040');
    await vi.waitFor(() => expect(figure('bounce-tint-key')).toMatch(/mired warmer/));
    await press('[data-field="bounced-key"]');
    await vi.waitFor(() => expect(figure('bounce-key')).toBe(''));
    expect(value('distance-key')).toBe(distance);
  });

  test('refuses a colour that is none, and a distance of nothing, and keeps what it had', async () => {
    await open();
    await press('[data-field="bounced-key"]');
    await vi.waitFor(() => find('[data-field="bounce-colour-key"]'));
    await vi.waitFor(() => expect(figure('bounce-key')).not.toBe(''));
    const loss = figure('bounce-key');
    await type('bounce-colour-key', 'brick');
    await vi.waitFor(() => expect(find('.fault').textContent).toContain('expected six digits'));
    await type('distance-key', '-2');
    await vi.waitFor(() =>
      expect([...document.querySelectorAll('.fault')].map((one) => one.textContent)).toContainEqual(
        expect.stringContaining('expected a number from 0.2 to 30 m'),
      ),
    );
    expect(figure('bounce-key')).toBe(loss);
  });

  test('shows softness, each face with its place, and the feet', async () => {
    await open();
    expect(figure('softness-key')).toMatch(/^hard, \d\.\d° wide/);
    expect(figure('faces-key')).toMatch(/best lit right end, .* least left end/);
    expect(figure('feet-key')).toMatch(/^−\d\.\d against the middle face/);
    await choose('pose', 'lying');
    await vi.waitFor(() => expect(figure('feet-key')).not.toMatch(/^−0\.[34] /));
  });

  test('blocked by the wind shows how to have it all the same, and uses it', async () => {
    await open();
    await choose('stand-key', 'stand-light');
    await vi.waitFor(() => expect(figure('wind-key')).toMatch(/not known/));
    await type('gust', '6');
    await vi.waitFor(() =>
      expect(figure('wind-key')).toMatch(/6\.0 m\/s, estimate, not an approval/),
    );
    await type('gust', '9');
    await vi.waitFor(() => expect(figure('blocked-key')).toBe('Key blocked by the wind'));
    expect(isThere('[data-figure="power-key"]')).toBe(false);
    await press('[data-wind-version] button');
    await vi.waitFor(() => expect(figure('blocked-key')).toBe(''));
    expect(value('stand-key')).toBe('stand-heavy');
  });
});

describe('uneven faces', () => {
  test('name what evens them with its cost, and one press does', async () => {
    await open(editSetup('quartet', { startClock: '20:30' }));
    await vi.waitFor(() => find('[data-note="spread-key"]'));
    await vi.waitFor(() => find('[data-spread-fix="distance"]'), { timeout: 10_000 });
    expect(find('[data-spread-fix="distance"]').textContent).toMatch(/costs \d\.\d of reach/);
    await press('[data-spread-fix="distance"] button');
    await vi.waitFor(() => expect(isThere('[data-note="spread-key"]')).toBe(false));
    expect(isThere('[data-spread-fixes]')).toBe(false);
  });

  test('two rows say what is sharp', async () => {
    await open();
    expect(figure('sharp-rows')).toBe('');
    await type('rows', '2');
    await vi.waitFor(() => expect(figure('sharp-rows')).toMatch(/the last row at \d\.\d+ m is/));
  });
});
