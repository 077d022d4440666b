import { describe, expect, test } from 'vitest';
import {
  coldCapacityShare,
  emptiesFirst,
  packRecycleS,
  popsPerCharge,
  recycleS,
} from '../../../src/core/strobe/battery.ts';
import { largestError } from '../../support/largest-error.ts';

describe('recycle time and pops', () => {
  const recycleError = largestError('recycle of several heads on a pack against its manual', 's');

  // A battery pack's manual: 750 Ws heads at full power, slow and fast charging, 183 and 405 Ws/s.
  test.each([
    { heads: 1, slowS: 4.2, fastS: 2 },
    { heads: 2, slowS: 8.2, fastS: 3.7 },
    { heads: 3, slowS: 12.1, fastS: 5.5 },
    { heads: 4, slowS: 16.4, fastS: 7.4 },
  ])('$heads heads of 750 Ws take $slowS s and $fastS s', ({ heads, slowS, fastS }) => {
    const pack = Array.from({ length: heads }, () => ({ energyWs: 750, powerStops: 0 }));
    // The manual's own times scatter by 0.2 s around one rate.
    expect(recycleError(packRecycleS({ chargeRateWs: 183, heads: pack }) - slowS)).toBeLessThan(
      0.25,
    );
    expect(recycleError(packRecycleS({ chargeRateWs: 405, heads: pack }) - fastS)).toBeLessThan(
      0.25,
    );
  });

  test('half power recycles in half the time and lasts twice as long', () => {
    expect(recycleS({ recycleAtFullS: 2, powerStops: -1 })).toBeCloseTo(1, 9);
    expect(popsPerCharge({ popsPerChargeAtFull: 100, powerStops: -1 }, 1)).toBe(200);
  });

  test('at the lowest powers overheads cap the count', () => {
    expect(popsPerCharge({ popsPerChargeAtFull: 100, powerStops: -9 }, 1)).toBe(3200);
  });

  test('the head with the fewest pops ends the shoot', () => {
    const heads = [
      { popsPerChargeAtFull: 300, powerStops: -1 },
      { popsPerChargeAtFull: 160, powerStops: 0 },
    ];
    expect(emptiesFirst(heads, 0.5)).toEqual({ head: 1, pops: 80 });
    expect(emptiesFirst([], 1)).toBeNull();
  });

  test('in the cold 0.5 to 0.8 of a charge is left, far below freezing 0.3 to 0.5', () => {
    // Ranges of battery articles and makers' guidance, common practice.
    expect(coldCapacityShare(0)).toBeGreaterThanOrEqual(0.5);
    expect(coldCapacityShare(0)).toBeLessThanOrEqual(0.8);
    expect(coldCapacityShare(-15)).toBeGreaterThanOrEqual(0.3);
    expect(coldCapacityShare(-15)).toBeLessThanOrEqual(0.5);
    expect(coldCapacityShare(25)).toBe(1);
    for (let airC = -20; airC < 30; airC += 1)
      expect(coldCapacityShare(airC + 1)).toBeGreaterThanOrEqual(coldCapacityShare(airC));
  });
});
