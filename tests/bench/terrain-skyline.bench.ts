import { mkdtempSync, openAsBlob, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { ElevationGrid } from '../../src/core/skyline/elevation-grid.ts';
import { terrainSkyline } from '../../src/core/skyline/terrain-skyline.ts';
import { readElevationFile } from '../../src/exchange/elevation/elevation-file.ts';
import { terrainSkylineJob } from '../../src/worker/ground/terrain-skyline-job.ts';
import { hgtBytes } from '../support/hgt-file.ts';
import { hills } from '../support/terrain-grid.ts';
import type { Bench, Figure } from './bench.ts';

const SIDE = 3601;
const RUNS = 5;
const MEGABYTE = 1e6;
/** Where four tiles meet, so that all of them are read. */
const place = { latitudeDeg: 46.003, longitudeDeg: 7.998 };
const NAMES = ['N46E007.hgt', 'N46E008.hgt', 'N45E007.hgt', 'N45E008.hgt'];

type OpenFile = { readonly name: string; readonly blob: Blob };

/** Four one-second tiles of rough hills on the disk; a patch of each is void. */
const withFiles = async <Answer>(
  measure: (files: readonly OpenFile[]) => Promise<Answer>,
): Promise<Answer> => {
  const folder = mkdtempSync(join(tmpdir(), 'undersky-heights-'));
  const ground = hills(0.45);
  try {
    const files: OpenFile[] = [];
    for (const name of NAMES) {
      const south = Number(name.slice(1, 3));
      const west = Number(name.slice(4, 7));
      const path = join(folder, name);
      writeFileSync(
        path,
        hgtBytes(SIDE, (row, column) =>
          row % 900 < 12 && column % 900 < 12
            ? -32768
            : Math.round(ground(south + 1 - row / 3600, west + column / 3600)),
        ),
      );
      files.push({ name, blob: await openAsBlob(path) });
    }
    return await measure(files);
  } finally {
    rmSync(folder, { recursive: true });
  }
};

type Run = {
  readonly wallMs: number;
  readonly cpuMs: number;
  /** Heap and array buffers, the most between two steps. */
  readonly peakBytes: number;
};

const runJob = async (files: readonly OpenFile[]): Promise<Run> => {
  const startMs = performance.now();
  const startCpu = process.cpuUsage();
  let peakBytes = 0;
  const job = terrainSkylineJob({ place, eyeHeightM: 1.6, files, tiles: [] });
  for (;;) {
    const step = await job.next();
    const { heapUsed, arrayBuffers } = process.memoryUsage();
    peakBytes = Math.max(peakBytes, heapUsed + arrayBuffers);
    if (step.done !== true) continue;
    if (!step.value.ok) throw new Error(step.value.problem);
    const { user, system } = process.cpuUsage(startCpu);
    return { wallMs: performance.now() - startMs, cpuMs: (user + system) / 1000, peakBytes };
  }
};

const readAll = async (files: readonly OpenFile[]): Promise<readonly ElevationGrid[]> => {
  const grids: ElevationGrid[] = [];
  for (const file of files) {
    const work = readElevationFile(file, { ...place, reachM: 40_000 });
    let step = await work.next();
    while (step.done !== true) step = await work.next();
    if (step.value.ok) grids.push(...step.value.value);
  }
  return grids;
};

const altitudes = (grids: readonly ElevationGrid[], raysPerDegree: number): readonly number[] => {
  const work = terrainSkyline({ place, eyeHeightM: 1.6, grids, raysPerDegree });
  let step = work.next();
  while (step.done !== true) step = work.next();
  if (!step.value.ok) throw new Error(step.value.problem);
  return step.value.value.altitudesDeg;
};

const median = (values: readonly number[]): number =>
  values.toSorted((one, other) => one - other)[Math.floor(values.length / 2)] ?? NaN;

const atMost = (figure: string, value: number, unit: string, target: number): Figure => ({
  figure,
  value,
  unit,
  target,
  ok: value <= target,
});

export const benches: readonly Bench[] = [
  {
    name: 'Skyline of the terrain to 40 km, 11,520 rays, four 1″ tiles from the disk',
    run: () =>
      withFiles(async (files) => {
        await runJob(files);
        const runs: Run[] = [];
        for (let at = 0; at < RUNS; at += 1) runs.push(await runJob(files));
        const grids = await readAll(files);
        const usual = altitudes(grids, 32);
        const fourfold = altitudes(grids, 128);
        const largest = Math.max(
          ...usual.map((altitudeDeg, at) => Math.abs(altitudeDeg - (fourfold[at] ?? NaN))),
        );
        return [
          atMost(
            'file to skyline, median by the clock',
            median(runs.map(({ wallMs }) => wallMs)),
            'ms',
            1500,
          ),
          atMost(
            'file to skyline, median of processor time',
            median(runs.map(({ cpuMs }) => cpuMs)),
            'ms',
            1500,
          ),
          atMost('largest difference to four times the rays', largest, '°', 0.05),
          atMost(
            'heap and array buffers, the most',
            Math.max(...runs.map(({ peakBytes }) => peakBytes)) / MEGABYTE,
            'MB',
            250,
          ),
        ];
      }),
  },
];
