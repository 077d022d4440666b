import { describe, expect, test } from 'vitest';
import { destination, groundVector } from '../../../src/core/place/geodesy.ts';
import { tileAt, type TileNumber } from '../../../src/core/skyline/web-mercator.ts';
import { runGroundJob } from '../../../src/worker/ground/run-ground-job.ts';
import {
  terrainSkylineJob,
  type TerrainSkylineAnswer,
  type TerrainSkylineInput,
} from '../../../src/worker/ground/terrain-skyline-job.ts';
import type { Result } from '../../../src/core/units/result.ts';
import { elevationTiles } from '../../../src/services/elevation-tiles.ts';
import { heightPng, readHeightPng } from '../../support/height-png.ts';
import { hgtBytes } from '../../support/hgt-file.ts';
import { tiffFile } from '../../support/tiff-file.ts';

const place = { latitudeDeg: 46.25, longitudeDeg: 7.5 };
const top = destination(place, { distanceM: 15_000, bearingDeg: 60 });

/** A mountain of 2000 m 15 km to the east-north-east on a plain at 400 m. */
const groundM = (latitudeDeg: number, longitudeDeg: number): number => {
  const north = (latitudeDeg - top.latitudeDeg) * 111_160;
  const east = (longitudeDeg - top.longitudeDeg) * 77_100;
  return Math.max(400, 2000 - Math.hypot(north, east) / 3);
};
// atan((2000 − 402 − 0.0683 · 15²)/15 000)
const SUMMIT_DEG = (Math.atan((1598 - 15.36) / 15_000) * 180) / Math.PI;

const tile = hgtBytes(1201, (row, column) =>
  Math.round(groundM(47 - row / 1200, 7 + column / 1200)),
);

const run = async (
  input: Partial<TerrainSkylineInput>,
): Promise<Result<TerrainSkylineAnswer, string>> => {
  const job = terrainSkylineJob(
    { place, eyeHeightM: 2, files: [], tiles: [], reachM: 20_000, ...input },
    readHeightPng,
  );
  for (;;) {
    const step = await job.next();
    if (step.done === true) return step.value;
  }
};

const file = (name: string, bytes: Uint8Array<ArrayBuffer>) => ({ name, blob: new Blob([bytes]) });

const expectTheMountain = (
  answer: Result<TerrainSkylineAnswer, string>,
  withinDeg: number,
): void => {
  if (!answer.ok) throw new Error(answer.problem);
  const { altitudesDeg, ridgeDistanceKm } = answer.value;
  expect(altitudesDeg).toHaveLength(360);
  const highest = Math.max(...altitudesDeg);
  expect(altitudesDeg.indexOf(highest)).toBe(60);
  expect(Math.abs(highest - SUMMIT_DEG)).toBeLessThan(withinDeg);
  expect(Math.abs((ridgeDistanceKm[60] ?? NaN) - 15)).toBeLessThan(0.1);
  expect(altitudesDeg[240]).toBeLessThan(0);
};

const isNear = ({ zoom, x, y }: TileNumber): boolean => {
  const middle = tileAt(place, zoom);
  return Math.abs(x - middle.x) <= 3 && Math.abs(y - middle.y) <= 3;
};

const asTile = ({ zoom, x, y }: TileNumber) => {
  const bytes = heightPng(256, (row, column) => {
    const longitudeDeg = ((x + (column + 0.5) / 256) / 2 ** zoom) * 360 - 180;
    const turn = Math.PI * (1 - (2 * (y + (row + 0.5) / 256)) / 2 ** zoom);
    return groundM((Math.atan(Math.sinh(turn)) * 180) / Math.PI, longitudeDeg);
  });
  return { zoom, x, y, png: bytes.buffer };
};

