import type { Bench, Figure } from './bench.ts';
import { withAppInBrowser, type AppInBrowser } from './app-in-browser.ts';
import { settled, workMs } from './page-work.ts';

const MOVES = 100;
const MS_PER_MOVE = 8;

/** The key of the demo's quartet, dragged round the group in the sketch from above. */
const measure = async ({ context, page, url }: AppInBrowser): Promise<readonly Figure[]> => {
  await page.goto(`${url}#/setup`);
  await page.locator('[data-first-figures="drawn"]').waitFor();
  await page.locator('[data-field="setup"]').selectOption('quartet');
  await page.locator('[data-drawn]').waitFor();
  const light = page.locator('[data-sketch-light="key"]');
  await light.scrollIntoViewIfNeeded();
  const grip = await light.locator('.grip').boundingBox();
  const sketch = await page.locator('[data-figure="plan-sketch"]').boundingBox();
  if (grip === null || sketch === null) throw new Error('The key has no place in the sketch.');
  const session = await context.newCDPSession(page);
  await session.send('Performance.enable');
  await page.mouse.move(grip.x + grip.width / 2, grip.y + grip.height / 2);
  await page.mouse.down();
  await settled(page);
  const before = await light.getAttribute('aria-valuetext');
  const startMs = await workMs(session);
  for (let move = 1; move <= MOVES; move += 1) {
    const turn = (move / MOVES) * 1.5 * Math.PI;
    await page.mouse.move(
      sketch.x + sketch.width * (0.5 + 0.35 * Math.sin(turn)),
      sketch.y + sketch.height * (0.5 + 0.35 * Math.cos(turn)),
    );
  }
  await settled(page);
  const perMoveMs = ((await workMs(session)) - startMs) / MOVES;
  await page.mouse.up();
  // Written on release; the sketch follows when it is.
  await page.waitForFunction(
    (was) =>
      document.querySelector('[data-sketch-light="key"]')?.getAttribute('aria-valuetext') !== was,
    before,
  );
  return [
    {
      figure: 'script + style + layout per move',
      value: perMoveMs,
      unit: 'ms',
      target: MS_PER_MOVE,
      ok: perMoveMs < MS_PER_MOVE,
    },
  ];
};

export const benches: readonly Bench[] = [
  { name: 'A light dragged in the sketch', run: () => withAppInBrowser(measure) },
];
