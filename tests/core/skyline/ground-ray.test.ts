import { expect, test } from 'vitest';
import { destination, groundVector } from '../../../src/core/place/geodesy.ts';
import { groundRay } from '../../../src/core/skyline/ground-ray.ts';
import { largestError } from '../../support/largest-error.ts';

// Against Karney's geodesics (GeographicLib), good to nanometres.
test.each([
  { distanceM: 1000, withinM: 1e-3 },
  { distanceM: 40_000, withinM: 0.005 },
  { distanceM: 120_000, withinM: 0.05 },
])(
  'a ray stands within $withinM m of the geodesic after $distanceM m',
  ({ distanceM, withinM }) => {
    let largestM = 0;
    for (const latitudeDeg of [-90, -89.7, -60, -33.9, 0, 0.001, 30, 45, 51.5, 75, 89, 89.999])
      for (let azimuthDeg = 0; azimuthDeg < 360; azimuthDeg += 7.5) {
        const from = { latitudeDeg, longitudeDeg: 179.5 };
        const latitudes = new Float64Array(1);
        const longitudes = new Float64Array(1);
        groundRay(from)(azimuthDeg, Float64Array.of(distanceM), latitudes, longitudes);
        const seen = { latitudeDeg: latitudes[0] ?? NaN, longitudeDeg: longitudes[0] ?? NaN };
        const way = groundVector(destination(from, { distanceM, bearingDeg: azimuthDeg }), seen);
        largestM = Math.max(largestM, way.distanceM);
      }
    expect(record(largestM)).toBeLessThan(withinM);
  },
);

const record = largestError('place of a ray against the geodesic, 1 to 120 km', 'm');

test('the longitude runs on across the date line', () => {
  const longitudes = new Float64Array(2);
  const from = { latitudeDeg: 10, longitudeDeg: 179.9 };
  groundRay(from)(90, Float64Array.of(0, 40_000), new Float64Array(2), longitudes);
  expect(longitudes[0]).toBeCloseTo(179.9, 9);
  expect(longitudes[1]).toBeCloseTo(179.9 + 40_000 / (111_319.491 * 0.98494), 3);
});