describe('the same mountain from each kind of data', () => {
  test('from a .hgt tile', async () => {
    const answer = await run({ files: [file('N46E007.hgt', tile), file('N50E007.hgt', tile)] });
    // Whole metres and samples 90 m apart: 15 m of height, 0.06°.
    expectTheMountain(answer, 0.06);
    expect(answer).toMatchObject({
      ok: true,
      value: {
        groundElevationM: 400,
        statedElevationM: null,
        sources: ['N46E007.hgt'],
        unusedFiles: ['N50E007.hgt'],
        voidShare: 0,
        uncoveredShare: 0,
        coveredKm: 20,
        absurdCount: 0,
      },
    });
  });

  test('from a GeoTIFF', async () => {
    const sheet = tiffFile({
      columns: 1200,
      rows: 1200,
      kind: 'float32',
      isDeflated: true,
      rowsPerStrip: 16,
      tiePoint: [0, 0, 0, 7, 47, 0],
      pixelScale: [1 / 1200, 1 / 1200, 0],
      value: (row, column) => groundM(47 - (row + 0.5) / 1200, 7 + (column + 0.5) / 1200),
    });
    expectTheMountain(await run({ files: [file('sheet.tif', sheet)] }), 0.06);
  });

  test('from height tiles', async () => {
    const answer = await run({ tiles: elevationTiles(place).filter(isNear).map(asTile) });
    // Pixels of zoom 11 are 53 m apart: 18 m of height, 0.05°.
    expectTheMountain(answer, 0.05);
    expect(answer.ok && answer.value.sources).toEqual([
      'height tiles of zoom 12, 256 px',
      'height tiles of zoom 11, 256 px',
    ]);
  });
});

test('the summit stands where the geodesic says', () => {
  const way = groundVector(place, top);
  expect(way.bearingDeg).toBeCloseTo(60, 6);
});

test('voids are filled, and how much of what was read rests on them is told', async () => {
  const holed = hgtBytes(1201, (row, column) => {
    if (row % 40 < 8 && column % 40 < 8) return -32768;
    return row === 700 && column === 700
      ? 9999
      : Math.round(groundM(47 - row / 1200, 7 + column / 1200));
  });
  const answer = await run({ files: [file('N46E007.hgt', holed)] });
  expectTheMountain(answer, 0.25);
  if (!answer.ok) return;
  // 64 of 1600 samples are voids; a height between two samples rests on one a little oftener.
  expect(answer.value.voidShare).toBeGreaterThan(0.03);
  expect(answer.value.voidShare).toBeLessThan(0.09);
  expect(answer.value.uncoveredShare).toBe(0);
  expect(answer.value.absurdCount).toBe(1);
});

describe('no answer, but why', () => {
  test('every faulty file is named', async () => {
    const answer = await run({
      files: [
        file('N46E007.hgt', tile),
        file('N46E008.hgt', tile.slice(0, 99)),
        file('hills.hgt', tile),
      ],
    });
    expect(answer).toEqual({
      ok: false,
      problem: expect.stringMatching(/N46E008\.hgt: expected .*hills\.hgt: expected/),
    });
  });

  test('a height tile that is no picture, or of another size', async () => {
    const number = tileAt(place, 12);
    const broken = await run({ tiles: [{ ...number, png: new ArrayBuffer(80) }] });
    expect(broken).toEqual({
      ok: false,
      problem: expect.stringContaining(
        `Height tile 12/${number.x}/${number.y}: the picture is damaged`,
      ),
    });
    const small = await run({ tiles: [{ ...number, png: heightPng(64, () => 1).buffer }] });
    expect(small).toEqual({
      ok: false,
      problem: expect.stringContaining('expected 256 or 512 pixels a side, found 64 × 64'),
    });
  });

  test('data of elsewhere, and no data at all', async () => {
    expect(await run({ files: [file('N50E007.hgt', tile)] })).toEqual({
      ok: false,
      problem: 'No elevation data lie within 20 km of the spot: N50E007.hgt lie elsewhere.',
    });
    expect(await run({})).toEqual({ ok: false, problem: 'No elevation data were given.' });
  });
});

describe('driven by the worker', () => {
  const input = {
    place,
    eyeHeightM: 2,
    files: [file('N46E007.hgt', tile)],
    tiles: [],
    reachM: 40_000,
  };

  test('progress only grows, and ends at the whole', async () => {
    const shares: number[] = [];
    const done = await runGroundJob(terrainSkylineJob(input), {
      onProgress: (share) => shares.push(share),
      isCancelled: () => false,
      letMessagesIn: () => Promise.resolve(),
    });
    expect(done).toMatchObject({ kind: 'done', answer: { ok: true } });
    expect(shares.length).toBeGreaterThan(5);
    expect(shares).toEqual(shares.toSorted((one, other) => one - other));
    expect(shares.at(-1)).toBe(1);
  });

  test('cancelled between two steps it goes no further', async () => {
    let told = 0;
    const done = await runGroundJob(terrainSkylineJob(input), {
      onProgress: () => {
        told += 1;
      },
      isCancelled: () => told >= 3,
      letMessagesIn: () => Promise.resolve(),
    });
    expect(done).toEqual({ kind: 'cancelled' });
    expect(told).toBe(3);
  });
});
