import type { Page } from '@playwright/test';
import type { Bench, Figure } from './bench.ts';
import { withAppInBrowser, type AppInBrowser } from './app-in-browser.ts';
import { longestTask } from './longest-task.ts';
import { manySpotShootFile } from './many-spots.ts';
import { settled, workMs } from './page-work.ts';

const SPOTS = 500;
const MOVES = 100;
const MS_PER_MOVE = 8;
const LONG_TASK_MS = 50;
/** From the view of all spots to one of some twenty, with their rings. */
const CLOSER = 4;

const measure = async ({
  browser,
  context,
  page,
  url,
}: AppInBrowser): Promise<readonly Figure[]> => {
  await openSpots(page, url);
  const session = await context.newCDPSession(page);
  await session.send('Performance.enable');
  const figures: Figure[] = [];
  for (const closer of [0, CLOSER]) {
    await page.getByRole('button', { name: 'Show all spots' }).click();
    await page.waitForTimeout(1000);
    for (let step = 0; step < closer; step += 1) {
      await page.getByRole('button', { name: 'Zoom in' }).click();
      await page.waitForFunction(() => document.querySelector('.leaflet-zoom-anim') === null);
      await settled(page);
    }
    await page.waitForTimeout(1000);
    const seen = await spotsInView(page);
    const rings = await page.locator('.spot .spot-ring').count();
    const startMs = await workMs(session);
    const movedPx = await pan(page);
    const perMoveMs = ((await workMs(session)) - startMs) / MOVES;
    if (movedPx < 50) throw new Error(`The map went ${movedPx} px under the pointer.`);
    const longest = await longestTask(browser, page, async () => void (await pan(page)));
    const where = `${seen} of ${SPOTS} spots in view, ${rings} with rings`;
    figures.push(
      {
        figure: `script + style + layout per move, ${where}`,
        value: perMoveMs,
        unit: 'ms',
        target: MS_PER_MOVE,
        ok: perMoveMs < MS_PER_MOVE,
      },
      {
        figure: `longest task on the processor (${longest.clockMs.toFixed(0)} ms by the clock), ${where}`,
        value: longest.processorMs,
        unit: 'ms',
        target: LONG_TASK_MS,
        ok: longest.processorMs < LONG_TASK_MS,
      },
    );
  }
  return figures;
};

const openSpots = async (page: Page, url: string): Promise<void> => {
  await page.goto(`${url}#/scout`);
  await page.locator('[data-open-shoot-sheet]').click();
  await page.locator('input[data-import-shoot]').setInputFiles({
    name: 'many-spots.json',
    mimeType: 'application/json',
    buffer: Buffer.from(manySpotShootFile(SPOTS)),
  });
  await page.locator('[data-import-take]').click();
  await page.keyboard.press('Escape');
  await page.getByText(`${SPOTS} spots`).first().waitFor();
  await page.locator('[data-first-figures="drawn"]').waitFor();
  await page.waitForTimeout(6000);
  await page.evaluate(() => new Promise((idle) => requestIdleCallback(idle)));
};

/** Spots whose dots stand in the map's frame. */
const spotsInView = (page: Page): Promise<number> =>
  page.locator('.spot-map-view').evaluate((view) => {
    const frame = view.getBoundingClientRect();
    return [...view.querySelectorAll('.spot-button')].filter((button) => {
      const { left, top, width, height } = button.getBoundingClientRect();
      const [x, y] = [left + width / 2, top + height / 2];
      return x > frame.left && x < frame.right && y > frame.top && y < frame.bottom;
    }).length;
  });

/** Drags the ground through a loop that ends off its start; the answer is how far the map went. */
const pan = async (page: Page): Promise<number> => {
  const box = await page.locator('.spot-map-view').boundingBox();
  if (box === null) throw new Error('The map is not on the page.');
  const paneX = (): Promise<number> =>
    page.locator('.leaflet-map-pane').evaluate((pane) => pane.getBoundingClientRect().left);
  const before = await paneX();
  const [x, y] = await freeGround(page, box);
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let move = 1; move <= MOVES; move += 1) {
    const along = move / MOVES;
    await page.mouse.move(
      x + 140 * along + 60 * Math.sin(along * 4 * Math.PI),
      y + 60 * Math.sin(along * 2 * Math.PI),
    );
  }
  await page.mouse.up();
  await settled(page);
  await page.waitForTimeout(800);
  return Math.abs((await paneX()) - before);
};

/** A point of the map where a press takes hold of the ground and not of a spot. */
const freeGround = async (
  page: Page,
  box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): Promise<readonly [number, number]> => {
  const free = await page.evaluate(({ x, y, width, height }) => {
    for (let down = 0.3; down < 0.8; down += 0.02)
      for (let along = 0.2; along < 0.7; along += 0.02) {
        const at = [x + width * along, y + height * down] as const;
        const hit = document.elementFromPoint(...at);
        if (hit?.closest('.spot, button') === null && hit.closest('.spot-map-view')) return at;
      }
    return null;
  }, box);
  if (free === null) throw new Error('Spots cover the whole map.');
  return free;
};

export const benches: readonly Bench[] = [
  { name: 'Panning the map', run: () => withAppInBrowser(measure) },
];
