import { describe, expect, test } from 'vitest';

import {
  isOpenLocationCode,
  isShortCode,
  openLocationCodeArea,
  type CodeArea,
} from '../../../src/core/place/open-location-code.ts';
import { largestError } from '../../support/largest-error.ts';

const area = (code: string, near: Parameters<typeof openLocationCodeArea>[1] = null): CodeArea => {
  const found = openLocationCodeArea(code, near);
  if (!found.ok) throw new Error(`${found.problem.found}; ${found.problem.expected}`);
  return found.value;
};

// All values: test data published with the Open Location Code Specification.

describe('the area of a full code, by the specification’s test data for decoding', () => {
  const error = largestError('edges of an open location code', '°');
  // The data give ten decimals.
  const toleranceDeg = 1e-10;
  test.each([
    ['7FG49Q00+', 20.35, 2.75, 20.4, 2.8],
    ['7FG49QCJ+2V', 20.37, 2.782125, 20.370125, 2.78225],
    ['7FG49QCJ+2VX', 20.3701, 2.78221875, 20.370125, 2.78225],
    ['7FG49QCJ+2VXGJ', 20.370113, 2.782234375, 20.370114, 2.78223632813],
    ['8FVC2222+22', 47.0, 8.0, 47.000125, 8.000125],
    ['4VCPPQGP+Q9', -41.273125, 174.785875, -41.273, 174.786],
    ['62G20000+', 0.0, -180.0, 1, -179],
    ['22220000+', -90, -180, -89, -179],
    ['7FG40000+', 20.0, 2.0, 21.0, 3.0],
    ['22222222+22', -90.0, -180.0, -89.999875, -179.999875],
    ['6VGX0000+', 0, 179, 1, 180],
    ['6FH32222+222', 1, 1, 1.000025, 1.00003125],
    ['CFX30000+', 89, 1, 90, 2],
    ['62H20000+', 1, -180, 2, -179],
    ['62H30000+', 1, -179, 2, -178],
    ['CFX3X2X2+X2', 89.999875, 1, 90, 1.000125],
    ['84000000+', 30, -140, 50, -120],
    ['6FH56C22+22', 1.2000000000000028, 3.4000000000000057, 1.2001249999999999, 3.4001250000000027],
    ['849VGJQF+VX7QR3J', 37.53966912, -122.3750698242, 37.53966916, -122.3750697021],
    ['849VGJQF+VX7QR3J7QR3J', 37.53966912, -122.3750698242, 37.53966916, -122.3750697021],
  ] as const)('%s', (code, southDeg, westDeg, northDeg, eastDeg) => {
    const found = area(code);
    for (const difference of [
      found.latitudeDeg - found.heightDeg / 2 - southDeg,
      found.latitudeDeg + found.heightDeg / 2 - northDeg,
      found.longitudeDeg - found.widthDeg / 2 - westDeg,
      found.longitudeDeg + found.widthDeg / 2 - eastDeg,
    ])
      expect(error(difference)).toBeLessThan(toleranceDeg);
  });
});

test.each([
  ['8FWC2345+G6', true, false],
  ['8FWC2345+G6G', true, false],
  ['8fwc2345+', true, false],
  ['8FWCX400+', true, false],
  ['WC2345+G6g', true, true],
  ['2345+G6', true, true],
  ['45+G6', true, true],
  ['+G6', true, true],
  ['G+', false, false],
  ['+', false, false],
  ['8FWC2345+G', false, false],
  ['8FWC2_45+G6', false, false],
  ['8FWC2η45+G6', false, false],
  ['8FWC2345+G6+', false, false],
  ['8FWC2345G6+', false, false],
  ['8FWC2300+G6', false, false],
  ['WC2300+G6g', false, false],
  ['WC2345+G', false, false],
  ['WC2300+', false, false],
  ['849VGJQF+VX7QR3J', true, false],
  ['849VGJQF+VX7QR3U', false, false],
  ['849VGJQF+VX7QR3JW', true, false],
  ['849VGJQF+VX7QR3JU', false, false],
] as const)(
  '%s: a code %s, a short one %s, by the test data for validity',
  (code, valid, short) => {
    expect([isOpenLocationCode(code), isShortCode(code)]).toEqual([valid, short]);
  },
);

describe('a short code means the nearest full one, by the test data for short codes', () => {
  test.each([
    ['9C3W9QCJ+2VX', 51.3701125, -1.217765625, '+2VX'],
    ['9C3W9QCJ+2VX', 51.3708675, -1.217765625, 'CJ+2VX'],
    ['9C3W9QCJ+2VX', 51.3693575, -1.217765625, 'CJ+2VX'],
    ['9C3W9QCJ+2VX', 51.3701125, -1.218520625, 'CJ+2VX'],
    ['9C3W9QCJ+2VX', 51.3701125, -1.217010625, 'CJ+2VX'],
    ['9C3W9QCJ+2VX', 51.3852125, -1.217765625, '9QCJ+2VX'],
    ['9C3W9QCJ+2VX', 51.3550125, -1.217765625, '9QCJ+2VX'],
    ['9C3W9QCJ+2VX', 51.3701125, -1.232865625, '9QCJ+2VX'],
    ['9C3W9QCJ+2VX', 51.3701125, -1.202665625, '9QCJ+2VX'],
    ['8FJFW222+', 42.899, 9.012, '22+'],
    ['796RXG22+', 14.95125, -23.5001, '22+'],
    ['8FRCXGRF+PM', 47.0, 8.55, 'XGRF+PM'],
    ['CFX22222+22', 89.6, 0.0, '2222+22'],
    ['2CXXXXXX+XX', -81.0, 0.0, 'XXXXXX+XX'],
  ] as const)('%s from %f, %f and %s', (full, latitudeDeg, longitudeDeg, short) => {
    const recovered = area(short, { latitudeDeg, longitudeDeg });
    const wanted = area(full);
    expect(Math.abs(recovered.latitudeDeg - wanted.latitudeDeg)).toBeLessThan(1e-9);
    // The two codes near the poles name the place at longitude 0 by two cells either side of it.
    expect(Math.abs(recovered.longitudeDeg - wanted.longitudeDeg)).toBeLessThan(1e-9);
  });

  test('across the antimeridian the nearest lies on the other side', () => {
    const east = area('2222+22', { latitudeDeg: 1, longitudeDeg: 179.9 });
    expect(east.longitudeDeg).toBeCloseTo(-180 + 0.000125 / 2, 9);
    const onIt = area('2222+22', { latitudeDeg: 1, longitudeDeg: 180 });
    expect(onIt.longitudeDeg).toBeCloseTo(-180 + 0.000125 / 2, 9);
  });
});

test('a short code without a place nearby, and what is no code, get a sentence', () => {
  expect(openLocationCodeArea('9G8F+6X', null)).toMatchObject({
    problem: { found: 'the short code 9G8F+6X', expected: expect.stringMatching(/nearby/) },
  });
  expect(openLocationCodeArea('somewhere', null)).toMatchObject({
    problem: { expected: expect.stringMatching(/such as 8FVC9G8F\+6X/) },
  });
});
