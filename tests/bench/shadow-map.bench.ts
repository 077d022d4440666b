import { resolve } from 'node:path';
import { build, preview } from 'vite';
import { sunPosition } from '../../src/core/sun-moon/sun-position.ts';
import { launchBrowser } from '../support/launch.ts';
import type { Bench, Figure } from './bench.ts';
import type { ShadowsTimed } from './shadow-map-page.ts';
import { townOfOutlines } from './town-of-outlines.ts';

const OUTLINES = 5000;
const TARGET_MS = 60;
const BUILT = 'node_modules/.cache/undersky-shadow-page';
const PAGE = 'tests/bench/shadow-map.html';
const CENTRE = { latitudeDeg: 45.6503, longitudeDeg: 13.7571 };
/** The canvas of a map in a 1440 × 900 window; at 1.7 m a pixel the whole town is on it. */
const VIEW = { ...CENTRE, zoom: 16, widthPx: 1230, heightPx: 1130 };
const DATE = '2027-05-14';
/** From an hour before sunset to four minutes before it, minute by minute. */
const FIRST_MS = Date.parse(`${DATE}T19:25:00+02:00`);
const MINUTES = 56;

const measure = async (): Promise<readonly Figure[]> => {
  await build({
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    build: {
      target: 'es2023',
      outDir: BUILT,
      emptyOutDir: true,
      rolldownOptions: { input: resolve(PAGE) },
    },
  });
  const server = await preview({
    configFile: false,
    logLevel: 'warn',
    build: { outDir: BUILT },
    preview: { host: '127.0.0.1', port: 0, open: false },
  });
  const browser = await launchBrowser();
  try {
    console.log(`  in Chromium ${browser.version()}`);
    const url = server.resolvedUrls?.local[0];
    if (url === undefined) throw new Error('The server of the page has no address.');
    const page = await browser.newPage();
    await page.goto(`${url}${PAGE}`);
    await page.waitForFunction(() => 'timeShadows' in window);
    const suns = Array.from({ length: MINUTES }, (_, minute) =>
      sunPosition(FIRST_MS + minute * 60_000, CENTRE),
    );
    const asked = { obstacles: townOfOutlines(OUTLINES, CENTRE), suns, date: DATE, view: VIEW };
    const timed = await page.evaluate((town) => window.timeShadows(town), asked);
    checkShadows(timed);
    const sorted = timed.minuteMs.toSorted((one, other) => one - other);
    return [
      figure('made ready, once for all minutes', timed.readyMs),
      figure(`each of ${MINUTES} minutes before sunset, median`, sorted[MINUTES >> 1] ?? NaN),
      figure('the slowest of them', sorted.at(-1) ?? NaN),
    ];
  } finally {
    await browser.close();
    await server.close();
  }
};

/** Shadows that were not drawn would be quick; towards sunset they cover more of the town. */
const checkShadows = ({ darkShare }: ShadowsTimed): void => {
  const [first = 0] = darkShare;
  const last = darkShare.at(-1) ?? 0;
  if (!(first > 0.2 && last > first))
    throw new Error(`Expected growing shadows, found ${first} of the canvas dark, then ${last}.`);
};

const figure = (name: string, value: number): Figure => ({
  figure: `${OUTLINES} outlines: ${name}`,
  value,
  unit: 'ms',
  target: TARGET_MS,
  ok: value < TARGET_MS,
});

export const benches: readonly Bench[] = [{ name: 'Shadows on the map', run: measure }];
