import { describe, expect, test } from 'vitest';
import type { ElevationGrid } from '../../../src/core/skyline/elevation-grid.ts';
import { groundHeightM, placeGrids } from '../../../src/core/skyline/placed-grid.ts';
import type { Result } from '../../../src/core/units/result.ts';
import { readGeotiff } from '../../../src/exchange/elevation/geotiff.ts';
import { tiffFile, WGS84_KEYS, type TiffQuestion } from '../../support/tiff-file.ts';

const place = { latitudeDeg: 45.5, longitudeDeg: 7.5 };
const area = { ...place, reachM: 30_000 };

const read = async (
  bytes: Uint8Array<ArrayBuffer>,
  wanted = area,
): Promise<Result<readonly ElevationGrid[], string>> => {
  const work = readGeotiff({ name: 'sheet.tif', blob: new Blob([bytes]) }, wanted);
  for (;;) {
    const step = await work.next();
    if (step.done === true) return step.value;
  }
};

const heightIn = async (
  bytes: Uint8Array<ArrayBuffer>,
  at: { latitudeDeg: number; longitudeDeg: number } = place,
): Promise<number | null> => {
  const grids = await read(bytes, { ...area, ...at });
  if (!grids.ok) throw new Error(grids.problem);
  return groundHeightM(placeGrids(grids.value, at, area.reachM), at);
};

/** One degree from 46° N, 7° E in steps of a hundredth; the height is the row times 10 plus the column. */
const sheet: TiffQuestion = {
  columns: 100,
  rows: 100,
  kind: 'int16',
  value: (row, column) => row * 10 + column,
};

describe('a sample stands where tie point, pixel size and raster type put it', () => {
  // 45.5 N, 7.5 E is 50 steps from the corner: as areas that is half a sample further on.
  test('pixels that are areas are known at their middles', async () => {
    expect(await heightIn(tiffFile(sheet))).toBeCloseTo(49.5 * 10 + 49.5, 2);
  });

  test('pixels that are points are known where they are', async () => {
    const geoKeys = { ...WGS84_KEYS, 1025: 2 };
    expect(await heightIn(tiffFile({ ...sheet, geoKeys }))).toBeCloseTo(50 * 10 + 50, 2);
  });

  test('the tie point may lie anywhere in the raster', async () => {
    const tiePoint = [20, 30, 0, 7.2, 45.7, 0];
    expect(await heightIn(tiffFile({ ...sheet, tiePoint }))).toBeCloseTo(544.5, 2);
  });

  test('a transformation does as well', async () => {
    const transformation = [0.01, 0, 0, 7, 0, -0.01, 0, 46, 0, 0, 0, 0, 0, 0, 0, 1];
    expect(await heightIn(tiffFile({ ...sheet, transformation }))).toBeCloseTo(544.5, 2);
  });

  test('two sheets of areas side by side leave no seam', async () => {
    const west = await read(tiffFile({ ...sheet, value: () => 100 }), {
      ...area,
      longitudeDeg: 8,
    });
    const east = await read(
      tiffFile({ ...sheet, value: () => 100, tiePoint: [0, 0, 0, 8, 46, 0] }),
      { ...area, longitudeDeg: 8 },
    );
    if (!west.ok || !east.ok) throw new Error('expected two sheets');
    for (const longitudeDeg of [7.996, 7.9999, 8, 8.0001, 8.004]) {
      const at = { latitudeDeg: 45.5, longitudeDeg };
      const placed = placeGrids([...west.value, ...east.value], at, 30_000);
      expect(groundHeightM(placed, at)).toBeCloseTo(100, 6);
    }
    const beyond = { latitudeDeg: 45.5, longitudeDeg: 6.9999 };
    expect(groundHeightM(placeGrids(west.value, beyond, 30_000), beyond)).toBeNull();
  });

  test('a sheet round the world is read on both sides of the date line', async () => {
    const world = tiffFile({
      columns: 3600,
      rows: 10,
      kind: 'int16',
      value: () => 7,
      tiePoint: [0, 0, 0, -180, 46, 0],
      pixelScale: [0.1, 0.1, 0],
    });
    for (const longitudeDeg of [-179.99, 179.99, 180])
      expect(await heightIn(world, { latitudeDeg: 45.5, longitudeDeg })).toBe(7);
  });
});

