import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  CLEAR_DIFFUSE_LM_PER_W,
  clearDiffuseShare,
  clearIrradiance,
  clearIrradianceAt,
  directLmPerW,
} from '../../../src/core/daylight/diffuse-share.ts';
import { sinDeg } from '../../../src/core/units/angle.ts';
import { largestError } from '../../support/largest-error.ts';

describe('clear-sky irradiance follows Ineichen and Perez 2002', () => {
  const record = largestError('clear-sky irradiance, points of a library', 'W/m²', {
    quantity: 'split into sun and sky',
    method: 'Ineichen & Perez 2002, Linke turbidity 3',
    comparedWith: 'test points of an open solar-energy library',
  });

  // Test points of an open solar-energy library, extraterrestrial 1364 W/m², four decimals.
  test.each([
    {
      zenithDeg: 10,
      airMass: 1,
      turbidity: 3,
      heightM: 0,
      ghi: 1038.1592,
      dni: 942.2082,
      dhi: 110.2653,
    },
    {
      zenithDeg: 10,
      airMass: 1,
      turbidity: 3,
      heightM: 2000,
      ghi: 1134.2431,
      dni: 994.9538,
      dhi: 154.4049,
    },
    {
      zenithDeg: 0,
      airMass: 1,
      turbidity: 2,
      heightM: 0,
      ghi: 1095.7707,
      dni: 1014.3881,
      dhi: 81.3827,
    },
    {
      zenithDeg: 40,
      airMass: 5.5,
      turbidity: 3,
      heightM: 0,
      ghi: 478.927,
      dni: 419.1489,
      dhi: 157.8403,
    },
    {
      zenithDeg: 80,
      airMass: 10,
      turbidity: 4,
      heightM: 0,
      ghi: 43.7237,
      dni: 75.8097,
      dhi: 30.5594,
    },
  ])('zenith $zenithDeg°, air mass $airMass, turbidity $turbidity, $heightM m', (point) => {
    const found = clearIrradianceAt({
      sinAltitude: sinDeg(90 - point.zenithDeg),
      absoluteAirMass: point.airMass,
      linkeTurbidity: point.turbidity,
      elevationM: point.heightM,
    });
    expect(record(found.globalWm2 - point.ghi)).toBeLessThan(0.001);
    expect(record(found.beamNormalWm2 - point.dni)).toBeLessThan(0.001);
    expect(record(found.diffuseWm2 - point.dhi)).toBeLessThan(0.001);
  });

  // With Kasten and Young's air mass at sea level, rounded to 1 W/m².
  test.each([
    [2, 5, 46, 446, 8],
    [2, 10, 133, 682, 15],
    [2, 30, 507, 939, 38],
    [2, 60, 938, 1002, 70],
    [3, 5, 31, 176, 16],
    [3, 10, 107, 413, 36],
    [3, 20, 289, 669, 60],
    [3, 30, 470, 788, 76],
    [3, 45, 711, 875, 92],
    [3, 60, 897, 916, 103],
    [4, 20, 258, 515, 82],
    [6, 60, 784, 671, 203],
  ] as const)(
    'turbidity %i, sun at %i°: %i, %i, %i W/m²',
    (linkeTurbidity, altitudeDeg, ghi, dni, dhi) => {
      const found = clearIrradiance({
        apparentAltitudeDeg: altitudeDeg,
        linkeTurbidity,
        elevationM: 0,
      });
      expect(Math.abs(found.globalWm2 - ghi)).toBeLessThan(1);
      expect(Math.abs(found.beamNormalWm2 - dni)).toBeLessThan(1);
      expect(Math.abs(found.diffuseWm2 - dhi)).toBeLessThan(1);
    },
  );
});

describe('efficacies are Littlefair’s (1988)', () => {
  test('diffuse light of a clear sky has 144 lm/W', () => {
    expect(CLEAR_DIFFUSE_LM_PER_W).toBe(144);
  });
  test.each([
    { altitudeDeg: 2, lmPerW: 70 },
    { altitudeDeg: 10, lmPerW: 70 },
    { altitudeDeg: 35, lmPerW: 82.5 },
    { altitudeDeg: 60, lmPerW: 95 },
    { altitudeDeg: 80, lmPerW: 95 },
  ])('direct sun at $altitudeDeg° has $lmPerW lm/W', ({ altitudeDeg, lmPerW }) => {
    expect(directLmPerW(altitudeDeg)).toBeCloseTo(lmPerW, 9);
  });
});

const share = (apparentAltitudeDeg: number, linkeTurbidity: number): number =>
  clearDiffuseShare({ apparentAltitudeDeg, linkeTurbidity, elevationM: 0 });

describe('the share of the sky in the light', () => {
  test('its parts make a global light near Littlefair’s 107 to 109 lm/W with the sun at 30° to 60°', () => {
    // Littlefair 1988, clear sky. The level is not taken from it, and half the spread of a clear
    // sky's global light is 0.3 stop: 0.26 stop, 20 %.
    for (const altitudeDeg of [30, 45, 60]) {
      const { globalWm2, beamNormalWm2, diffuseWm2 } = clearIrradiance({
        apparentAltitudeDeg: altitudeDeg,
        linkeTurbidity: 3,
        elevationM: 0,
      });
      const lux =
        CLEAR_DIFFUSE_LM_PER_W * diffuseWm2 +
        directLmPerW(altitudeDeg) * beamNormalWm2 * sinDeg(altitudeDeg);
      expect(Math.abs(lux / globalWm2 / 108 - 1)).toBeLessThan(0.2);
    }
  });

  test('is all of it with the sun down', () => {
    expect(share(0, 3)).toBe(1);
    expect(share(-3, 5)).toBe(1);
  });

  test('lies between 0 and 1, and haze raises it', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 90, noNaN: true }), (altitudeDeg) => {
        expect(share(altitudeDeg, 3)).toBeGreaterThan(0);
        expect(share(altitudeDeg, 5)).toBeLessThanOrEqual(1);
        expect(share(altitudeDeg, 5)).toBeGreaterThan(share(altitudeDeg, 3));
      }),
    );
  });
});
