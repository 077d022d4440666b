import type { Locator, Page } from '@playwright/test';

import { expect } from './app-page.ts';
import { figureNumber, figureText, figureTexts } from './figure.ts';

export type Way =
  | 'up'
  | 'down'
  /** Another text, without an order. */
  | 'changes'
  | 'appears'
  | 'goes'
  | { readonly reads: RegExp }
  /** In the figure's unit; what is left to the rounding of two figures and of a dial. */
  | { readonly by: number; readonly within: number };

/** What has to hold before a control is there, or before it counts: pressed, typed or chosen. */
export type Given = {
  readonly press?: string;
  readonly field?: string;
  readonly to?: string;
  readonly within?: string;
  readonly on?: 'setup';
  /** A look, not an edit: put back by choosing what it was. */
  readonly isLook?: true;
};

export type Control = {
  readonly field: string;
  /** What it stands in where there are several of its name. */
  readonly within?: string;
  /** Typed, or chosen from a list; without one a switch is turned. */
  readonly to?: string;
  /** Typed as so much more than it was. */
  readonly add?: number;
  readonly given?: readonly Given[];
  readonly moves: string;
  readonly way: Way;
  /** Must say the same as before. */
  readonly still?: readonly string[];
  /** Where the figures are read when not beside the field. */
  readonly readOn?: 'setup';
  /** A look, not an edit: put back by turning it back. */
  readonly isLook?: true;
};

export type Pages = { readonly fields: Page; readonly setup: Page };

/** Turns one control, sees its figure move its way and the others stand, and undoes it. */
export async function turnControl(pages: Pages, control: Control): Promise<void> {
  const { fields, setup } = pages;
  const { moves, way, still = [], given = [] } = control;
  const readOn = control.readOn === 'setup' ? setup : fields;
  const untouched = await figureText(readOn, moves);
  const takenBack: (() => Promise<void>)[] = [];
  for (const each of given)
    takenBack.unshift(await make(each.on === 'setup' ? setup : fields, each));
  const input = fieldOf(fields, control.field, control.within);
  await expect(input, `${control.field} is on the screen`).toBeAttached();
  await drawn(readOn);
  const before = await figureText(readOn, moves);
  const stillBefore = await figureTexts(readOn, still);
  const inputBefore = await stateOf(input);

  const to = control.add === undefined ? control.to : more(inputBefore, control.add);
  await put(input, to);
  await expect
    .poll(() => figureText(readOn, moves), { message: `${control.field} moves ${moves}` })
    .not.toBe(before);
  await drawn(readOn);
  const after = await figureText(readOn, moves);
  expectWay({
    before,
    after,
    way,
    what: `${control.field} to ${to ?? 'the other side'}: ${moves} from ‘${before}’ to ‘${after}’`,
  });
  expect(await figureTexts(readOn, still), `${control.field} leaves the others`).toEqual(
    stillBefore,
  );

  if (control.isLook === true) await put(input, inputBefore);
  else await undo(fields);
  await expect
    .poll(() => figureText(readOn, moves), { message: `undo of ${control.field}` })
    .toBe(before);
  await expect.poll(() => stateOf(input)).toBe(inputBefore);
  for (const takeBack of takenBack) await takeBack();
  await expect
    .poll(() => figureText(readOn, moves), { message: `undo of what ${control.field} needs` })
    .toBe(untouched);
}

/** Makes what is given; gives the way back. */
const make = async (page: Page, given: Given): Promise<() => Promise<void>> => {
  const { press, field, to, within, isLook } = given;
  if (field === undefined) return pressed(page, press ?? '');
  const input = fieldOf(page, field, within);
  const before = await stateOf(input);
  await put(input, to);
  await expect
    .poll(() => stateOf(input), { message: `${field} takes what is given` })
    .not.toBe(before);
  return async () => {
    await (isLook === true ? put(input, before) : undo(page));
    await expect.poll(() => stateOf(input), { message: `${field} is as it was` }).toBe(before);
  };
};

/** A button that is pressed in, or gives way to others; undone, it is there as it was. */
const pressed = async (page: Page, selector: string): Promise<() => Promise<void>> => {
  const button = page.locator(selector);
  const state = (): Promise<string> =>
    button.evaluateAll((found) =>
      found.map((one) => one.getAttribute('aria-pressed') ?? 'there').join(),
    );
  const before = await state();
  await button.click();
  await expect.poll(state, { message: `${selector} is pressed` }).not.toBe(before);
  return async () => {
    await undo(page);
    await expect.poll(state, { message: `${selector} is as it was` }).toBe(before);
  };
};

const more = (text: string, by: number): string => String(Number(text.replace('−', '-')) + by);

const undo = (page: Page): Promise<void> => page.locator('[data-undo]').click();

const fieldOf = (page: Page, field: string, within = ''): Locator =>
  page.locator(`${within} [data-field="${field}"]`.trim()).first();

const put = async (input: Locator, to: string | undefined): Promise<void> => {
  const kind = await input.evaluate((element) =>
    element instanceof HTMLInputElement ? element.type : element.localName,
  );
  // Two pages may be open: only the one in front has the keyboard.
  await input.page().bringToFront();
  if (kind === 'checkbox') return input.click();
  if (to === undefined) throw new Error('Expected what to type or choose.');
  if (kind === 'select') {
    await input.selectOption(to);
    return;
  }
  await input.fill(to);
  if (kind === 'textarea') await input.blur();
  else await input.press('Enter');
};

const stateOf = (input: Locator): Promise<string> =>
  input.evaluate((element) =>
    element instanceof HTMLInputElement && element.type === 'checkbox'
      ? String(element.checked)
      : (element as HTMLInputElement).value,
  );

/** Two frames: what waits for time to draw has had it. */
const drawn = (page: Page): Promise<void> =>
  page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        requestAnimationFrame(() => requestAnimationFrame(() => resolve()));
      }),
  );

type Moved = {
  readonly before: string;
  readonly after: string;
  readonly way: Way;
  readonly what: string;
};

function expectWay({ before, after, way, what }: Moved): void {
  if (way === 'changes') return expect(before !== '' && after !== '', what).toBe(true);
  if (way === 'appears') return expect([before === '', after !== ''], what).toEqual([true, true]);
  if (way === 'goes') return expect([before !== '', after === ''], what).toEqual([true, true]);
  if (typeof way === 'object' && 'reads' in way) return expect(after, what).toMatch(way.reads);
  const by = figureNumber(after) - figureNumber(before);
  if (way === 'up') return expect(by, what).toBeGreaterThan(0);
  if (way === 'down') return expect(by, what).toBeLessThan(0);
  return expect(Math.abs(by - way.by), what).toBeLessThanOrEqual(way.within);
}

/** The names of all fields that are on the screen, folded away or not. */
export const fieldNames = async (page: Page): Promise<readonly string[]> => {
  const names = await page
    .locator('[data-field]')
    .evaluateAll((fields) => fields.map((field) => field.getAttribute('data-field') ?? ''));
  return [...new Set(names)].toSorted();
};

/** Opens all that is folded, and what opens within it when it has come. */
export async function openAll(page: Page): Promise<void> {
  const folded = page.locator('details:not([open])');
  await expect(async () => {
    await folded.evaluateAll((all) => {
      for (const details of all) (details as HTMLDetailsElement).open = true;
    });
    await drawn(page);
    await expect(page.locator('[data-loading]')).toHaveCount(0, { timeout: 1 });
    await expect(folded).toHaveCount(0, { timeout: 1 });
  }).toPass();
}
