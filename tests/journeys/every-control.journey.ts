import type { BrowserContext, Page } from '@playwright/test';

import { expect, test } from './support/app-page.ts';
import { fieldNames, openAll, turnControl, type Control, type Pages } from './support/control.ts';
import { KIT_CONTROLS, KIT_OTHERS, type Shelf } from './support/controls-of-kit.data.ts';
import { SCOUT_CONTROLS, SCOUT_OTHERS, ZONE_CONTROLS } from './support/controls-of-scout.data.ts';
import { ROOMY, SETUP_CONTROLS, SETUP_OTHERS } from './support/controls-of-setup.data.ts';
import { figure, figureNumber, figureText } from './support/figure.ts';

test.describe.configure({ timeout: 180_000 });

const field = (page: Page, name: string) => page.locator(`[data-field="${name}"]`).first();

/** The quartet's setup, with room on every side. */
const openQuartet = async (page: Page): Promise<void> => {
  await page.goto('./#/setup');
  await field(page, 'setup').selectOption('quartet');
  await expect(figure(page, 'setup-name')).toHaveText('Four on the pier head');
  for (const [name, text] of Object.entries(ROOMY)) {
    await field(page, name).fill(text);
    await field(page, name).press('Enter');
    await expect(field(page, name)).toHaveValue(text);
  }
  await expect(figure(page, 'in-hand')).toContainText('in hand');
  await openAll(page);
};

const openBeside = async (context: BrowserContext): Promise<Page> => {
  const page = await context.newPage();
  await openQuartet(page);
  return page;
};

const openScout = async (page: Page): Promise<void> => {
  await page.goto('./#/scout');
  await expect(page.locator('[data-first-figures="drawn"]')).toBeVisible();
  await expect(figure(page, 'spot-name')).toHaveText('Pier head');
  await openAll(page);
};

const turnAll = async (pages: Pages, controls: readonly Control[]): Promise<void> => {
  for (const control of controls)
    await test.step(`${control.field} moves ${control.moves}`, () => turnControl(pages, control));
};

const expectKnown = async (
  page: Page,
  controls: readonly Control[],
  others: Readonly<Record<string, string>>,
): Promise<void> => {
  const known = new Set([...controls.map(({ field: name }) => name), ...Object.keys(others)]);
  const names = await fieldNames(page);
  expect(names.length, 'fields on the screen').toBeGreaterThan(0);
  expect(
    names.filter((name) => !known.has(name)),
    'fields of which nothing is known',
  ).toEqual([]);
};

/** In parts, which run side by side. */
const SETUP_PARTS = 4;

for (let part = 0; part < SETUP_PARTS; part += 1)
  test(`every control of Setup moves its figure its way, leaves the others, and comes back by undo: part ${part + 1}`, async ({
    page,
  }) => {
    await openQuartet(page);
    if (part === 0) await expectKnown(page, SETUP_CONTROLS, SETUP_OTHERS);
    const controls = SETUP_CONTROLS.filter((_, at) => at % SETUP_PARTS === part);
    expect(controls.length).toBeGreaterThan(0);
    await turnAll({ fields: page, setup: page }, controls);
  });

test('every control of Scout moves its figure its way, leaves the others, and comes back by undo', async ({
  page,
  context,
}) => {
  const setup = await openBeside(context);
  await openScout(page);
  await expectKnown(page, SCOUT_CONTROLS, SCOUT_OTHERS);
  const pages = { fields: page, setup };
  await turnAll(pages, SCOUT_CONTROLS);

  await test.step('the zone is what the clocks are called, and nothing else', async () => {
    await openAll(page);
    await field(page, 'minute').press('PageUp');
    await expect(figure(page, 'minute')).toHaveText('19:00');
    await turnAll(pages, ZONE_CONTROLS);
  });

  await test.step('a spot is added by its coordinates, or by the name of a town, and undone', async () => {
    const spots = field(page, 'spot').locator('option');
    await expect(spots).toHaveCount(4);
    await page.locator('[data-add-spot]').click();
    await field(page, 'new-coordinates').fill('45°36′00″ N 13°46′00″ E');
    await field(page, 'new-coordinates').press('Enter');
    await expect(figure(page, 'coordinates')).toHaveText('45.6000° N, 13.7667° E');
    await expect(spots).toHaveCount(5);
    await page.locator('[data-undo]').click();
    await expect(spots).toHaveCount(4);
    await page.locator('[data-add-spot]').click();
    await field(page, 'place-search').fill('Trieste');
    await page.locator('[data-found-place="Trieste"]').first().click();
    await expect(figure(page, 'spot-name')).toHaveText('Trieste');
    await page.locator('[data-undo]').click();
    await expect(spots).toHaveCount(4);
  });

  await test.step('title and date of the shoot', async () => {
    const before = await figureText(setup, 'patch-ev');
    const open = page.locator('[data-open-shoot-sheet]');
    const close = page.getByRole('button', { name: 'Close' });
    await open.click();
    await field(page, 'title').fill('Second cover');
    await field(page, 'title').press('Enter');
    await field(page, 'date').fill('2027-06-21');
    await field(page, 'date').press('Enter');
    await close.click();
    await expect(open).toHaveText(/Second cover.*21 Jun 2027/);
    // The sun stands higher at the same clock five weeks later.
    await expect
      .poll(async () => figureNumber(await figureText(setup, 'patch-ev')))
      .toBeGreaterThan(figureNumber(before));
    await page.locator('[data-undo]').click();
    await page.locator('[data-undo]').click();
    await expect(open).toHaveText(/Quartet album cover.*14 May 2027/);
    await expect.poll(() => figureText(setup, 'patch-ev')).toBe(before);
  });
});

