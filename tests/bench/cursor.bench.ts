import type { Page } from '@playwright/test';
import type { Bench, Figure } from './bench.ts';
import { withAppInBrowser, type AppInBrowser } from './app-in-browser.ts';
import { settled, watchLongTasks, workMs } from './page-work.ts';
import { twelveSpotShootFile } from './twelve-spots.ts';

const MOVES = 200;
const MS_PER_MOVE = 8;
const LONG_TASK_MS = 50;

const measure = async ({ context, page, url }: AppInBrowser): Promise<readonly Figure[]> => {
  await openTwelveColumns(page, url);
  const session = await context.newCDPSession(page);
  await session.send('Performance.enable');
  const longTasksMs = await watchLongTasks(page);
  const before = await page.locator('[data-day-grid]').evaluate((grid) => grid.outerHTML);
  const startMs = await workMs(session);
  await sweep(page);
  const perMoveMs = ((await workMs(session)) - startMs) / MOVES;
  const after = await page.locator('[data-day-grid]').evaluate((grid) => grid.outerHTML);
  if (before === after) throw new Error('The pointer moved, but nothing on the grid did.');
  const overMs = (await longTasksMs.jsonValue()).filter((duration) => duration > LONG_TASK_MS);
  return [
    {
      figure: 'script + style + layout per move, twelve columns',
      value: perMoveMs,
      unit: 'ms',
      target: MS_PER_MOVE,
      ok: perMoveMs < MS_PER_MOVE,
    },
    {
      figure: `longest task over ${LONG_TASK_MS} ms (${overMs.length} of them)`,
      value: Math.max(0, ...overMs),
      unit: 'ms',
      target: 0,
      ok: overMs.length === 0,
    },
  ];
};

const openTwelveColumns = async (page: Page, url: string): Promise<void> => {
  await page.goto(`${url}#/day`);
  await page.locator('[data-open-shoot-sheet]').click();
  await page.locator('input[data-import-shoot]').setInputFiles({
    name: 'twelve-spots.json',
    mimeType: 'application/json',
    buffer: Buffer.from(twelveSpotShootFile()),
  });
  await page.locator('[data-import-take]').click();
  await page.keyboard.press('Escape');
  await page.locator('[data-column]').nth(11).waitFor();
  await page.locator('[data-first-figures="drawn"]').waitFor();
  await settled(page);
  await page.evaluate(() => new Promise((idle) => requestIdleCallback(idle)));
};

/** Down and up the plots, from the grid's left edge to its right, ending off the starting point. */
const sweep = async (page: Page): Promise<void> => {
  const box = await page.locator('[data-day-grid]').boundingBox();
  if (box === null) throw new Error('The grid of the day is not on the page.');
  const plot = await page.locator('[data-plot]').first().boundingBox();
  if (plot === null) throw new Error('No column of the day has a plot.');
  for (let move = 1; move <= MOVES; move += 1) {
    const along = move / MOVES;
    const down = 0.5 - 0.5 * Math.cos(along * 5 * Math.PI);
    await page.mouse.move(
      box.x + 1 + along * (box.width - 2),
      plot.y + 1 + down * (plot.height - 2),
    );
  }
  await settled(page);
};

export const benches: readonly Bench[] = [
  { name: 'Time cursor over twelve columns', run: () => withAppInBrowser(measure) },
];
