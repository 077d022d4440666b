import Color from 'colorjs.io';
import adapt from 'colorjs.io/src/adapt.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import type { Chromaticity } from '../../../src/core/colour/chromaticity.ts';
import { whiteOfKelvin } from '../../../src/core/colour/daylight-locus.ts';
import { offSurface, shiftOfAll, throughFilter } from '../../../src/core/colour/filtered-light.ts';
import {
  filterGains,
  isNeutral,
  neutralSetting,
  seenLight,
} from '../../../src/core/colour/seen-light.ts';
import { neutralOf, renderedLight } from '../../../src/core/colour/white-balance.ts';
import { largestError } from '../../support/largest-error.ts';

/** McCamy 1992, the published cubic: good to a few kelvin between 2800 and 6500. */
const mcCamyKelvin = ({ x, y }: Chromaticity): number => {
  const n = (x - 0.332) / (y - 0.1858);
  return -449 * n ** 3 + 3525 * n ** 2 - 6823.3 * n + 5520.33;
};

const gel = (miredShift: number, greenStops = 0) => ({ miredShift, greenStops });

describe('gels on a flash', () => {
  const error = largestError('a gelled flash against McCamy’s formula', 'mired', {
    quantity: 'colour of a gelled flash',
    method: 'mired shifts on the white locus',
    comparedWith: 'McCamy 1992',
  });

  // Two makers' lists, printed to the kelvin: 5500 K flash behind each.
  test.each([
    [167, 2867],
    [131, 3197],
    [81, 3805],
    [42, 4468],
    [20, 4955],
    [159, 2934],
    [109, 3439],
    [64, 4068],
    [-30, 6587],
    [-12, 5889],
  ])('%d mired make %d K of 5500 K', (miredShift, kelvin) => {
    const found = mcCamyKelvin(throughFilter(whiteOfKelvin(5500), gel(miredShift)));
    // Between 4000 and 5000 K the two loci are joined beside which McCamy reads a few mired off.
    expect(error(1e6 / found - 1e6 / kelvin)).toBeLessThan(4);
  });

  test('two half CTO make 2909 K: what is taped on each other adds', () => {
    const both = throughFilter(whiteOfKelvin(5500), shiftOfAll([gel(81), gel(81)]));
    expect(seenLight(both, { kelvin: 2909, tint: 0 }).warmerMired).toBeCloseTo(0, 0);
  });

  test('a shift and its opposite leave the light as it was', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 2600, max: 9000, noNaN: true }),
        fc.double({ min: -70, max: 150, noNaN: true }),
        (kelvin, miredShift) => {
          const light = whiteOfKelvin(kelvin);
          const back = throughFilter(throughFilter(light, gel(miredShift)), gel(-miredShift));
          expect(Math.abs(back.x - light.x)).toBeLessThan(1e-4);
          expect(Math.abs(back.y - light.y)).toBeLessThan(1e-4);
        },
      ),
    ));

  test('window green is above the locus and its magenta brings it back', () => {
    const light = whiteOfKelvin(5500);
    const green = throughFilter(light, gel(0, 0.5));
    expect(seenLight(green, { kelvin: 5500, tint: 0 }).greener).toBeGreaterThan(5);
    const back = throughFilter(green, gel(0, -0.5));
    expect(back.x).toBeCloseTo(light.x, 9);
    expect(back.y).toBeCloseTo(light.y, 9);
  });
});

