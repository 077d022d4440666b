import { expect, test } from 'vitest';
import { groundHeightM, placeGrids } from '../../../src/core/skyline/placed-grid.ts';
import { tileMosaic, type HeightTile } from '../../../src/exchange/elevation/tile-mosaic.ts';

const SIDE = 256;

const heightOf = (latitudeDeg: number, longitudeDeg: number): number =>
  (latitudeDeg + ((longitudeDeg + 360) % 360)) * 50;

/** Each pixel holds its own latitude and longitude, fifty times their sum, the longitude counted east to 360°. */
const tile = (zoom: number, x: number, y: number): HeightTile => ({
  zoom,
  x,
  y,
  side: SIDE,
  heights: Float32Array.from({ length: SIDE * SIDE }, (_, at) => {
    const column = x + ((at % SIDE) + 0.5) / SIDE;
    const row = y + (Math.floor(at / SIDE) + 0.5) / SIDE;
    const longitudeDeg = (column / 2 ** zoom) * 360 - 180;
    const latitudeDeg =
      (Math.atan(Math.sinh(Math.PI * (1 - (2 * row) / 2 ** zoom))) * 180) / Math.PI;
    return heightOf(latitudeDeg, longitudeDeg);
  }),
});

test('a height is found where latitude and longitude say, across the seams of the tiles', () => {
  const tiles = [
    tile(12, 2046, 1362),
    tile(12, 2047, 1362),
    tile(12, 2046, 1361),
    tile(12, 2047, 1361),
  ];
  const place = { latitudeDeg: 51.5, longitudeDeg: -0.0879 };
  const mosaic = tileMosaic(tiles, place, 'tiles');
  if (!mosaic.ok) throw new Error(mosaic.problem);
  expect(mosaic.value).toMatchObject({ columns: 512, rows: 512, voidCount: 0 });
  for (const latitudeDeg of [51.5, 51.5105, 51.52])
    for (const longitudeDeg of [-0.12, -0.0879, -0.08789, -0.05]) {
      const at = { latitudeDeg, longitudeDeg };
      const heightM = groundHeightM(placeGrids([mosaic.value], at, 10_000), at);
      // In single precision; a degree is 50 m of height here, half a pixel of 24 m 0.009 m.
      expect(Math.abs((heightM ?? NaN) - heightOf(latitudeDeg, longitudeDeg))).toBeLessThan(1e-3);
    }
});

test('tiles on both sides of the date line are neighbours', () => {
  const world = 2 ** 8;
  const place = { latitudeDeg: 0.5, longitudeDeg: 179.99 };
  const mosaic = tileMosaic([tile(8, world - 1, 127), tile(8, 0, 127)], place, 'tiles');
  if (!mosaic.ok) throw new Error(mosaic.problem);
  expect(mosaic.value.columns).toBe(512);
  for (const longitudeDeg of [179.5, 179.999, -179.999, -179.5, 180]) {
    const at = { latitudeDeg: 0.5, longitudeDeg };
    const heightM = groundHeightM(placeGrids([mosaic.value], at, 100_000), at);
    expect(Math.abs((heightM ?? NaN) - heightOf(0.5, longitudeDeg))).toBeLessThan(0.02);
  }
});

test('where a tile is missing there are voids; tiles far apart are refused', () => {
  const place = { latitudeDeg: 0, longitudeDeg: 0 };
  const holed = tileMosaic([tile(4, 7, 7), tile(4, 8, 8)], place, 'tiles');
  expect(holed).toMatchObject({ ok: true, value: { voidCount: 2 * SIDE * SIDE } });
  const apart = tileMosaic(
    [tile(10, 400, 500), tile(10, 500, 500), tile(10, 450, 600)],
    place,
    'tiles',
  );
  expect(apart).toEqual({
    ok: false,
    problem: 'tiles: expected tiles that lie side by side, found a field of 25856 × 25856 heights.',
  });
});
