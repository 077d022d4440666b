import { beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { render } from 'vitest-browser-react';

import { KitScreen } from '../../../../src/app/screens/kit/KitScreen.tsx';
import { DocumentsProvider } from '../../../../src/app/state/documents.tsx';
import { openServices } from '../../../../src/app/state/open-services.ts';
import { ServicesContext, type Services } from '../../../../src/app/state/services.ts';
import { useView } from '../../../../src/app/state/view.ts';
import { demoKit } from '../../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../../src/core/plan/demo-shoot.ts';
import type { Kit } from '../../../../src/core/plan/kit.ts';
import { memoryRepository } from '../../../../src/storage/memory-repository.ts';
import '../../../../src/app/shell/theme.css';
import '../../../../src/app/ui/ui.css';

const find = (selector: string): HTMLElement => {
  const found = document.querySelector<HTMLElement>(selector);
  if (found === null) throw new Error(`nothing on the page is ${selector}`);
  return found;
};
const figure = (name: string): string =>
  document.querySelector(`[data-figure="${name}"]`)?.textContent?.trim() ?? '';
const press = async (selector: string): Promise<void> => userEvent.click(find(selector));
const type = async (within: string, name: string, text: string): Promise<void> => {
  const input = find(`${within} [data-field="${name}"]`);
  await userEvent.fill(input, text);
  await userEvent.keyboard('{Enter}');
};
/** Of a stop: '+0.7', '−1.0'. */
const stops = (text: string): number => Number(text.replace('−', '-'));

let services: Services;
let kit: Kit;

beforeAll(async () => {
  let ids = 0;
  services = await openServices({
    repository: memoryRepository(),
    newId: () => `made-${(ids += 1)}`,
    nowMs: () => 0,
  });
});

/** The shelves of the demo, one of them open. */
const open = async (shelf: string): Promise<void> => {
  const repository = memoryRepository();
  await repository.create('kit', demoKit());
  await repository.create('shoot', demoShoot());
  repository.observe('kit', 'kit', (read) => {
    if (read.ok) kit = read.value;
  });
  useView.setState({ spotId: null, setupId: null, minuteMs: null, said: '' });
  await render(
    <ServicesContext value={{ ...services, repository }}>
      <DocumentsProvider shootId="demo" kitId="kit" waiting={null}>
        <KitScreen />
      </DocumentsProvider>
    </ServicesContext>,
  );
  await vi.waitFor(() => find('[data-first-figures="drawn"]'));
  await press(`[data-shelf="${shelf}"]`);
};

const openItem = (id: string): void => {
  (find(`[data-item="${id}"]`) as HTMLDetailsElement).open = true;
};

beforeEach(async () => {
  await page.viewport(1440, 900);
});

describe('measure mine', () => {
  const HEAD = '[data-item="head-400"]';
  const through = async (modifierId: string): Promise<void> => {
    openItem('head-400');
    await userEvent.selectOptions(find(`${HEAD} [data-field="reading-modifier"]`), modifierId);
  };
  const inHead = (name: string): string =>
    find(`${HEAD} [data-figure="${name}"]`).textContent?.trim() ?? '';

  test('shows before keeping what changes: the head’s figure and every setup that uses it', async () => {
    await open('heads');
    await through('umbrella');
    expect(document.querySelector('[data-figure="reading-change"]')).toBeNull();
    await type(HEAD, 'reading-f-number', '8');
    await vi.waitFor(() => expect(inHead('reading-after')).toMatch(/^f\/8.*one metered shot/));
    expect(inHead('reading-before')).toMatch(/rated guide number/);
    const first = stops(inHead('reading-change'));
    // Two stops less on the meter are two stops less of light.
    await type(HEAD, 'reading-f-number', '4');
    await vi.waitFor(() => expect(stops(inHead('reading-change'))).toBeCloseTo(first - 2, 1));
    expect(inHead('reading-before-viola')).toMatch(/figure ± 0\.9|figure ± 1\.\d/);
    expect(inHead('reading-after-viola')).toMatch(/figure ± 0\.2/);
    expect(inHead('reading-after-quartet')).not.toBe(inHead('reading-before-quartet'));
    expect(document.querySelector('[data-figure="reading-before-cello"]')).toBeNull();
    expect(kit.heads['head-400']?.readings).toEqual({});

    await press(`${HEAD} [data-keep-reading]`);
    await vi.waitFor(() =>
      expect(kit.heads['head-400']?.readings['umbrella']?.fNumber).toBeCloseTo(4, 9),
    );
  });

  test('ambient as bright as all of it is refused with what was found; much of it is doubted', async () => {
    await open('heads');
    await through('umbrella');
    await type(HEAD, 'reading-f-number', '8');
    await type(HEAD, 'reading-ambient', '5.6');
    await vi.waitFor(() => expect(inHead('reading-doubt')).toMatch(/^Ambient is (49|50|51) %/));
    await type(HEAD, 'reading-ambient', '8');
    await vi.waitFor(() =>
      expect(find(`${HEAD} .measure > [role="alert"]`).textContent).toMatch(
        /^Ambient alone read f\/8; with the flash it must read more than that, found f\/8/,
      ),
    );
    expect((find(`${HEAD} [data-keep-reading]`) as HTMLButtonElement).disabled).toBe(true);
  });

  test('a distance of nothing changes nothing and is said', async () => {
    await open('heads');
    await through('umbrella');
    const before = inHead('reading-guide-number');
    await type(HEAD, 'reading-distance', '0');
    await vi.waitFor(() =>
      expect(find(`${HEAD} .measure-steps [role="alert"]`).textContent).toContain('0'),
    );
    expect(inHead('reading-guide-number')).toBe(before);
  });
});

describe('a focusing modifier', () => {
  test('takes rows of its own table, changes them and lets them go', async () => {
    await open('modifiers');
    await press('[data-add-setting="reflector-0"]');
    await vi.waitFor(() => find('[data-setting]'));
    await type('[data-setting]', 'setting-name', 'ring 3');
    await type('[data-setting]', 'setting-beam', '30');
    await type('[data-setting]', 'setting-stops', '−1.2');
    // 2 · 2 m · tan 15°.
    await vi.waitFor(() =>
      expect(figure('setting-line')).toBe('+1.2 stops in all, 1.07 m wide at 2 m'),
    );
    expect(Object.values(kit.modifiers['reflector']?.settings ?? {})).toMatchObject([
      { name: 'ring 3', beamDeg: 30, stops: -1.2 },
    ]);
    await press('[data-remove-setting]');
    await vi.waitFor(() => expect(kit.modifiers['reflector']?.settings).toEqual({}));
  });
});

describe('a stand in the wind', () => {
  test('never says a kilogram without its wind, and stays down above its limit', async () => {
    await open('stands');
    expect(figure('stand-ballast')).toMatch(/gusts up to 5\.0 m\/s$/);
    await type('[data-item="stand-heavy"]', 'ballast-gust', '12');
    await vi.waitFor(() =>
      expect(figure('stand-ballast')).toMatch(/kg .* gusts up to 12\.0 m\/s$/),
    );
    expect(figure('above-gust-limit')).toMatch(/limit of 10\.0 m\/s/);
    await type('[data-item="stand-heavy"]', 'ballast-height', '4.5');
    await vi.waitFor(() => expect(figure('above-height')).toMatch(/up to 3\.8 m; found 4\.5 m/));
  });
});

describe('the packing list', () => {
  test('counts, weighs and says what may fly', async () => {
    await open('packing');
    await vi.waitFor(() => find('[data-packing-list]'));
    expect(figure('pack-heads-head-600')).toBe('1');
    expect(figure('pack-modifiers-octabox-diffuser')).toBe('1');
    expect(figure('day-batteries-battery-90')).toMatch(/charge/);
    expect(find('[data-packing-list]').textContent).toContain('90 Wh each: flies in the cabin');
    expect(find('[data-packing-list]').textContent).toContain('ask your carrier');
    expect(figure('total-weight')).toMatch(/^\d+ kg$/);
  });
});
