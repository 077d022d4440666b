import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { render } from 'vitest-browser-react';

import { SunInPicture } from '../../../../../src/app/screens/scout/sun-in-picture/SunInPicture.tsx';
import { DocumentsProvider, useShoot } from '../../../../../src/app/state/documents.tsx';
import { ServicesContext, type Services } from '../../../../../src/app/state/services.ts';
import { useView } from '../../../../../src/app/state/view.ts';
import { demoKit } from '../../../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../../../src/core/plan/demo-shoot.ts';
import type {
  AlignmentAnswer,
  AlignmentInput,
} from '../../../../../src/core/plan/lit-alignments.ts';
import { litAlignments } from '../../../../../src/core/plan/lit-alignments.ts';
import { fail, ok } from '../../../../../src/core/units/result.ts';
import { memoryRepository } from '../../../../../src/storage/memory-repository.ts';
import { runThrough } from '../../../../support/run-through.ts';
import '../../../../../src/app/shell/theme.css';
import '../../../../../src/app/ui/ui.css';

const find = (selector: string): HTMLElement => {
  const found = document.querySelector<HTMLElement>(selector);
  if (found === null) throw new Error(`nothing on the page is ${selector}`);
  return found;
};
const isThere = (selector: string): boolean => document.querySelector(selector) !== null;
const figure = (name: string): string => find(`[data-figure="${name}"]`).textContent.trim();
const field = (name: string): HTMLInputElement => {
  const input = find(`[data-field="${name}"]`);
  if (!(input instanceof HTMLInputElement)) throw new Error(`${name} is no input`);
  return input;
};
const pad = (): HTMLElement => find('[data-field="alignment-point"]');
const type = async (name: string, text: string): Promise<void> => {
  await userEvent.fill(field(name), text);
  await userEvent.keyboard('{Enter}');
};
const press = async (selector: string): Promise<void> => userEvent.click(find(selector));

type Ran = { input: AlignmentInput; signal: AbortSignal | undefined };

/** Work in the page in place of the worker; a held one waits for its cancellation. */
const groundOf = (asked: Ran[], way: 'answers' | 'waits' | 'breaks'): Services['ground'] => ({
  run: (async (
    kind: string,
    input: AlignmentInput,
    hooks: { onProgress?: (share: number) => void; signal?: AbortSignal } = {},
  ) => {
    expect(kind).toBe('alignment');
    asked.push({ input: structuredClone(input), signal: hooks.signal });
    hooks.onProgress?.(0.25);
    if (way === 'breaks') return fail({ kind: 'failed', message: 'out of memory' });
    if (way === 'waits')
      return new Promise((settle) => {
        hooks.signal?.addEventListener('abort', () => settle(fail({ kind: 'cancelled' })));
      });
    const answer: AlignmentAnswer = runThrough(litAlignments(input)).answer;
    return ok(structuredClone(answer));
  }) as unknown as Services['ground']['run'],
});

function Shown({ spotId, withSetup }: { spotId: string; withSetup: boolean }) {
  const shoot = useShoot();
  const spot = shoot.spots[spotId];
  const setup = Object.entries(shoot.setups).find(([, one]) => one.spotId === spotId);
  if (spot === undefined) return null;
  return (
    <main>
      <output data-figure="shoot-date">{shoot.date}</output>
      <SunInPicture spotId={spotId} spot={spot} setup={withSetup ? (setup ?? null) : null} />
    </main>
  );
}

/** The pier, which looks over the sea to the west-north-west with a flat horizon of 0.4°. */
const open = async (
  way: Parameters<typeof groundOf>[1] = 'answers',
  withSetup = true,
): Promise<Ran[]> => {
  const repository = memoryRepository();
  await repository.create('kit', demoKit());
  await repository.create('shoot', demoShoot());
  const asked: Ran[] = [];
  let ids = 0;
  const services = {
    repository,
    ground: groundOf(asked, way),
    nowMs: () => 0,
    newId: () => `made-${(ids += 1)}`,
    authorId: 'me',
  } as unknown as Services;
  useView.setState({ spotId: null, setupId: null, minuteMs: null, said: '' });
  await render(
    <ServicesContext value={services}>
      <DocumentsProvider shootId="demo" kitId="kit" waiting={null}>
        <Shown spotId="pier" withSetup={withSetup} />
      </DocumentsProvider>
    </ServicesContext>,
  );
  await vi.waitFor(() => pad());
  return asked;
};

