import { describe, expect, test } from 'vitest';

import { groundVector } from '../../../src/core/place/geodesy.ts';
import { localPlane } from '../../../src/core/place/local-plane.ts';
import { evenPlace, evenSpread } from '../../support/even-spread.ts';
import { largestError } from '../../support/largest-error.ts';
import { metresRound } from '../../support/metres-round.ts';

const places = [
  ...Array.from({ length: 60 }, (_, n) => evenPlace(n, { southDeg: -89.9, northDeg: 89.9 })),
  { latitudeDeg: 90, longitudeDeg: 0 },
  { latitudeDeg: -90, longitudeDeg: 30 },
  { latitudeDeg: -16.8, longitudeDeg: 179.99 },
  { latitudeDeg: 51, longitudeDeg: -180 },
];

describe('the level plane round a spot keeps distances and bearings as the geodesic library has them', () => {
  // The plane is a chord: 10 km on the ground are 4 mm less on it.
  const distanceError = largestError('distance on the plane up to 10 km', 'mm');
  const bearingError = largestError('bearing on the plane', '°');

  test.each(places.map((place) => [place.latitudeDeg, place.longitudeDeg]))(
    'round %f, %f',
    (latitudeDeg = 0, longitudeDeg = 0) => {
      const place = { latitudeDeg, longitudeDeg };
      const plane = localPlane(place);
      for (let n = 1; n < 20; n += 1) {
        const [east, north] = [2e4 * (evenSpread(n, 0) - 0.5), 2e4 * (evenSpread(n, 1) - 0.5)];
        const [longitude, latitude] = metresRound(place)(east, north);
        const way = groundVector(place, { latitudeDeg: latitude, longitudeDeg: longitude });
        const [eastM, northM] = plane.toPlane(longitude, latitude);
        const error = 1000 * (Math.hypot(eastM, northM) - way.distanceM);
        expect(distanceError(error)).toBeLessThan(20);
        const bearing = (Math.atan2(eastM, northM) * 180) / Math.PI;
        const turn = ((bearing - way.bearingDeg + 540) % 360) - 180;
        expect(bearingError(turn)).toBeLessThan(1e-5);
      }
    },
  );

  test('and gives places back to the tenth of a millimetre, over poles and antimeridian', () => {
    for (const place of places) {
      const plane = localPlane(place);
      for (let n = 0; n < 20; n += 1) {
        const east = 1e5 * (evenSpread(n, 0) - 0.5);
        const north = 1e5 * (evenSpread(n, 1) - 0.5);
        const again = plane.toPlane(...plane.toDegrees(east, north));
        expect(again[0]).toBeCloseTo(east, 4);
        expect(again[1]).toBeCloseTo(north, 4);
      }
    }
  });
});
