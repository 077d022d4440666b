import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { moonlightLux } from '../../../src/core/daylight/moonlight.ts';
import { largestError } from '../../support/largest-error.ts';

const moonAt = (trueAltitudeDeg: number, phaseAngleDeg: number): number =>
  moonlightLux({ trueAltitudeDeg, phaseAngleDeg, horizontalParallaxDeg: 0.951 });

describe('moonlight follows the Explanatory Supplement (1992, ch. 9)', () => {
  const record = largestError('moonlight, tables of full moon and phase', '%', {
    quantity: 'moonlight',
    method: 'Explanatory Supplement 1992',
    comparedWith: 'its published polynomials, full moon by altitude and share by phase',
  });

  // Full moon, lx, four decimals.
  test.each([
    { altitudeDeg: 5, lux: 0.0099 },
    { altitudeDeg: 10, lux: 0.0236 },
    { altitudeDeg: 20, lux: 0.0575 },
    { altitudeDeg: 30, lux: 0.0977 },
    { altitudeDeg: 45, lux: 0.1641 },
    { altitudeDeg: 60, lux: 0.216 },
    { altitudeDeg: 90, lux: 0.2692 },
  ])('full at $altitudeDeg°: $lux lx', ({ altitudeDeg, lux }) => {
    // Half the last decimal printed; the join at 20° and 5° is 1 % wide.
    record(100 * (moonAt(altitudeDeg, 0) / lux - 1));
    expect(Math.abs(moonAt(altitudeDeg, 0) - lux)).toBeLessThan(0.00006 + 0.005 * lux);
  });

  // Elongation 180 … 30 is phase angle 0 … 150; light over that of the full moon.
  test.each([
    [10, 0.8188],
    [20, 0.67],
    [30, 0.5468],
    [45, 0.3985],
    [60, 0.2823],
    [75, 0.1903],
    [90, 0.1187],
    [105, 0.0663],
    [120, 0.0318],
    [135, 0.0125],
    [150, 0.00384],
  ])('%i° from full leaves %f of it', (phaseAngleDeg, share) => {
    const found = moonAt(60, phaseAngleDeg) / moonAt(60, 0);
    expect(record(100 * (found / share - 1))).toBeLessThan(0.5);
  });

  test('a nearer moon lights with the square of its parallax', () => {
    const near = moonlightLux({
      trueAltitudeDeg: 40,
      phaseAngleDeg: 0,
      horizontalParallaxDeg: 1.02,
    });
    expect(near / moonAt(40, 0)).toBeCloseTo((1.02 / 0.951) ** 2, 9);
  });

  test('a set moon gives no light, and no moon more than a full one overhead', () => {
    expect(moonAt(-0.9, 0)).toBe(0);
    fc.assert(
      fc.property(
        fc.double({ min: -90, max: 90, noNaN: true }),
        fc.double({ min: 0, max: 180, noNaN: true }),
        (altitudeDeg, phaseAngleDeg) => {
          expect(moonAt(altitudeDeg, phaseAngleDeg)).toBeLessThanOrEqual(
            moonAt(90, 0) * (1 + 1e-12),
          ); // rounding
        },
      ),
    );
  });
});
