import { expect, test } from 'vitest';
import {
  groundPerPixelM,
  mercatorLatitudeDeg,
  mercatorShareY,
  tileAt,
} from '../../../src/core/skyline/web-mercator.ts';

// x = ⌊(λ + 180)/360 · 2^z⌋, y = ⌊(1 − asinh(tan φ)/π)/2 · 2^z⌋, worked by hand.
test.each([
  { latitudeDeg: 51.5, longitudeDeg: -0.1257, zoom: 12, x: 2046, y: 1362 },
  { latitudeDeg: -33.8688, longitudeDeg: 151.2093, zoom: 10, x: 942, y: 614 },
  { latitudeDeg: 0, longitudeDeg: -180, zoom: 3, x: 0, y: 4 },
  { latitudeDeg: 0, longitudeDeg: 180, zoom: 3, x: 0, y: 4 },
  { latitudeDeg: 89, longitudeDeg: 0, zoom: 2, x: 2, y: 0 },
  { latitudeDeg: -90, longitudeDeg: 0, zoom: 2, x: 2, y: 3 },
])('$latitudeDeg, $longitudeDeg at zoom $zoom is tile $x, $y', ({ zoom, x, y, ...place }) => {
  expect(tileAt(place, zoom)).toEqual({ zoom, x, y });
});

// 156543.034 m · cos φ/2^z, the usual table of web maps.
test.each([
  { latitudeDeg: 0, zoom: 0, pixelM: 156_543.034 },
  { latitudeDeg: 51.5, zoom: 12, pixelM: 23.792 },
])('at $latitudeDeg° a pixel of zoom $zoom covers $pixelM m', ({ latitudeDeg, zoom, pixelM }) => {
  expect(groundPerPixelM(latitudeDeg, zoom)).toBeCloseTo(pixelM, 3);
});

test('the square of the projection ends at 85.0511° and comes back to the latitude it was', () => {
  expect(mercatorShareY(85.0511287798)).toBeCloseTo(0, 9);
  expect(mercatorShareY(-85.0511287798)).toBeCloseTo(1, 9);
  for (const latitudeDeg of [-80, -12.5, 0, 45, 66])
    expect(mercatorLatitudeDeg(mercatorShareY(latitudeDeg))).toBeCloseTo(latitudeDeg, 9);
});