describe('kinds of sample', () => {
  test.each([
    { kind: 'int16' as const, isBigEndian: false, isDeflated: false },
    { kind: 'int16' as const, isBigEndian: true, isDeflated: false },
    { kind: 'uint16' as const, isBigEndian: false, isDeflated: true },
    { kind: 'int32' as const, isBigEndian: false, isDeflated: false },
    { kind: 'float32' as const, isBigEndian: true, isDeflated: true },
    { kind: 'float64' as const, isBigEndian: false, isDeflated: false },
  ])('$kind, high byte first: $isBigEndian, deflated: $isDeflated', async (how) => {
    expect(await heightIn(tiffFile({ ...sheet, ...how, rowsPerStrip: 7 }))).toBeCloseTo(544.5, 2);
  });

  test.each([
    { kind: 'int16' as const, noData: '-9999', value: -9999 },
    { kind: 'uint16' as const, noData: '65535', value: 65535 },
    { kind: 'uint16' as const, noData: '0', value: 0 },
    { kind: 'float32' as const, noData: '-3.4028234663852886e+38', value: -3.4028234663852886e38 },
    { kind: 'float32' as const, noData: 'nan', value: NaN },
  ])('$noData stands for no height in $kind', async ({ kind, noData, value }) => {
    const bytes = tiffFile({
      ...sheet,
      kind,
      noData,
      value: (row, column) => (row === 50 && column < 60 ? value : 400),
    });
    const grids = await read(bytes);
    expect(grids).toMatchObject({ ok: true, value: [{ voidCount: expect.any(Number) }] });
    expect(grids.ok && grids.value[0]?.voidCount).toBeGreaterThan(20);
    expect(await heightIn(bytes, { latitudeDeg: 45.495, longitudeDeg: 7.5 })).toBeNull();
    expect(await heightIn(bytes, { latitudeDeg: 45.475, longitudeDeg: 7.5 })).toBe(400);
  });
});

describe('only the window within reach is read', () => {
  test('a sheet out of reach gives no grid', async () => {
    expect(await read(tiffFile(sheet), { ...area, latitudeDeg: 50 })).toEqual({
      ok: true,
      value: [],
    });
  });

  test('of a fine sheet no more than 30 km round the spot', async () => {
    const grids = await read(
      tiffFile({ ...sheet, columns: 900, rows: 900, pixelScale: [0.002, 0.002, 0] }),
      { ...area, latitudeDeg: 45.1, longitudeDeg: 7.9 },
    );
    // 30 km are 0.273° north, 0.42° east with a tenth to spare: 273 rows, 420 columns.
    expect(grids.ok && grids.value[0]?.rows).toBeLessThan(285);
    expect(grids.ok && grids.value[0]?.columns).toBeLessThan(440);
  });

  test('a head that states millions of rows and columns is refused before anything is unpacked', async () => {
    const huge = tiffFile({
      ...sheet,
      pixelScale: [1e-7, 1e-7, 0],
      statedColumns: 3_000_000,
      statedRows: 3_000_000,
      rowsPerStrip: 1,
    });
    expect(await read(huge, { ...area, latitudeDeg: 45.9, longitudeDeg: 7.1 })).toEqual({
      ok: false,
      problem: expect.stringContaining(
        'unpack to at most 2 GB, 64 MB side by side, found 22.3 GB, 6 MB',
      ),
    });
  });
});

