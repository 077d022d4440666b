import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  circleOfConfusionMm,
  depthOfField,
  hyperfocalM,
} from '../../../src/core/exposure/depth-of-field.ts';

const number = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });

describe('hyperfocal distance as published', () => {
  test('50 mm at f/22 with 0.03 mm: about 3.75 m, sharp from 1.9 m', () => {
    // An open photographic society's page 'Hyperfocal distance', rounded to 'approximately'; f/22
    // exactly is 22.63, which is where 3.75 m comes from: within 0.1 m.
    const lens = { focalLengthMm: 50, fNumber: 22, circleMm: 0.03 };
    const focusDistanceM = hyperfocalM(lens);
    expect(Math.abs(focusDistanceM - 3.75)).toBeLessThan(0.1);
    expect(Math.abs(depthOfField({ ...lens, focusDistanceM }).nearM - 1.9)).toBeLessThan(0.05);
  });

  test('a 2-inch lens at f/8 with 0.002 inch: 20.8 feet, sharp from 10.4 feet', () => {
    // US Army correspondence course SS0507, learning event 10, without the added focal length
    // (2 inches): within 0.2 foot.
    const lens = { focalLengthMm: 50.8, fNumber: 8, circleMm: 0.0508 };
    const feet = hyperfocalM(lens) / 0.3048;
    expect(Math.abs(feet - 20.8)).toBeLessThan(0.2);
    const zone = depthOfField({ ...lens, focusDistanceM: feet * 0.3048 });
    expect(Math.abs(zone.nearM / 0.3048 - 10.4)).toBeLessThan(0.15);
    expect(zone.farM).toBe(Number.POSITIVE_INFINITY);
  });

  test('at its ends the blur of a point is the circle, by similar triangles', () => {
    // Thin lens: blur = f²/N · |x − s| / (x (s − f)).
    fc.assert(
      fc.property(
        number(14, 200),
        number(1.4, 22),
        number(1, 30),
        (focalLengthMm, fNumber, focusDistanceM) => {
          const circleMm = 0.03;
          const zone = depthOfField({ focalLengthMm, fNumber, circleMm, focusDistanceM });
          const blurMm = (atM: number): number =>
            ((focalLengthMm ** 2 / fNumber) * Math.abs(atM - focusDistanceM)) /
            (atM * (focusDistanceM * 1000 - focalLengthMm));
          expect(blurMm(zone.nearM) / circleMm).toBeCloseTo(1, 6);
          // Close to the hyperfocal distance the far end runs off and loses digits.
          if (zone.farM < 1e4) expect(blurMm(zone.farM) / circleMm).toBeCloseTo(1, 6);
        },
      ),
    );
  });

  test('the circle of a 36 × 24 mm picture is 0.029 mm, common practice', () => {
    const circleMm = circleOfConfusionMm({ sensorWidthMm: 36, sensorHeightMm: 24 });
    expect(Math.abs(circleMm - 0.029)).toBeLessThan(5e-4);
  });
});
