import { gzipSync } from 'node:zlib';
import { zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import type { ElevationGrid } from '../../../src/core/skyline/elevation-grid.ts';
import { groundHeightM, placeGrids } from '../../../src/core/skyline/placed-grid.ts';
import type { Result } from '../../../src/core/units/result.ts';
import { readElevationFile } from '../../../src/exchange/elevation/elevation-file.ts';
import { hgtCorner } from '../../../src/exchange/elevation/hgt-name.ts';
import { hgtBytes } from '../../support/hgt-file.ts';

const area = { latitudeDeg: 51.5, longitudeDeg: -0.1257, reachM: 40_000 };

const read = async (
  name: string,
  bytes: Uint8Array<ArrayBuffer>,
  wanted = area,
): Promise<Result<readonly ElevationGrid[], string>> => {
  const work = readElevationFile({ name, blob: new Blob([bytes]) }, wanted);
  for (;;) {
    const step = await work.next();
    if (step.done === true) return step.value;
  }
};

const heightAt = async (
  name: string,
  bytes: Uint8Array<ArrayBuffer>,
  place: { latitudeDeg: number; longitudeDeg: number },
): Promise<number> => {
  const grids = await read(name, bytes, { ...place, reachM: 40_000 });
  if (!grids.ok) throw new Error(grids.problem);
  return groundHeightM(placeGrids(grids.value, place, 40_000), place) ?? NaN;
};

describe('a sample stands where its row and column put it', () => {
  // Row = (n − 1)(1 − frac φ), column = (n − 1) frac λ, by the published layout, worked by hand.
  test.each([
    {
      name: 'N51W001.hgt',
      side: 1201,
      latitudeDeg: 51.5,
      longitudeDeg: -0.1257,
      row: 600,
      column: 1049.16,
    },
    {
      name: 's34e151.HGT',
      side: 3601,
      latitudeDeg: -33.8688,
      longitudeDeg: 151.2093,
      row: 3127.68,
      column: 753.48,
    },
  ])(
    '$latitudeDeg, $longitudeDeg in $name: row $row, column $column',
    async ({ name, side, row, column, ...place }) => {
      const rows = hgtBytes(side, (at) => at);
      expect(await heightAt(name, rows, place)).toBeCloseTo(row, 2);
      const columns = hgtBytes(side, (_, at) => at);
      expect(await heightAt(name, columns, place)).toBeCloseTo(column, 2);
    },
  );

  test('only the rows within reach are held', async () => {
    const grids = await read(
      'N51W001.hgt',
      hgtBytes(1201, () => 20),
    );
    // 40 km are 0.36° to each side of the middle row: 433 rows of 3″.
    expect(grids.ok && grids.value[0]?.rows).toBeGreaterThan(860);
    expect(grids.ok && grids.value[0]?.rows).toBeLessThan(880);
  });

  test('nothing is read of a tile out of reach, and the one beyond the date line is found', async () => {
    const tile = hgtBytes(1201, () => 20);
    expect(await read('N55W001.hgt', tile)).toEqual({ ok: true, value: [] });
    expect(await read('N51E007.hgt', tile)).toEqual({ ok: true, value: [] });
    const beyond = await read('N51W180.hgt', tile, { ...area, longitudeDeg: 179.9 });
    expect(beyond.ok && beyond.value).toHaveLength(1);
  });
});

test('voids and heights that no land has are told apart and neither is a height', async () => {
  const grids = await read(
    'N51W001.hgt',
    hgtBytes(1201, (row, column) => {
      if (row === 600 && column < 10) return -32768;
      if (row === 601 && column < 3) return 9500;
      return row === 602 && column < 2 ? -900 : 12;
    }),
  );
  expect(grids).toMatchObject({ ok: true, value: [{ voidCount: 15, absurdCount: 5 }] });
});

describe('packed tiles', () => {
  const tile = hgtBytes(1201, (row) => row);
  const place = { latitudeDeg: 51.5, longitudeDeg: -0.1257 };

  test('a .hgt.gz and a .zip with the tile in a folder give the same heights', async () => {
    expect(await heightAt('N51W001.hgt.gz', new Uint8Array(gzipSync(tile)), place)).toBeCloseTo(
      600,
      2,
    );
    const zip = zipSync({ 'read me.txt': new Uint8Array(9), 'dem/N51W001.hgt': tile });
    expect(await heightAt('tiles.zip', new Uint8Array(zip), place)).toBeCloseTo(600, 2);
    const stored = zipSync({ 'N51W001.hgt': [tile, { level: 0 }] });
    expect(await heightAt('N51W001.SRTMGL3.hgt.zip', new Uint8Array(stored), place)).toBeCloseTo(
      600,
      2,
    );
  });

  test.each([
    {
      what: 'a bomb in gzip',
      name: 'N51W001.hgt.gz',
      bytes: () => new Uint8Array(gzipSync(new Uint8Array(27e6))),
      says: 'unpacks to more than the 25.9 MB of the largest tile',
    },
    {
      what: 'a bomb in a zip',
      name: 'N51W001.zip',
      bytes: () => new Uint8Array(zipSync({ 'N51W001.hgt': new Uint8Array(27e6) })),
      says: 'unpacks to more than the 25.9 MB of the largest tile',
    },
    {
      what: 'a gzip cut short',
      name: 'N51W001.hgt.gz',
      bytes: () => new Uint8Array(gzipSync(tile)).slice(0, 900),
      says: 'damaged or cut short',
    },
    {
      what: 'a zip cut short',
      name: 'N51W001.zip',
      bytes: () => new Uint8Array(zipSync({ 'N51W001.hgt': tile })).slice(0, 900),
      says: 'damaged or cut short',
    },
    {
      what: 'no zip at all',
      name: 'N51W001.zip',
      bytes: () => new Uint8Array(500).fill(7),
      says: 'N51W001.zip',
    },
    {
      what: 'a zip of something else',
      name: 'notes.zip',
      bytes: () => new Uint8Array(zipSync({ 'notes.txt': new Uint8Array(9) })),
      says: 'expected a tile such as N46E007.hgt inside, found none',
    },
  ])('$what: $says', async ({ name, bytes, says }) => {
    expect(await read(name, bytes())).toEqual({
      ok: false,
      problem: expect.stringContaining(says),
    });
  });
});

describe('what is wrong with a file is said with what was expected', () => {
  test.each([
    {
      name: 'N51W001.hgt',
      size: 2_884_800,
      says: 'N51W001.hgt: expected 2,884,802 bytes (1201 × 1201 heights, 3″) or 25,934,402 bytes (3601 × 3601, 1″), found 2,884,800.',
    },
    {
      name: 'alps.hgt',
      size: 2_884_802,
      says: 'expected a name that gives the south-west corner, such as N46E007.hgt, found alps.hgt',
    },
    { name: 'N51W001.hgt', size: 0, says: 'found an empty file' },
    {
      name: 'N51W001.asc',
      size: 10,
      says: 'expected a file ending in .hgt, .hgt.gz, .hgt.zip, .tif or .tiff, found N51W001.asc',
    },
    {
      name: 'N91E007.hgt',
      size: 2_884_802,
      says: 'expected a corner from S90 to N89 and W180 to E179, found 91° N, 007° E',
    },
  ])('$name of $size bytes', async ({ name, size, says }) => {
    expect(await read(name, new Uint8Array(size))).toEqual({
      ok: false,
      problem: expect.stringContaining(says),
    });
  });

  test('a tile of nothing but voids', async () => {
    const problem = 'N51W001.hgt: expected heights within 40 km of the spot, found only voids.';
    expect(
      await read(
        'N51W001.hgt',
        hgtBytes(1201, () => -32768),
      ),
    ).toEqual({ ok: false, problem });
  });
});

test.each([
  { name: 'N00E006.hgt', southDeg: 0, westDeg: 6 },
  { name: 'S01W180.hgt', southDeg: -1, westDeg: -180 },
  { name: 'n46e007.SRTMGL1.hgt', southDeg: 46, westDeg: 7 },
])('$name has its corner at $southDeg, $westDeg', ({ name, ...corner }) => {
  expect(hgtCorner(name)).toEqual({ ok: true, value: corner });
});