describe('how a light looks under a white balance', () => {
  // 'Art of the Mired' and mired tables; a blue sky is bluer, a lamp warmer.
  test.each([
    [5600, 3200, -133.9],
    [3200, 5500, 130.7],
    [5500, 5500, 0],
    [7000, 6000, -23.8],
    [2856, 5500, 168.3],
  ])('%d K under %d K is %d mired warmer', (light, setting, warmer) => {
    const seen = seenLight(whiteOfKelvin(light), { kelvin: setting, tint: 0 });
    expect(Math.abs(seen.warmerMired - warmer)).toBeLessThan(0.1);
    expect(Math.abs(seen.greener)).toBeLessThan(0.1);
  });

  test('what a setting takes for neutral looks neutral, tint and all', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 2500, max: 10_000, noNaN: true }),
        fc.double({ min: -20, max: 20, noNaN: true }),
        (kelvin, tint) => {
          const seen = seenLight(neutralOf({ kelvin, tint }), { kelvin, tint });
          expect(Math.abs(seen.warmerMired)).toBeLessThan(0.01);
          expect(Math.abs(seen.greener)).toBeLessThan(0.01);
          expect(isNeutral(seen)).toBe(true);
        },
      ),
    ));

  test('three quarters CTO under 3200 K is neutral, and daylight is then blue', () => {
    // Lighting handbook: 3/4 CTO on the flash, white balance 3200 K, the sky turns blue.
    const setting = { kelvin: 3200, tint: 0 };
    expect(isNeutral(seenLight(throughFilter(whiteOfKelvin(5500), gel(131)), setting))).toBe(true);
    const [r, , b] = renderedLight(whiteOfKelvin(6500), setting);
    expect(b).toBeGreaterThan(1.5 * r);
  });

  test('past the end of the kelvin scale it says at least', () => {
    const bluest = throughFilter(whiteOfKelvin(20_000), gel(-131));
    expect(seenLight(bluest, { kelvin: 5500, tint: 0 }).isBeyondKelvin).toBe(true);
    expect(seenLight(whiteOfKelvin(5500), { kelvin: 3200, tint: 0 }).isBeyondKelvin).toBe(false);
  });

  test('the setting found for a light renders it grey', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 2600, max: 9000, noNaN: true }),
        fc.double({ min: -0.4, max: 0.4, noNaN: true }),
        (kelvin, greenStops) => {
          const light = throughFilter(whiteOfKelvin(kelvin), gel(0, greenStops));
          const [r, g, b] = renderedLight(light, neutralSetting(light));
          expect(Math.max(r, g, b) - Math.min(r, g, b)).toBeLessThan(0.02);
        },
      ),
    ));
});

describe('against an independent colour library', () => {
  const error = largestError(
    'a light under a white balance against an independent library',
    'of linear light',
  );

  test.each([
    [5500, 0],
    [3200, 0],
    [6500, 12],
    [4300, -10],
  ])('lights under %d K, tint %d', (kelvin, tint) => {
    const setting = { kelvin, tint };
    const { x, y } = neutralOf(setting);
    const white: [number, number, number] = [x / y, 1, (1 - x - y) / y];
    for (const light of [2300, 2867, 3805, 5500, 7000, 12_000].map(whiteOfKelvin)) {
      const xyz: [number, number, number] = [
        light.x / light.y,
        1,
        (1 - light.x - light.y) / light.y,
      ];
      // Its own Bradford step, its own white and matrix of sRGB.
      const adapted = adapt(white, 'D65', xyz, { method: 'Bradford' });
      const theirs = new Color('xyz-d65', adapted).to('srgb-linear').coords;
      const ours = renderedLight(light, setting);
      for (const channel of [0, 1, 2] as const)
        expect(error((theirs[channel] ?? NaN) - ours[channel])).toBeLessThan(2e-3);
    }
  });
});

describe('light off a coloured surface', () => {
  test('white, grey and nothing named leave it as it is; red brick makes it warmer', () => {
    const flash = whiteOfKelvin(5500);
    for (const hex of ['', 'ffffff', '808080', '000000', 'no']) {
      expect(offSurface(flash, hex).x).toBeCloseTo(flash.x, 9);
      expect(offSurface(flash, hex).y).toBeCloseTo(flash.y, 9);
    }
    expect(
      seenLight(offSurface(flash, 'a04030'), { kelvin: 5500, tint: 0 }).warmerMired,
    ).toBeGreaterThan(80);
  });
});

describe('what filters on the lens do to the channels', () => {
  test('nothing without a colour, and a blue filter takes red and green but hardly blue', () => {
    const setting = { kelvin: 5500, tint: 0 };
    for (const gain of filterGains(gel(0), setting)) expect(gain).toBeCloseTo(1, 6);
    const [r, g, b] = filterGains(gel(-131), setting);
    expect(r).toBeLessThan(g);
    expect(g).toBeLessThan(b);
  });
});
