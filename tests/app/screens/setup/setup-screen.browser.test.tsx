import { afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { render } from 'vitest-browser-react';

import { SetupScreen } from '../../../../src/app/screens/setup/SetupScreen.tsx';
import { DocumentsProvider } from '../../../../src/app/state/documents.tsx';
import { openServices } from '../../../../src/app/state/open-services.ts';
import { ServicesContext, type Services } from '../../../../src/app/state/services.ts';
import { useView } from '../../../../src/app/state/view.ts';
import { demoKit } from '../../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../../src/core/plan/demo-shoot.ts';
import { putKitItem, removeKitItem } from '../../../../src/core/plan/edits.ts';
import { instantAtClock } from '../../../../src/core/units/civil-time.ts';
import { memoryRepository } from '../../../../src/storage/memory-repository.ts';
import '../../../../src/app/shell/theme.css';
import '../../../../src/app/ui/ui.css';

const at = (clock: string): number => instantAtClock('2027-05-14', clock, 'Europe/Rome') ?? NaN;

const find = (selector: string): HTMLElement => {
  const found = document.querySelector<HTMLElement>(selector);
  if (found === null) throw new Error(`nothing on the page is ${selector}`);
  return found;
};
const field = (name: string): HTMLElement => find(`[data-field="${name}"]`);
const isThere = (selector: string): boolean => document.querySelector(selector) !== null;
const figure = (name: string): string =>
  document.querySelector(`[data-figure="${name}"]`)?.textContent?.trim() ?? '';

let services: Services;
let ids = 0;

beforeAll(async () => {
  services = await openServices({
    repository: memoryRepository(),
    newId: () => `made-${(ids += 1)}`,
    nowMs: () => 0,
  });
});

/** The screen on a fresh demo shoot, ten days before its date unless said otherwise. */
const open = async (setupId: string, nowMs = at('12:00') - 10 * 86_400_000): Promise<Services> => {
  const repository = memoryRepository();
  await repository.create('kit', demoKit());
  await repository.create('shoot', demoShoot());
  ids = 0;
  useView.setState({ spotId: null, setupId, minuteMs: null, said: '' });
  const here = { ...services, repository, nowMs: () => nowMs };
  await render(
    <ServicesContext value={here}>
      <DocumentsProvider shootId="demo" kitId="kit" waiting={null}>
        <SetupScreen />
      </DocumentsProvider>
    </ServicesContext>,
  );
  await vi.waitFor(() => find('[data-first-figures="drawn"]'));
  return here;
};

const type = async (name: string, text: string): Promise<void> => {
  const input = field(name);
  await userEvent.fill(input, text);
  await userEvent.keyboard('{Enter}');
};
const choose = async (name: string, value: string): Promise<void> =>
  userEvent.selectOptions(field(name), value);
const press = async (selector: string): Promise<void> => userEvent.click(find(selector));

beforeEach(async () => {
  await page.viewport(1440, 900);
});
afterEach(() => vi.restoreAllMocks());

describe('every input moves its figure', () => {
  test.each([
    ['hold-stops', '1.5', 'patch-stops'],
    ['hold-stops', '1.5', 'in-hand'],
    ['hold-stops', '1.5', 'hold'],
    ['unlit-under', '8', 'problem'],
    ['start-clock', '20:20', 'patch-ev'],
    ['duration', '25', 'where-and-when'],
    ['bearing', '30', 'patch-ev'],
    ['tilt', '15', 'mean-ev'],
    ['focal-length', '60', 'mean-ev'],
    ['camera-distance', '7', 'camera'],
    ['camera-height', '1', 'camera'],
    ['people', '2', 'ends-key'],
    ['spacing', '1.2', 'ends-key'],
    ['face-height', '1.2', 'patch-place'],
    ['wish-aperture', '8', 'aperture'],
    ['stops-fill', '−2.6', 'power-fill'],
    ['head-count-key', '2', 'power-key'],
    ['distance-key', '2', 'power-key'],
    ['angle-key', '60', 'ends-key'],
    ['height-key', '4', 'ends-key'],
  ])('typing %s %s moves %s', async (name, text, moved) => {
    await open('quartet');
    const before = figure(moved);
    await type(name, text);
    await vi.waitFor(() => expect(figure(moved)).not.toBe(before));
  });

  test.each([
    ['hold-under', 'incident', 'hold'],
    ['orientation', 'portrait', 'patch-ev'],
    ['motion', 'walking', 'slowest-allowed'],
    ['role-fill', 'rim', 'fill-stops'],
    ['head-fill', 'head-600', 'power-fill'],
    ['modifier-key', 'octabox', 'power-key'],
    ['gel-key', 'cto-full', 'power-key'],
    ['lens', 'lens-85', 'camera-lens-note'],
  ])('choosing %s %s moves %s', async (name, value, moved) => {
    await open('quartet');
    const before = figure(moved);
    await choose(name, value);
    if (moved === 'camera-lens-note') await vi.waitFor(() => find('[data-note="focal-length"]'));
    else await vi.waitFor(() => expect(figure(moved)).not.toBe(before));
  });

  test('a grid on the key costs power, and a wider spread limit ends the note on the row', async () => {
    await open('quartet');
    const before = figure('power-key');
    await press('[data-field="grid-key"]');
    await vi.waitFor(() => expect(figure('power-key')).not.toBe(before));
    find('[data-note="spread-key"]');
    await type('spread-limit', '2');
    await vi.waitFor(() => expect(isThere('[data-note="spread-key"]')).toBe(false));
  });

  test('a tripod allows a slower shutter to people who stand still', async () => {
    await open('quartet');
    await choose('motion', 'still');
    await vi.waitFor(() => expect(figure('slowest-allowed')).toBe('1/30'));
    await press('[data-field="tripod"]');
    await vi.waitFor(() => expect(figure('slowest-allowed')).toBe('1/15'));
  });

  test('a panel ends the sun on the face of the cello player', async () => {
    await open('cello');
    expect(figure('problem')).toContain('The sun lights the face');
    await press('[data-field="shaded"]');
    await vi.waitFor(() => expect(figure('shutter')).toBe('1/250'));
  });

  test('another camera brings its own sync speed, and its sensor when that is taken', async () => {
    const { repository, authorId } = await open('quartet');
    const camera = demoKit().cameras['camera'];
    if (camera === undefined) throw new Error('the demo kit changed its ids');
    await repository.edit({
      kind: 'kit',
      id: 'kit',
      label: 'camera',
      edit: putKitItem('cameras', 'large', {
        ...camera,
        name: 'Large sensor',
        syncShutterS: 1 / 125,
        sensorWidthMm: 43.8,
        sensorHeightMm: 32.9,
      }),
      stamp: { entryId: 'large', authorId, atMs: 0 },
    });
    await vi.waitFor(() => find('[data-field="camera"] option[value="large"]'));
    await choose('camera', 'large');
    await vi.waitFor(() => expect(figure('sync')).toBe('1/125'));
    const before = figure('dark-ev');
    await press('[data-use-sensor]');
    await vi.waitFor(() => expect(figure('dark-ev')).not.toBe(before));
  });

  test('a head that is gone from the kit is a sentence that says what to do', async () => {
    const { repository, authorId } = await open('quartet');
    await repository.edit({
      kind: 'kit',
      id: 'kit',
      label: 'head',
      edit: removeKitItem('heads', 'head-400'),
      stamp: { entryId: 'gone', authorId, atMs: 0 },
    });
    await vi.waitFor(() =>
      expect(find('.set-this .gap').textContent).toContain('Choose another head below'),
    );
    await choose('head-fill', 'head-600');
    await vi.waitFor(() => expect(figure('shutter')).toBe('1/250'));
  });

  test('a patch of one’s own is read where it was put', async () => {
    await open('quartet');
    await press('[data-own-patch]');
    await vi.waitFor(() => field('patch-y'));
    const before = figure('patch-ev');
    await type('patch-y', '40');
    await vi.waitFor(() => expect(figure('patch-ev')).not.toBe(before));
    await vi.waitFor(() => expect(figure('patch-place')).toContain('40 % above it'));
    await press('[data-default-patch]');
    await vi.waitFor(() => expect(figure('patch-ev')).toBe(before));
  });

  test('a setup gets its own framing and goes back to its spot’s', async () => {
    await open('quartet');
    const before = figure('mean-ev');
    await type('bearing', '0');
    await vi.waitFor(() => expect(figure('mean-ev')).not.toBe(before));
    await press('[data-spot-framing]');
    await vi.waitFor(() => expect(figure('mean-ev')).toBe(before));
  });

  test('the minute moves by keys, and with it every figure of the light', async () => {
    await open('quartet');
    const before = figure('patch-ev');
    field('minute').focus();
    await userEvent.keyboard('{PageUp}');
    await vi.waitFor(() => expect(figure('patch-ev')).not.toBe(before));
    await press('[data-to-start]');
    await vi.waitFor(() => expect(figure('patch-ev')).toBe(before));
  });
});

describe('pins', () => {
  test('a pinned shutter takes the value shown, can be typed, and the rest is solved round it', async () => {
    await open('quartet');
    const power = figure('power-key');
    await press('[data-pin="shutter"]');
    await vi.waitFor(() =>
      expect((field('pinned-shutter') as HTMLInputElement).value).toBe('1/250'),
    );
    expect(figure('power-key')).toBe(power);
    await type('pinned-shutter', '1/125');
    await vi.waitFor(() => expect(figure('problem')).toContain('Short by'));
    await vi.waitFor(() => find('[data-fix="unpin"]'));
    await press('[data-fix="unpin"] button');
    await vi.waitFor(() => expect(figure('shutter')).toBe('1/250'));
  });

  test('aperture and ISO are typed as they are written', async () => {
    await open('quartet');
    await press('[data-pin="aperture"]');
    await vi.waitFor(() => field('pinned-aperture'));
    await type('pinned-aperture', 'f/8');
    await vi.waitFor(() => expect(figure('aperture')).toBe('f/8'));
    await press('[data-pin="aperture"]');
    await press('[data-pin="iso"]');
    await vi.waitFor(() => field('pinned-iso'));
    await type('pinned-iso', 'ISO 200');
    await vi.waitFor(() => expect(figure('iso')).toBe('ISO 200'));
  });

  test('nonsense in a pinned dial is named and changes nothing', async () => {
    await open('quartet');
    await press('[data-pin="aperture"]');
    await vi.waitFor(() => field('pinned-aperture'));
    const before = figure('aperture');
    await type('pinned-aperture', '0');
    await vi.waitFor(() =>
      expect(find('.dials .fault').textContent).toContain('found ‘0’, expected a number from 0.7'),
    );
    expect(before).toMatch(/^f\/\d/);
    expect(figure('aperture')).toBe(before);
  });

  test('pinned filters are exactly those that are ticked', async () => {
    await open('quartet');
    await press('[data-pin="filters"]');
    await vi.waitFor(() => field('filter-nd-2'));
    for (const id of ['nd-2', 'nd-3']) {
      const box = find(`[data-field="filter-${id}"]`);
      if (!(box instanceof HTMLInputElement)) throw new Error('expected a box to tick');
      if (!box.checked) await press(`[data-field="filter-${id}"]`);
    }
    await vi.waitFor(() => expect(figure('filters')).toContain('ND 2 stops (0.6)'));
    await vi.waitFor(() => expect(figure('filters')).toContain('ND 3 stops (0.9)'));
    await press('[data-field="filter-nd-2"]');
    await vi.waitFor(() => expect(figure('filters')).not.toContain('ND 2 stops'));
    expect(figure('filters')).toContain('ND 3 stops (0.9)');
  });

  test('a pinned power stays while distance moves the rest', async () => {
    await open('quartet');
    const power = figure('power-key');
    await press('[data-pin="power-key"]');
    await vi.waitFor(() => field('pinned-power-key'));
    await type('bearing', '305');
    await vi.waitFor(() => expect(figure('camera')).toContain('305°'));
    expect(figure('power-key')).toBe(power);
  });

  test.each(['hold', 'clock', 'framing', 'distance-fill', 'modifier-fill'])(
    'the pin on %s keeps its fixes from being offered',
    async (what) => {
      await open('quartet');
      await type('start-clock', '18:00');
      await vi.waitFor(() => find('[data-fixes="done"]'));
      await press(`[data-pin="${what}"]`);
      await vi.waitFor(() => find(`[data-pin="${what}"][aria-pressed="true"]`));
      await vi.waitFor(() => find('ul[data-fixes="done"], p[data-fixes="done"]'));
      const kinds = [...document.querySelectorAll('[data-fix]')].map((row) =>
        row.getAttribute('data-fix'),
      );
      expect(kinds).not.toContain(
        { hold: 'hold', clock: 'clock', framing: 'bearing' }[what] ?? what,
      );
    },
  );
});

describe('when it does not work', () => {
  test('a fix that is used gives a recipe, in one step that undo takes back', async () => {
    const { repository, newId, authorId } = await open('quartet');
    await type('start-clock', '18:00');
    await vi.waitFor(() => find('[data-fix="hold"] button'));
    await press('[data-fix="hold"] button');
    await vi.waitFor(() => expect(figure('in-hand')).toMatch(/^0\.[0-2] in hand$/));
    const undone = await repository.undo({
      documents: [{ kind: 'shoot', id: 'demo' }],
      stamp: { entryId: newId(), authorId, atMs: 0 },
    });
    expect(undone.ok && undone.value.label).toMatch(/^Less: hold/);
    await vi.waitFor(() => expect(figure('problem')).toContain('Short by'));
  });

  test('what the kit does not hold cannot be used', async () => {
    await open('quartet');
    await type('start-clock', '18:00');
    await vi.waitFor(() => find('[data-fix="sync-shutter"]'));
    expect((find('[data-fix="sync-shutter"] button') as HTMLButtonElement).disabled).toBe(true);
  });
});

describe('the real clock', () => {
  test('within an hour the screen stands at the present minute and counts down', async () => {
    await open('quartet', at('20:06'));
    expect(figure('minute')).toBe('20:06');
    await vi.waitFor(() => expect(figure('countdown')).toMatch(/^, in \d+ min$/));
  });

  test('on another day it stands at the start and counts nothing', async () => {
    await open('quartet');
    expect(figure('minute')).toBe('20:00');
    await vi.waitFor(() => expect(figure('next-change')).toMatch(/^20:\d\d$/));
    expect(isThere('[data-figure="countdown"]')).toBe(false);
  });
});

describe('setups', () => {
  test('are added, named, copied and deleted', async () => {
    await open('quartet');
    await userEvent.click(page.getByText('Setups: add, name, copy, delete'));
    await press('[data-add-setup]');
    await vi.waitFor(() => expect(figure('setup-name')).toBe('New setup, Pier head'));
    await type('setup-name', 'Walk on the pier');
    await vi.waitFor(() => expect(figure('setup-name')).toBe('Walk on the pier'));
    await press('[data-copy-setup]');
    await vi.waitFor(() => expect(figure('setup-name')).toBe('Walk on the pier, copy'));
    await press('[data-delete-setup]');
    await vi.waitFor(() => expect(figure('setup-name')).toBe('Two violins, wind'));
    expect(useView.getState().said).toBe('Walk on the pier, copy deleted; undo brings it back');
  });

  test('lights are added and taken out', async () => {
    await open('cello');
    await press('[data-field="shaded"]');
    await press('[data-add-light]');
    await vi.waitFor(() => find('[data-group^="light-made"]'));
    await vi.waitFor(() => expect(figure('fill-stops')).toBe('1.6 under'));
    await press('[data-remove-light^="made"]');
    await vi.waitFor(() => expect(figure('fill-stops')).toBe(''));
  });
});