test('every control of the kit moves its figure its way, leaves the others, and comes back by undo', async ({
  page,
  context,
}) => {
  const setup = await openBeside(context);
  await page.goto('./#/kit');
  for (const [shelf, controls] of Object.entries(KIT_CONTROLS))
    await test.step(`the ${shelf}`, async () => {
      await page.locator(`[data-shelf="${shelf satisfies string as Shelf}"]`).click();
      await openAll(page);
      await expectKnown(page, controls, KIT_OTHERS);
      await turnAll({ fields: page, setup }, controls);
    });

  await test.step('another camera brings its own sync speed', async () => {
    await page.locator('[data-shelf="cameras"]').click();
    await field(page, 'generic').selectOption({ label: 'Full frame, sync 1/200' });
    await page.locator('[data-add-item]').click();
    await expect(page.locator('[data-item]')).toHaveCount(2);
    const inHand = figureNumber(await figureText(setup, 'in-hand'));
    await field(setup, 'camera').selectOption({ label: 'Full frame, sync 1/200' });
    await expect(figure(setup, 'sync')).toHaveText('1/200');
    // log2(250/200)
    expect(
      Math.abs(figureNumber(await figureText(setup, 'in-hand')) - inHand + 0.32),
    ).toBeLessThanOrEqual(0.11);
  });
});

test('every control of Day moves its figure', async ({ page }) => {
  await page.goto('./#/day');
  const grid = page.locator('[data-day-grid]');
  await expect(page.locator('[data-column]')).toHaveCount(4);
  await expectKnown(page, [], {
    condition: 'stands in the bar of every screen',
    'day-night': 'turned below',
    'day-all-skies': 'turned below',
    minute: 'moved below',
  });

  await test.step('the minute by keys', async () => {
    const before = await figureText(page, 'day-patch-ev');
    await field(page, 'minute').press('PageUp');
    await expect(figure(page, 'day-clock')).toHaveText('19:00');
    await expect
      .poll(async () => figureNumber(await figureText(page, 'day-patch-ev')))
      .toBeGreaterThan(figureNumber(before));
    await field(page, 'minute').press('PageDown');
    await expect(figure(page, 'day-patch-ev')).toHaveText(before);
  });

  await test.step('the night scale and all five skies', async () => {
    // From EV −6 the axis has a mark at 0; from EV 2 it has none.
    const zero = grid.getByText('0', { exact: true });
    await expect(zero).toHaveCount(0);
    await field(page, 'day-night').click();
    await expect(zero).not.toHaveCount(0);
    await field(page, 'day-night').click();
    await expect(zero).toHaveCount(0);
    await field(page, 'day-all-skies').click();
    await expect(page.locator('[data-figure^="in-hand-"]')).toHaveCount(5);
    await field(page, 'day-all-skies').click();
    await expect(page.locator('[data-figure^="in-hand-"]')).toHaveCount(0);
  });

  await test.step('a block moved by keys is solved anew, and undone', async () => {
    const block = page.locator('[data-block="quartet"]');
    const before = await figureText(page, 'block-quartet');
    await block.focus();
    for (let step = 0; step < 6; step += 1) await block.press('ArrowUp');
    await expect(block).toHaveAttribute('aria-label', /19:30/);
    await expect
      .poll(async () => figureNumber(await figureText(page, 'block-quartet')))
      .toBeLessThan(figureNumber(before));
    for (let step = 0; step < 6; step += 1) await page.locator('[data-undo]').click();
    await expect(block).toHaveAttribute('aria-label', /20:00/);
    await expect(figure(page, 'block-quartet')).toHaveText(before);
  });

  await test.step('the day before and the day after', async () => {
    const before = await figureText(page, 'day-patch-ev');
    await page.locator('[data-day-after]').click();
    await expect(page.locator('.day-date strong')).toContainText('15 May 2027');
    await page.locator('[data-day-before]').click();
    await expect(page.locator('.day-date strong')).toContainText('14 May 2027');
    await expect(figure(page, 'day-patch-ev')).toHaveText(before);
  });
});
