import { describe, expect, test } from 'vitest';

import { destination } from '../../../src/core/place/geodesy.ts';
import { metresPerDegree } from '../../../src/core/place/metres-per-degree.ts';

describe('a degree on the WGS 84 ellipsoid is as long as its radii of curvature say', () => {
  // NGA.STND.0036, computed from the ellipsoid's defining constants, printed to the millimetre.
  const toleranceM = 0.01;
  test.each([
    { latitudeDeg: 0, northM: 110574.276, eastM: 111319.491 },
    { latitudeDeg: 45, northM: 111131.777, eastM: 78846.835 },
    { latitudeDeg: 51.5, northM: 111257.834, eastM: 69440.517 },
    { latitudeDeg: 60, northM: 111412.287, eastM: 55800.002 },
  ])('at $latitudeDeg°', ({ latitudeDeg, northM, eastM }) => {
    const degree = metresPerDegree(latitudeDeg);
    expect(Math.abs(degree.northM - northM)).toBeLessThan(toleranceM);
    expect(Math.abs(degree.eastM - eastM)).toBeLessThan(toleranceM);
  });
});

test('ten metres by these lengths end within a millimetre of the geodesic', () => {
  const from = { latitudeDeg: 45.65, longitudeDeg: 13.76 };
  const degree = metresPerDegree(from.latitudeDeg);
  const there = destination(from, { distanceM: 10, bearingDeg: 90 });
  expect(Math.abs((there.longitudeDeg - from.longitudeDeg) * degree.eastM - 10)).toBeLessThan(1e-3);
});
