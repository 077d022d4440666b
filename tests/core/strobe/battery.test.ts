import { describe, expect, test } from 'vitest';
import {
  chargesUsed,
  coldCapacityShare,
  emptiesFirst,
  framesPerMinute,
  packRecycleS,
  popsBeforeRest,
  popsFromWattHours,
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

describe('charges and bursts', () => {
  const head = { popsPerChargeAtFull: 100, powerStops: 0 };

  test('38 Wh hold about 160 full pops of 600 Ws, 100 Wh about 420', () => {
    // 70 % of the energy in the flash, common practice; Wh · 3600 · 0.7 / Ws.
    expect(popsFromWattHours({ wattHours: 38, energyWs: 600 })).toBeCloseTo(160, -0.5);
    expect(popsFromWattHours({ wattHours: 100, energyWs: 600 })).toBeCloseTo(420, 6);
  });

  test('a pack of 100 full pops gives 280 frames at half power in 1.4 charges', () => {
    expect(chargesUsed({ ...head, pops: 280, powerStops: -1 }, 1)).toBeCloseTo(1.4, 9);
    // At freezing 0.65 of it is left.
    expect(chargesUsed({ ...head, pops: 280, powerStops: -1 }, 0.65)).toBeCloseTo(1.4 / 0.65, 9);
  });

  test('the pops of one charge take one charge', () => {
    for (const powerStops of [0, -1, -2, -3])
      expect(
        chargesUsed({ ...head, powerStops, pops: popsPerCharge({ ...head, powerStops }, 1) }, 1),
      ).toBeCloseTo(1, 9);
  });

  test('20 full pops before a rest are 40 at half power', () => {
    // A manual's limit of the kind 'no more than 20 full-power pops', which counts heat.
    expect(popsBeforeRest(20, 0)).toBe(20);
    expect(popsBeforeRest(20, -1)).toBe(40);
  });

  test('20 pops a second apart, then 60 s of rest: 15 frames a minute', () => {
    expect(framesPerMinute({ recycleS: 1, popsBeforeRest: 20, restS: 60 })).toBeCloseTo(15, 9);
    expect(framesPerMinute({ recycleS: 1, popsBeforeRest: null, restS: 60 })).toBeCloseTo(60, 9);
  });

  test('ganged small flashes of 2.5 s keep up with about 3.9 frames a second at 1/8', () => {
    // A practitioner's claim; a reserve in the capacitor makes it a fifth faster than proportion.
    const perSecond =
      framesPerMinute({
        recycleS: recycleS({ recycleAtFullS: 2.5, powerStops: -3 }),
        popsBeforeRest: null,
        restS: 0,
      }) / 60;
    expect(Math.abs(perSecond / 3.9 - 1)).toBeLessThan(0.25);
  });
});