beforeEach(async () => {
  await page.viewport(900, 1200);
});
afterEach(() => vi.restoreAllMocks());

describe('the point in the picture', () => {
  test('arrow keys move it by a hundredth, with shift by a tenth, and fields and words follow', async () => {
    await open();
    expect(pad().getAttribute('aria-valuetext')).toContain(
      '0 % right of the centre, 0 % above it; 300° WNW',
    );
    pad().focus();
    await userEvent.keyboard('{ArrowRight}{ArrowRight}{ArrowUp}{Shift>}{ArrowDown}{/Shift}');
    expect(field('alignment-across').value).toBe('2');
    expect(field('alignment-up').value).toBe('−9');
    expect(pad().getAttribute('aria-valuetext')).toContain('2 % right of the centre, 9 % below it');
    expect(pad().getAttribute('aria-valuenow')).toBe('2');
  });

  test('the pointer sets it where it presses, and drags it no farther than the edge', async () => {
    await open();
    const box = pad().getBoundingClientRect();
    const at = (x: number, y: number): PointerEventInit => ({
      pointerId: 1,
      isPrimary: true,
      bubbles: true,
      clientX: box.left + x * box.width,
      clientY: box.top + y * box.height,
    });
    vi.spyOn(HTMLElement.prototype, 'setPointerCapture').mockImplementation(() => undefined);
    vi.spyOn(HTMLElement.prototype, 'hasPointerCapture').mockReturnValue(true);
    pad().dispatchEvent(new PointerEvent('pointerdown', at(0.75, 0.25)));
    await vi.waitFor(() => expect(field('alignment-across').value).toBe('25'));
    expect(field('alignment-up').value).toBe('25');
    pad().dispatchEvent(new PointerEvent('pointermove', at(0.25, 1.4)));
    await vi.waitFor(() => expect(field('alignment-across').value).toBe('−25'));
    expect(field('alignment-up').value).toBe('−50');
  });

  test('each field moves the question, and what is wrong is said and changes nothing', async () => {
    await open();
    for (const [name, text] of [
      ['alignment-across', '-20'],
      ['alignment-up', '10,5'],
      ['alignment-tolerance', '1.5'],
      ['alignment-from', '2027-08-01'],
    ] as const) {
      const before = figure('alignment-asked');
      await type(name, text);
      await vi.waitFor(() => expect(figure('alignment-asked')).not.toBe(before));
    }
    const before = figure('alignment-asked');
    await userEvent.selectOptions(find('[data-field="alignment-body"]'), 'moon');
    await vi.waitFor(() => expect(figure('alignment-asked')).not.toBe(before));
    const marked = find('.picture-pad i').style;
    expect([marked.left, marked.top]).toEqual(['30%', '39.5%']);

    const right = figure('alignment-asked');
    await type('alignment-tolerance', '99');
    await type('alignment-from', '2027-02-30');
    expect(figure('alignment-asked')).toBe(right);
    expect(document.body.textContent).toContain('found ‘99’, expected a number from 0.1 to 30 °');
    expect(document.body.textContent).toContain('found ‘2027-02-30’, expected a date');
  });
});

