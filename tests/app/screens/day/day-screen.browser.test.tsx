import { beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { render } from 'vitest-browser-react';

import { DayScreen } from '../../../../src/app/screens/day/DayScreen.tsx';
import { DocumentsProvider } from '../../../../src/app/state/documents.tsx';
import { openServices } from '../../../../src/app/state/open-services.ts';
import { ServicesContext, type Services } from '../../../../src/app/state/services.ts';
import { useView } from '../../../../src/app/state/view.ts';
import { demoKit } from '../../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../../src/core/plan/demo-shoot.ts';
import { setupView } from '../../../../src/core/plan/setup-view.ts';
import type { Shoot } from '../../../../src/core/plan/shoot.ts';
import { clockTime, instantAtClock } from '../../../../src/core/units/civil-time.ts';
import { memoryRepository } from '../../../../src/storage/memory-repository.ts';
import '../../../../src/app/shell/theme.css';
import '../../../../src/app/ui/ui.css';

const ROME = 'Europe/Rome';
const at = (clock: string): number => instantAtClock('2027-05-14', clock, ROME) ?? NaN;

const find = (selector: string): HTMLElement => {
  const found = document.querySelector<HTMLElement>(selector);
  if (found === null) throw new Error(`nothing on the page is ${selector}`);
  return found;
};
const all = (selector: string): readonly HTMLElement[] => [
  ...document.querySelectorAll<HTMLElement>(selector),
];
const figure = (name: string): string => find(`[data-figure="${name}"]`).textContent?.trim() ?? '';
const block = (setupId: string): HTMLElement => find(`[data-block="${setupId}"]`);

let services: Services;
let ids = 0;

beforeAll(async () => {
  services = await openServices({
    repository: memoryRepository(),
    newId: () => `made-${(ids += 1)}`,
    nowMs: () => 0,
  });
});

beforeEach(async () => page.viewport(1440, 900));

type Opened = {
  readonly shoot: () => Promise<Shoot>;
  /** Labels of this page's own edits, the last first, taken back one by one. */
  readonly undoAll: () => Promise<readonly string[]>;
};

const open = async (shoot: Shoot = demoShoot()): Promise<Opened> => {
  const repository = memoryRepository();
  await repository.create('kit', demoKit());
  await repository.create('shoot', shoot);
  useView.setState({ spotId: null, setupId: null, minuteMs: null, said: '' });
  const here = { ...services, repository };
  await render(
    <ServicesContext value={here}>
      <DocumentsProvider shootId="demo" kitId="kit" waiting={null}>
        <div style={{ height: '840px' }}>
          <DayScreen />
        </div>
      </DocumentsProvider>
    </ServicesContext>,
  );
  await vi.waitFor(() => find('[data-first-figures="drawn"]'), { timeout: 10_000 });
  return {
    shoot: async () => {
      const read = await repository.read('shoot', 'demo');
      if (!read.ok) throw new Error('the shoot is gone');
      return read.value;
    },
    undoAll: async () => {
      const labels: string[] = [];
      for (;;) {
        const stamp = { entryId: `undo-${labels.length}`, authorId: here.authorId, atMs: 0 };
        const done = await repository.undo({ documents: [{ kind: 'shoot', id: 'demo' }], stamp });
        if (!done.ok) return labels;
        labels.push(done.value.label);
      }
    },
  };
};

/** The middle of a time on the first plot. */
const pointAt = (clock: string): { readonly x: number; readonly y: number } => {
  const handle = find('[role="slider"]');
  const plot = find('[data-plot]').getBoundingClientRect();
  const totalMin = Number(handle.ariaValueMax);
  const nowMin = Number(handle.ariaValueNow);
  const shown = (useView.getState().minuteMs ?? at('20:00')) - nowMin * 60_000;
  const share = (at(clock) - shown) / 60_000 / totalMin;
  return { x: plot.left + 12, y: plot.top + share * plot.height };
};

const pointer = (type: string, target: Element, x: number, y: number): void => {
  const shape = {
    bubbles: true,
    cancelable: true,
    clientX: x,
    clientY: y,
    pointerId: 1,
    button: 0,
    pointerType: 'mouse',
  };
  target.dispatchEvent(new PointerEvent(type, shape));
};
const frame = (): Promise<void> => new Promise((done) => requestAnimationFrame(() => done()));

describe('the columns', () => {
  test('each spot has its day with sky, ambient and reach, and each setup stands there with its answer', async () => {
    await open();
    expect(all('[data-column]').map(({ dataset }) => dataset['column'])).toEqual([
      'pier',
      'lighthouse',
      'karst',
      'arches',
    ]);
    for (const name of ['band', 'patch', 'ambient', 'reach'])
      for (const path of all(`[data-column] .${name}`))
        expect(path.getAttribute('d')).toMatch(/^M/);
    expect(block('quartet').ariaLabel).toMatch(
      /^Four on the pier head, 20:00 to 20:40, f\/\d(\.\d)? .*in hand$/,
    );
    expect(block('cello').ariaLabel).toMatch(/ambient lights the face/);
    expect(all('[data-column="pier"] [data-span="out-of-reach"]').length).toBeGreaterThan(0);
    expect(all('[data-column="pier"] [data-span="too-dark"]').length).toBeGreaterThan(0);
  });

  test('a spot without setups shows its light and says so', async () => {
    const demo = demoShoot();
    await open({ ...demo, setups: {} });
    expect(find('[data-column="pier"]').textContent).toContain('light only');
    expect(find('[data-column="pier"] .band').getAttribute('d')).toMatch(/^M/);
    expect(find('[data-column="pier"] .reach').getAttribute('d')).toBe('');
    expect(figure('day-patch-ev')).toMatch(/^EV \d+\.\d$/);
  });

  test('where clocks differ, every column says its own', async () => {
    const demo = demoShoot();
    const arches = demo.spots['arches'];
    if (arches === undefined) throw new Error('the demo lost a spot');
    await open({ ...demo, spots: { ...demo.spots, arches: { ...arches, zone: 'Europe/London' } } });
    expect(find('[data-column="arches"] header').textContent).toContain('UTC+1');
    expect(find('[data-column="pier"] header').textContent).toContain('UTC+2');
  });

  test('asked for the night, the scale starts at EV −6', async () => {
    await open();
    expect(find('.ev-axis').textContent).toBe('481216');
    await userEvent.click(find('[data-field="day-night"]'));
    expect(find('.ev-axis').textContent).toBe('−40481216');
  });

  test('the setup under all five skies: what is in hand at its start, clear to heavy overcast', async () => {
    await open();
    await userEvent.click(find('[data-field="day-all-skies"]'));
    await vi.waitFor(() => expect(all('[data-sky-column] .reach')).toHaveLength(5));
    expect(all('[data-sky-column]').map(({ dataset }) => dataset['skyColumn'])).toEqual([
      'clear', 'haze', 'broken-cloud', 'bright-overcast', 'heavy-overcast',
    ]); // prettier-ignore
    expect(inHand('heavy-overcast')).toBeGreaterThan(inHand('bright-overcast'));
    expect(inHand('bright-overcast')).toBeGreaterThan(inHand('clear'));
  });
});

describe('the cursor', () => {
  test('keys move it by a minute, ten and an hour, and what they leave is chosen', async () => {
    await open();
    find('[role="slider"]').focus();
    await userEvent.keyboard('{ArrowUp}');
    expect(clockTime(useView.getState().minuteMs ?? NaN, ROME)).toBe('19:59');
    await userEvent.keyboard('{Shift>}{ArrowDown}{/Shift}{PageUp}');
    expect(clockTime(useView.getState().minuteMs ?? NaN, ROME)).toBe('19:09');
    expect(find('[role="slider"]').ariaValueText).toBe('19:09');
    expect(figure('day-clock')).toBe('19:09');
  });

  test('a mouse over the columns looks at the minute it stands at and chooses nothing', async () => {
    await open();
    const { x, y } = pointAt('18:00');
    pointer('pointermove', find('[data-plot]'), x, y);
    await frame();
    await vi.waitFor(() => expect(figure('day-clock')).toBe('18:00'));
    expect(useView.getState().minuteMs).toBeNull();
    find('[data-day-grid]').dispatchEvent(
      new PointerEvent('pointerout', { bubbles: true, pointerType: 'mouse' }),
    );
    await vi.waitFor(() => expect(figure('day-clock')).toBe('20:00'));
  });

  test('at rest the panel gives what the setup solved for that very minute gives', async () => {
    await open();
    find('[role="slider"]').focus();
    await userEvent.keyboard('{ArrowDown>7/}');
    expect(figure('day-clock')).toBe('20:07');
    const view = setupView({
      shoot: demoShoot(),
      kit: demoKit(),
      setupId: 'quartet',
      instantMs: at('20:07'),
    });
    if (!view.ok || !view.value.answer.ok) throw new Error('the quartet does not work at 20:07');
    const { inHandStops, limitingRole } = view.value.answer.value.recipe;
    expect(limitingRole).not.toBeNull();
    expect(figure('day-in-hand')).toBe(
      `${inHandStops.toFixed(1)} in hand, ${limitingRole} runs out first`,
    );
    expect(figure('day-patch-ev')).toBe(`EV ${view.value.light.skyInFrame?.patchEv.toFixed(1)}`);
  });

  test('in passing it reads the column, and there is no recipe until it stands still', async () => {
    await open();
    const { x, y } = pointAt('19:56');
    pointer('pointermove', find('[data-plot]'), x, y);
    await frame();
    await frame();
    expect(all('[data-figure="day-dials"]')).toHaveLength(0);
    expect(figure('day-in-hand')).toMatch(/in hand$|^Short by/);
    await vi.waitFor(() => expect(figure('day-dials')).toMatch(/^1\/\d+ f\//));
  });
});

describe('blocks', () => {
  test('keys held down move a block, and letting go writes it once', async () => {
    const opened = await open();
    block('quartet').focus();
    await userEvent.keyboard('{ArrowDown>3/}');
    await vi.waitFor(async () =>
      expect((await opened.shoot()).setups['quartet']?.startClock).toBe('20:15'),
    );
    expect(block('quartet').ariaLabel).toContain('20:15 to 20:55');
    expect(await opened.undoAll()).toEqual(['time of Four on the pier head']);
  });

  test('with Shift by one minute, with Alt longer', async () => {
    const opened = await open();
    block('quartet').focus();
    await userEvent.keyboard('{Shift>}{ArrowUp}{/Shift}');
    await vi.waitFor(async () =>
      expect((await opened.shoot()).setups['quartet']?.startClock).toBe('19:59'),
    );
    await userEvent.keyboard('{Alt>}{ArrowDown}{/Alt}');
    await vi.waitFor(async () =>
      expect((await opened.shoot()).setups['quartet']?.durationMin).toBe(45),
    );
  });

  test('dragged an hour earlier it is solved on the way and written once, on full five minutes', async () => {
    const opened = await open();
    const before = figureOf('quartet');
    const box = block('quartet').getBoundingClientRect();
    const up = pointAt('20:00').y - pointAt('18:58').y;
    const text = block('quartet').querySelector('.block-text') ?? block('quartet');
    block('quartet').setPointerCapture = () => undefined;
    pointer('pointerdown', text, box.left + 40, box.top + 8);
    pointer('pointermove', text, box.left + 40, box.top + 8 - up);
    await vi.waitFor(() => expect(block('quartet').ariaLabel).toContain('19:00 to 19:40'));
    expect(figureOf('quartet')).not.toBe(before);
    expect(figureOf('quartet')).toMatch(/^short by/);
    expect((await opened.shoot()).setups['quartet']?.startClock).toBe('20:00');
    pointer('pointerup', text, box.left + 40, box.top + 8 - up);
    await vi.waitFor(async () =>
      expect((await opened.shoot()).setups['quartet']?.startClock).toBe('19:00'),
    );
    expect(await opened.undoAll()).toEqual(['time of Four on the pier head']);
  });

  test('a press without a drag chooses the setup and its start', async () => {
    const opened = await open();
    await userEvent.click(block('cello').querySelector('b') ?? block('cello'));
    expect(useView.getState()).toMatchObject({
      spotId: 'lighthouse',
      setupId: 'cello',
      minuteMs: at('16:30'),
    });
    expect(await opened.undoAll()).toEqual([]);
  });

  test('Enter opens the setup', async () => {
    await open();
    block('viola').focus();
    await userEvent.keyboard('{Enter}');
    expect(window.location.hash).toBe('#/setup');
    expect(useView.getState().setupId).toBe('viola');
    window.location.hash = '';
  });

  test('“+ setup” puts one at the chosen minute and chooses it', async () => {
    const opened = await open();
    await userEvent.click(find('[data-add-setup="karst"]'));
    await vi.waitFor(async () =>
      expect(Object.keys((await opened.shoot()).setups)).toHaveLength(5),
    );
    const id = useView.getState().setupId ?? '';
    expect((await opened.shoot()).setups[id]).toMatchObject({
      spotId: 'karst',
      startClock: '20:00',
    });
    await vi.waitFor(() => expect(block(id).ariaLabel).toContain('Setup 5'));
  });
});

test('the day after keeps the clock time, in one edit', async () => {
  const opened = await open();
  await userEvent.click(find('[data-day-after]'));
  await vi.waitFor(async () => expect((await opened.shoot()).date).toBe('2027-05-15'));
  expect(useView.getState().minuteMs).toBe(at('20:00') + 86_400_000);
  expect(await opened.undoAll()).toEqual(['day after']);
});

test('on a phone one column stands beside its hours, and the spot is picked from a list', async () => {
  await page.viewport(390, 844);
  await open();
  expect(all('[data-column]').map(({ dataset }) => dataset['column'])).toEqual(['pier']);
  await userEvent.selectOptions(find('[data-field="day-spot"]'), 'karst');
  await vi.waitFor(() =>
    expect(all('[data-column]').map(({ dataset }) => dataset['column'])).toEqual(['karst']),
  );
  for (const target of all(
    '.day button, .day select, .day .switch, .day [data-open-setup], .day .block-text',
  ))
    expect(target.getBoundingClientRect().height, target.outerHTML).toBeGreaterThanOrEqual(44);
});

const inHand = (condition: string): number =>
  Number(/\d+\.\d/.exec(figure(`in-hand-${condition}`))?.[0]) *
  (figure(`in-hand-${condition}`).startsWith('short') ? -1 : 1);

const figureOf = (setupId: string): string => figure(`block-${setupId}`);