describe('what is wrong with a file is said with what was expected', () => {
  test.each([
    {
      what: 'a projection',
      says: 'expected degrees on WGS 84 (EPSG:4326), found the projection EPSG:32632 (WGS 84 / UTM zone 32N)',
      question: { geoKeys: { 1024: 1, 1025: 1, 3072: 32632 }, citation: 'WGS 84 / UTM zone 32N' },
    },
    {
      what: 'another geographic system',
      says: 'found the geographic system EPSG:4277',
      question: { geoKeys: { 1024: 2, 1025: 1, 2048: 4277 } },
    },
    { what: 'no system', says: 'found no coordinate system', question: { geoKeys: null } },
    {
      what: 'no place',
      says: 'expected a tie point and a pixel size',
      question: { tiePoint: null },
    },
    {
      what: 'a turned raster',
      says: 'expected a tie point and a pixel size, or a transformation without rotation',
      question: {
        transformation: [0.01, 0.002, 0, 7, 0.002, -0.01, 0, 46, 0, 0, 0, 0, 0, 0, 0, 1],
      },
    },
    {
      what: 'metres in place of degrees',
      says: 'expected degrees, found a corner at 400000, 5100000',
      question: { tiePoint: [0, 0, 0, 400000, 5100000, 0], pixelScale: [30, 30, 0] },
    },
    {
      what: 'a pixel size of nothing',
      says: 'expected rows from north to south',
      question: { pixelScale: [0, 0.01, 0] },
    },
    {
      what: 'feet',
      says: 'expected heights in metres, found the unit of EPSG:9003',
      question: { geoKeys: { ...WGS84_KEYS, 4099: 9003 } },
    },
    {
      what: 'a picture',
      says: 'expected heights of 16 or 32 bits, found 8-bit whole numbers without sign',
      question: { kind: 'uint8' as const },
    },
    {
      what: 'several bands',
      says: 'expected one band of heights, found 4 bands',
      question: { bands: 4 },
    },
    {
      what: 'an unknown packing',
      says: 'found packing number 34712',
      question: { compression: 34712 },
    },
    {
      what: 'sides beyond all sheets',
      says: 'expected 2 to 4000000 columns and rows, found 4294967295 × 100',
      question: { statedColumns: 4294967295 },
    },
    {
      what: 'a block of gigabytes',
      says: '64 MB side by side, found 8.2 GB, 4000 MB',
      question: { statedColumns: 2_000_000, statedRows: 1000, rowsPerStrip: 1000 },
    },
    {
      what: 'a bomb',
      says: 'unpacks to more than it says',
      question: {
        columns: 4000,
        rows: 4000,
        value: () => 0,
        isDeflated: true,
        statedColumns: 100,
        statedRows: 100,
      },
    },
    {
      what: 'nothing but voids',
      says: 'found only voids',
      question: { noData: '5', value: () => 5 },
    },
  ])('$what: $says', async ({ says, question }) => {
    const problem = expect.stringContaining(says);
    expect(await read(tiffFile({ ...sheet, ...question }))).toEqual({ ok: false, problem });
  });

  test('cut short, at whatever byte', async () => {
    const whole = tiffFile({ ...sheet, rowsPerStrip: 5 });
    for (const share of [0.0005, 0.01, 0.3, 0.5]) {
      const cut = whole.slice(0, Math.ceil(whole.length * share));
      expect(await read(cut)).toMatchObject({ ok: false });
    }
  });

  test('something else under the name', async () => {
    const text = new Uint8Array(Buffer.from('<html>not here</html>'));
    expect(await read(text)).toEqual({
      ok: false,
      problem: 'sheet.tif: expected a GeoTIFF, found a file that does not begin like one.',
    });
  });

  test('bytes of chance behind a true beginning never do more than fail', async () => {
    for (let seed = 1; seed < 60; seed += 1) {
      const bytes = tiffFile({ ...sheet, columns: 20, rows: 20 });
      for (let at = 4; at < 400; at += 1)
        if ((at * 7919 + seed * 104729) % 23 === 0) bytes[at] = (at * seed * 31) & 255;
      const result = await read(bytes);
      expect(typeof result.ok).toBe('boolean');
    }
  });
});