describe('the search', () => {
  test('lists dates with minutes, light and what is in hand, and says what they rest on', async () => {
    const asked = await open();
    await type('alignment-across', '-30');
    await type('alignment-tolerance', '2');
    await press('[data-find-days]');
    await vi.waitFor(() => find('[data-figure="alignments"] li'));
    expect(asked[0]?.input).toMatchObject({
      body: 'sun',
      fromDate: '2027-05-14',
      days: 400,
      toleranceDeg: 2,
      wanted: { xFraction: -0.3, yFraction: 0 },
    });
    expect(asked[0]?.input.question).not.toBeNull();
    expect(figure('alignment-count')).toMatch(/\d+ dates\..* Times in Europe\/Rome\.$/);
    const first = find('[data-figure="alignments"] li').textContent;
    expect(first).toMatch(/\d\d:\d\d/);
    expect(first).toMatch(/° off the point: /);
    expect(first).toMatch(/sky in frame EV \d+\.\d ± \d\.\d/);
    expect(first).toMatch(/in hand|short by|lights the face|too /);
    expect(first).toContain('The sun itself clips at any hold.');
    expect(figure('alignment-rests-on')).toContain('trace (invented for the demo)');
    expect(figure('alignment-rests-on')).toContain('broken cloud');
    expect(isThere('[data-caution="sun"]')).toBe(true);
  });

  test('a date is taken over: the shoot moves there and its minute is looked at', async () => {
    await open();
    await type('alignment-across', '-30');
    await type('alignment-tolerance', '2');
    await press('[data-find-days]');
    await vi.waitFor(() => find('[data-use-date]'));
    const rows = document.querySelectorAll<HTMLElement>('[data-figure="alignments"] li');
    const last = rows[rows.length - 1];
    const date = last?.dataset['date'] ?? '';
    expect(date).not.toBe('2027-05-14');
    last?.querySelector<HTMLElement>('[data-use-date]')?.click();
    await vi.waitFor(() => expect(figure('shoot-date')).toBe(date));
    const { minuteMs, spotId, said } = useView.getState();
    const shown = last?.querySelector('[data-figure="alignment-minute"]')?.textContent ?? '';
    expect(
      new Date(minuteMs ?? NaN).toLocaleTimeString('en-GB', {
        timeZone: 'Europe/Rome',
        hour: '2-digit',
        minute: '2-digit',
      }),
    ).toBe(shown);
    expect(spotId).toBe('pier');
    expect(said).toContain('Undo brings the date back');
    // The list stays, its first date too.
    expect(field('alignment-from').value).toBe('2027-05-14');
    expect(isThere('[data-use-date]')).toBe(true);
  });

  test('the moon says how much of it is lit, and warns of no sun', async () => {
    await open();
    await type('alignment-across', '-30');
    await type('alignment-tolerance', '3');
    await userEvent.selectOptions(find('[data-field="alignment-body"]'), 'moon');
    await press('[data-find-days]');
    await vi.waitFor(() => find('[data-figure="alignments"] li'));
    expect(find('[data-figure="alignments"] li').textContent).toMatch(/moon \d+ % lit/);
    expect(isThere('[data-caution="sun"]')).toBe(false);
  });

  test('without a setup it gives the light alone', async () => {
    const asked = await open('answers', false);
    await type('alignment-across', '-30');
    await type('alignment-tolerance', '2');
    await press('[data-find-days]');
    await vi.waitFor(() => find('[data-figure="alignments"] li'));
    expect(asked[0]?.input.question).toBeNull();
    expect(isThere('[data-figure="alignment-hold"]')).toBe(false);
    expect(isThere('[data-figure="alignment-light"]')).toBe(true);
  });

  test('no date has its reason', async () => {
    await open();
    await type('alignment-up', '-50');
    await press('[data-find-days]');
    await vi.waitFor(() =>
      expect(figure('no-alignment')).toMatch(
        /^The point is below the skyline: \d+\.\d° of ground stand there\.$/,
      ),
    );
  });

  test('shows how far it is and is given up by its button', async () => {
    const asked = await open('waits');
    await press('[data-find-days]');
    await vi.waitFor(() => find('progress'));
    const progress = find('progress');
    await vi.waitFor(() => expect(progress.getAttribute('value')).toBe('0.25'));
    await press('[data-cancel-search]');
    await vi.waitFor(() => expect(isThere('progress')).toBe(false));
    expect(asked[0]?.signal?.aborted).toBe(true);
  });

  test('is given up when the question changes, and the old dates go', async () => {
    const asked = await open('waits');
    await press('[data-find-days]');
    await vi.waitFor(() => find('progress'));
    pad().focus();
    await userEvent.keyboard('{ArrowUp}');
    await vi.waitFor(() => expect(asked[0]?.signal?.aborted).toBe(true));
    expect(isThere('progress')).toBe(false);
  });

  test('that breaks off says so', async () => {
    await open('breaks');
    await press('[data-find-days]');
    await vi.waitFor(() =>
      expect(figure('alignment-failed')).toBe('The search broke off: out of memory'),
    );
  });
});
