import { obstacleSkyline } from '../../src/core/skyline/obstacle-skyline.ts';
import { shadowOutlines } from '../../src/core/skyline/shadow-outlines.ts';
import { shadowsAt, type Shadows } from '../../src/core/skyline/shadow.ts';
import { outlinesOfSet } from '../../src/exchange/outlines/outlines-of-set.ts';
import { readOutlinesGeoJson } from '../../src/exchange/outlines/read-outlines-geojson.ts';
import { writeOutlinesGeoJson } from '../../src/exchange/outlines/write-outlines-geojson.ts';
import { shadowUnionJob } from '../../src/worker/ground/shadow-union-job.ts';
import { inventedTown } from '../support/invented-town.ts';
import type { Bench, Figure } from './bench.ts';

const COUNT = 5000;
const MINUTES = 30;
const PLACE = { latitudeDeg: 45.65, longitudeDeg: 13.76 };
const DATE = '2027-07-01';
/** From high to low, as the day goes. */
const SUNS = [60, 40, 20, 10, 5].map((apparentAltitudeDeg, hour) => ({
  azimuthDeg: 180 + 25 * hour,
  apparentAltitudeDeg,
}));

const most = (figure: string, value: number, target: number): Figure => ({
  figure,
  value,
  unit: 'ms',
  target,
  ok: value <= target,
});

const medianOf = (times: readonly number[]): number =>
  times.toSorted((first, second) => first - second)[Math.floor(times.length / 2)] ?? Number.NaN;

const medianMs = (runs: number, work: (run: number) => unknown): number =>
  medianOf(
    Array.from({ length: runs }, (_, run) => {
      const startMs = performance.now();
      work(run);
      return performance.now() - startMs;
    }),
  );

/** What a canvas path is given, without the canvas. */
function traced({ groups }: Shadows): number {
  let sum = 0;
  for (const { coordinates, ringEnds } of groups) {
    let corner = 0;
    for (const end of ringEnds)
      for (; corner < end; corner += 1) {
        const north = (coordinates[2 * corner + 1] ?? NaN) * (Math.PI / 180);
        sum += (coordinates[2 * corner] ?? NaN) + Math.asinh(Math.tan(north));
      }
  }
  return sum;
}

async function unionMs(sun: (typeof SUNS)[number]): Promise<{ wholeMs: number; stepMs: number }> {
  const job = shadowUnionJob({
    obstacles: inventedTown(COUNT, PLACE),
    sun,
    date: DATE,
    points: [],
  });
  const startMs = performance.now();
  let lastMs = startMs;
  let stepMs = 0;
  for (;;) {
    const step = await job.next();
    const nowMs = performance.now();
    stepMs = Math.max(stepMs, nowMs - lastMs);
    lastMs = nowMs;
    if (step.done === true) return { wholeMs: nowMs - startMs, stepMs };
  }
}

export const benches: readonly Bench[] = [
  {
    name: '5,000 outlines: shadows of a minute and the skyline',
    run: async () => {
      const town = inventedTown(COUNT, PLACE);
      const outlines = shadowOutlines(town);
      const minute = (run: number): number => {
        const [high = SUNS[0]] = [SUNS[run % SUNS.length]];
        const shadows = high && shadowsAt(outlines, { sun: high, date: DATE });
        return shadows?.ok === true ? traced(shadows.value) : Number.NaN;
      };
      const skyline = (): unknown =>
        obstacleSkyline({ place: PLACE, eyeHeightM: 1.6, obstacles: town, date: DATE });
      return [
        most(
          'outlines made ready, once',
          medianMs(7, () => shadowOutlines(town)),
          60,
        ),
        most('shadows of a minute, traced', medianMs(MINUTES, minute), 20),
        most('obstacle skyline', medianMs(15, skyline), 50),
      ];
    },
  },
  {
    name: '5,000 outlines: union of the shadows, sun from 60° to 5°',
    run: async () => {
      const runs: { wholeMs: number; stepMs: number }[] = [];
      for (const sun of SUNS) runs.push(await unionMs(sun));
      return [
        most(
          'the slowest union, the first one cold',
          Math.max(...runs.map(({ wholeMs }) => wholeMs)),
          1000,
        ),
        most('the longest step of it', Math.max(...runs.map(({ stepMs }) => stepMs)), 150),
      ];
    },
  },
  {
    name: '5,000 outlines as a file',
    run: async () => {
      const text = writeOutlinesGeoJson(inventedTown(COUNT, PLACE));
      return [
        most(
          'read and checked',
          medianMs(5, () => readOutlinesGeoJson(text)),
          500,
        ),
        most(
          'kept set parsed',
          medianMs(7, () => outlinesOfSet(text, {})),
          60,
        ),
      ];
    },
  },
];
