import fc from 'fast-check';
import { expect, test } from 'vitest';
import { destination, groundVector } from '../../../src/core/place/geodesy.ts';
import { largestError } from '../../support/largest-error.ts';

const record = largestError('distance on the ground, published lines', 'm', {
  quantity: 'distance on the ground',
  method: 'Karney 2013 on WGS 84',
  comparedWith: 'published lines of Geoscience Australia and by Vincenty 1975, 55 and 970 km',
});

const dms = (degrees: number, minutes: number, seconds: number): number =>
  degrees + minutes / 60 + seconds / 3600;

const FLINDERS_PEAK = {
  latitudeDeg: -dms(37, 57, 3.7203),
  longitudeDeg: dms(144, 25, 29.5244),
};
const BUNINYONG = {
  latitudeDeg: -dms(37, 39, 10.1561),
  longitudeDeg: dms(143, 55, 35.3839),
};

test('Flinders Peak to Buninyong is 54 972.271 m at 306°52′05.37″ (Geoscience Australia)', () => {
  const way = groundVector(FLINDERS_PEAK, BUNINYONG);
  expect(record(way.distanceM - 54_972.271)).toBeLessThan(0.001);
  expect(Math.abs(way.bearingDeg - dms(306, 52, 5.37))).toBeLessThan(5e-6);
  const back = groundVector(BUNINYONG, FLINDERS_PEAK);
  expect(Math.abs(back.bearingDeg - dms(127, 10, 25.07))).toBeLessThan(5e-6);
  const arrival = destination(FLINDERS_PEAK, way);
  expect(Math.abs(arrival.latitudeDeg - BUNINYONG.latitudeDeg)).toBeLessThan(1e-9);
  expect(Math.abs(arrival.longitudeDeg - BUNINYONG.longitudeDeg)).toBeLessThan(1e-9);
});

test('Land’s End to John o’ Groats is 969 954.166 m at 9.1418775° (Vincenty 1975 on WGS 84)', () => {
  const way = groundVector(
    { latitudeDeg: 50.06632, longitudeDeg: -5.71475 },
    { latitudeDeg: 58.64402, longitudeDeg: -3.07009 },
  );
  expect(record(way.distanceM - 969_954.166)).toBeLessThan(0.001);
  expect(Math.abs(way.bearingDeg - 9.1418775)).toBeLessThan(1e-6);
});

// Lengths of one degree by the radii of curvature of WGS 84: half a degree to each side of the
// latitude north and south, a thousandth east.
test.each([
  { latitudeDeg: 0, northM: 110_574.276, eastM: 111_319.491 },
  { latitudeDeg: 45, northM: 111_131.777, eastM: 78_846.835 },
  { latitudeDeg: 60, northM: 111_412.287, eastM: 55_800.002 },
])('one degree at latitude $latitudeDeg° is $northM m north and $eastM m east', (row) => {
  const { latitudeDeg, northM, eastM } = row;
  const north = groundVector(
    { latitudeDeg: latitudeDeg - 0.005, longitudeDeg: 13 },
    { latitudeDeg: latitudeDeg + 0.005, longitudeDeg: 13 },
  );
  expect(Math.abs(north.distanceM * 100 - northM)).toBeLessThan(0.05);
  const east = groundVector(
    { latitudeDeg, longitudeDeg: 13 },
    { latitudeDeg, longitudeDeg: 13.001 },
  );
  expect(Math.abs(east.distanceM * 1000 - eastM)).toBeLessThan(0.05);
});

test('the date line is crossed the short way', () => {
  const way = groundVector(
    { latitudeDeg: 0, longitudeDeg: 179.9 },
    { latitudeDeg: 0, longitudeDeg: -179.9 },
  );
  expect(Math.abs(way.distanceM - 0.2 * 111_319.491)).toBeLessThan(0.01);
  expect(way.bearingDeg).toBeCloseTo(90, 9);
});

test('one arrives at the distance and bearing one set out with, and back where one began', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -89, max: 89, noNaN: true }),
      fc.double({ min: -180, max: 180, noNaN: true }),
      fc.double({ min: 1, max: 200_000, noNaN: true }),
      fc.double({ min: 0, max: 359.99, noNaN: true }),
      (latitudeDeg, longitudeDeg, distanceM, bearingDeg) => {
        const start = { latitudeDeg, longitudeDeg };
        const there = destination(start, { distanceM, bearingDeg });
        expect(Math.abs(there.longitudeDeg)).toBeLessThanOrEqual(180);
        const way = groundVector(start, there);
        expect(Math.abs(way.distanceM - distanceM)).toBeLessThan(1e-6);
        const turnDeg = Math.abs(((way.bearingDeg - bearingDeg + 540) % 360) - 180);
        expect((turnDeg * Math.PI * distanceM) / 180).toBeLessThan(1e-3);
      },
    ),
  );
});
