import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import {
  polarisedShare,
  polariserRange,
  scatteredShare,
} from '../../../src/core/sky/polarised-sky.ts';

const sun = { azimuthDeg: 120, apparentAltitudeDeg: 0 };
const shareAt = (fromSunDeg: number, condition: Parameters<typeof polarisedShare>[0] = 'clear') =>
  polarisedShare(condition, sun)({ azimuthDeg: 120 + fromSunDeg, altitudeDeg: 0 });

const at = (apparentAltitudeDeg: number): number =>
  polarisedShare('clear', { azimuthDeg: 0, apparentAltitudeDeg })({
    azimuthDeg: 90,
    altitudeDeg: 0,
  });

describe('polarised light of the sky', () => {
  // Rayleigh 1871, the share (1 − cos²θ)/(1 + cos²θ): values by hand, exact.
  test.each([
    [0, 0],
    [30, 1 / 7],
    [45, 1 / 3],
    [60, 3 / 5],
    [90, 1],
    [120, 3 / 5],
    [180, 0],
  ])('of single scattering %d° from the sun is %d', (fromSunDeg, share) => {
    expect(scatteredShare(fromSunDeg)).toBeCloseTo(share, 12);
  });

  test('is greatest a right angle from the sun, about three quarters in clear air, and none at the sun', () => {
    // Measured maxima of clear skies in general use: 0.7 to 0.8; from memory.
    expect(shareAt(90)).toBeCloseTo(0.75, 9);
    expect(shareAt(0)).toBeCloseTo(0, 9);
    expect(shareAt(180)).toBeCloseTo(0, 9);
  });

  test('is less in haze than in clear air, less between clouds, and none under an overcast', () => {
    expect(shareAt(90, 'haze')).toBeLessThan(shareAt(90));
    expect(shareAt(90, 'broken-cloud')).toBeLessThan(shareAt(90));
    expect(shareAt(90, 'bright-overcast')).toBe(0);
    expect(shareAt(90, 'heavy-overcast')).toBe(0);
  });

  test('fades with the sun well down and is not counted on in the dark', () => {
    expect(at(-5)).toBeCloseTo(0.75, 2);
    expect(at(-9)).toBeLessThan(at(-6));
    expect(at(-13)).toBe(0);
  });
});

describe('a polariser on the sky', () => {
  test('three quarters polarised: 0.8 stop lighter to 2 stops darker than its even loss', () => {
    // log2(1.75) = 0.807, −log2(0.25) = 2.
    const { leastStops, mostStops, middleStops } = polariserRange(0.75);
    expect(leastStops).toBeCloseTo(-0.807, 3);
    expect(mostStops).toBeCloseTo(2, 12);
    expect(middleStops).toBeCloseTo(0.596, 3);
  });

  test('on light that is not polarised turning it does nothing', () =>
    expect(polariserRange(0)).toEqual({ leastStops: 0, mostStops: 0, middleStops: 0 }));

  test('what it takes in one position it gives back a quarter turn on: both halves are all the light', () =>
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.99, noNaN: true }), (share) => {
        const { leastStops, mostStops } = polariserRange(share);
        expect((2 ** -leastStops + 2 ** -mostStops) / 2).toBeCloseTo(1, 9);
      }),
    ));
});
