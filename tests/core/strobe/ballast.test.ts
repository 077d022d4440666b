import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import {
  ballastAtMiddleKg,
  ballastOnWindwardLegKg,
  tippingGustMS,
  windForceN,
  type Stand,
} from '../../../src/core/strobe/ballast.ts';
import { softness } from '../../../src/core/strobe/softness.ts';

const box: Stand = { sailAreaM2: 0.8, sailHeightM: 2.2, legSpreadM: 0.5, legs: 3, massKg: 0 };

describe('wind on a box of 0.8 m² at 2.2 m, legs of half a metre', () => {
  // Worked example of the velocity pressure rule, q = 0.613 v², printed whole.
  test.each([
    [5, 15, 13],
    [8, 38, 34],
    [10, 59, 53],
  ])('a gust of %d m/s: %d N, %d kg', (gustMS, forceN, massKg) => {
    expect(Math.abs(windForceN(0.8, gustMS) - forceN)).toBeLessThan(1);
    expect(Math.abs(ballastAtMiddleKg(box, gustMS) - massKg)).toBeLessThan(1);
  });

  test('what stand, head and box weigh comes off', () => {
    expect(ballastAtMiddleKg({ ...box, massKg: 6 }, 8)).toBeCloseTo(
      ballastAtMiddleKg(box, 8) - 6,
      9,
    );
    expect(ballastAtMiddleKg({ ...box, massKg: 60 }, 8)).toBe(0);
  });

  test('twice the gust asks four times the ballast; the leg asks half of the middle', () => {
    expect(ballastAtMiddleKg(box, 12)).toBeCloseTo(4 * ballastAtMiddleKg(box, 6), 9);
    // Levers of a three-legged stand: spread/2 at the middle, twice that half way out on the leg.
    expect(ballastOnWindwardLegKg(box, 8)).toBeCloseTo(ballastAtMiddleKg(box, 8) / 2, 9);
  });

  test('with that ballast it begins to tip at that gust', () =>
    fc.assert(
      fc.property(fc.double({ min: 2, max: 20, noNaN: true }), (gustMS) => {
        expect(tippingGustMS(box, ballastAtMiddleKg(box, gustMS))).toBeCloseTo(gustMS, 6);
      }),
    ));
});

describe('softness', () => {
  test('a source as wide as it is far away is 53.1° wide', () => {
    // 2 · atan(1/2).
    expect(softness({ widthM: 1.2, distanceM: 1.2 })).toEqual({
      angleDeg: expect.closeTo(53.13, 2),
      word: 'very soft',
    });
  });

  test('a bare reflector across the street is hard, a box of 0.9 m at 2 m soft', () => {
    expect(softness({ widthM: 0.18, distanceM: 4 }).word).toBe('hard');
    expect(softness({ widthM: 0.9, distanceM: 2 }).word).toBe('soft');
  });
});
