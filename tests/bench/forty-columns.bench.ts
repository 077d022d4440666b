import { resolve } from 'node:path';
import { build, preview } from 'vite';
import { demoKit } from '../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../src/core/plan/demo-shoot.ts';
import type { SetupColumnInput } from '../../src/core/plan/setup-column.ts';
import { setupScene } from '../../src/core/plan/setup-light.ts';
import { setupQuestion } from '../../src/core/plan/setup-lights.ts';
import { launchBrowser } from '../support/launch.ts';
import { seededRandom, seededScene } from '../support/seeded-framings.ts';
import type { Bench, Figure } from './bench.ts';
import type { ColumnsTimed } from './forty-columns-page.ts';

const COLUMNS = 40;
const STEPS = 144;
const RUNS = 5;
const TARGET_MS = 600;
const BUILT = 'node_modules/.cache/undersky-bench-page';
const PAGE = 'tests/bench/forty-columns.html';

/** The demo's quartet in forty framings, each over its own ragged skyline of 36 points. */
const inputs = (): readonly SetupColumnInput[] => {
  const shoot = demoShoot();
  const setup = shoot.setups['quartet'];
  const spot = setup && shoot.spots[setup.spotId];
  if (setup === undefined || spot === undefined) throw new Error('The demo has no quartet.');
  const question = setupQuestion(setup, spot, demoKit());
  if (!question.ok) throw new Error('The demo kit lacks what its quartet needs.');
  const scene = setupScene(shoot, setup, spot);
  const random = seededRandom(40);
  return Array.from({ length: COLUMNS }, () => {
    const { framing, skyline } = seededScene(random);
    return {
      scene: { ...scene, framing, skyline },
      question: question.value,
      date: shoot.date,
      stepMin: (24 * 60) / STEPS,
    };
  });
};

const measure = async (): Promise<readonly Figure[]> => {
  await build({
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    worker: { format: 'es' },
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
    await page.waitForFunction(() => 'timeColumns' in window);
    const asked = inputs();
    const timed: ColumnsTimed[] = [];
    for (let run = 0; run <= RUNS; run += 1) {
      timed.push(await page.evaluate((columns) => window.timeColumns(columns), asked));
    }
    timed.forEach(checkColumns);
    const [first = NaN, ...later] = timed.map(({ tookMs }) => tookMs);
    const median = later.toSorted((one, other) => one - other)[Math.floor(RUNS / 2)] ?? NaN;
    return [
      figure('forty columns in the worker, request to last answer, just opened', first),
      figure(`the same again, median of ${RUNS}`, median),
    ];
  } finally {
    await browser.close();
    await server.close();
  }
};

/** A column that was dropped or left empty would be quick. */
const checkColumns = ({ steps, withSky, withReach }: ColumnsTimed): void => {
  if (steps.length !== COLUMNS || steps.some((count) => count !== STEPS))
    throw new Error(`Expected ${COLUMNS} columns of ${STEPS} steps, found ${steps.join(', ')}.`);
  if (withSky === 0 || withReach < withSky)
    throw new Error(`Of ${withSky} steps with sky in the frame only ${withReach} have a reach.`);
};

const figure = (name: string, value: number): Figure => ({
  figure: name,
  value,
  unit: 'ms',
  target: TARGET_MS,
  ok: value < TARGET_MS,
});

export const benches: readonly Bench[] = [{ name: 'Forty columns in the worker', run: measure }];
