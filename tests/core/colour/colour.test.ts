import Color from 'colorjs.io';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { adaptation } from '../../../src/core/colour/adaptation.ts';
import {
  applied,
  chromaticityOf,
  fromUv,
  uvOf,
  xyzOf,
} from '../../../src/core/colour/chromaticity.ts';
import { colourPairs } from '../../../src/core/colour/colour-pairs.ts';
import { correlatedTemperature } from '../../../src/core/colour/correlated-temperature.ts';
import {
  blackBodyChromaticity,
  daylightChromaticity,
  whiteOfKelvin,
} from '../../../src/core/colour/daylight-locus.ts';
import { kelvinFromMired, miredFromKelvin, shiftedKelvin } from '../../../src/core/colour/mired.ts';
import {
  D65,
  decodeSrgb,
  encodeSrgb,
  SRGB_FROM_XYZ,
  XYZ_FROM_SRGB,
} from '../../../src/core/colour/srgb.ts';
import { neutralOf, renderedLight } from '../../../src/core/colour/white-balance.ts';

const kelvins = fc.double({ min: 1700, max: 24_000, noNaN: true });

describe('mired', () => {
  // Practitioners' pages 'Art of the Mired' and mired tables: printed whole.
  test.each([
    [5500, 3200, 130.68],
    [5600, 3200, 133.93],
    [6500, 5500, 27.97],
    [5500, 2856, 168.32],
    [3092, 5600, -144.8],
    [4000, 3000, 83],
    [7000, 6000, 24],
  ])('from %d K to %d K is %d mired', (from, to, shift) => {
    const tolerance = Number.isInteger(shift) ? 0.5 : 0.05;
    expect(Math.abs(miredFromKelvin(to) - miredFromKelvin(from) - shift)).toBeLessThan(tolerance);
  });

  test('two half CTO of 81 on a flash of 5500 K leave 2909 K: shifts add', () => {
    expect(shiftedKelvin(shiftedKelvin(5500, 81), 81)).toBeCloseTo(2909, 0);
  });

  test('a full CTO of 159 on 5600 K is 2962 K, not 3200', () => {
    // 'Art of the Mired': 2950 to 2962 K.
    expect(shiftedKelvin(5600, 159)).toBeCloseTo(2962, 0);
  });

  test('a shift beyond 0 mired has no kelvin', () => expect(shiftedKelvin(10_000, -120)).toBeNaN());

  test('there and back is the same', () =>
    fc.assert(
      fc.property(kelvins, (kelvin) => {
        expect(kelvinFromMired(miredFromKelvin(kelvin))).toBeCloseTo(kelvin, 6);
      }),
    ));
});

describe('the whites', () => {
  // CIE 15, values of the colour-science tests: eight digits.
  test.each([
    [4000, 0.382343625, 0.383766261],
    [7000, 0.305357431, 0.321646345],
    [25_000, 0.24985367, 0.254799464],
  ])('daylight of %d K', (kelvin, x, y) => {
    expect(daylightChromaticity(kelvin).x).toBeCloseTo(x, 8);
    expect(daylightChromaticity(kelvin).y).toBeCloseTo(y, 8);
  });

  // Published D illuminants D50, D55, D65, D75 (CIE 15): printed to 5 digits.
  test.each([
    [5003, 0.34567, 0.3585],
    [5503, 0.33242, 0.34743],
    [6504, 0.31272, 0.32903],
    [7504, 0.29902, 0.31485],
  ])('%d K is the standard illuminant', (kelvin, x, y) => {
    expect(Math.abs(whiteOfKelvin(kelvin).x - x)).toBeLessThan(2e-4);
    expect(Math.abs(whiteOfKelvin(kelvin).y - y)).toBeLessThan(2e-4);
  });

  test('illuminant A is the black body of 2856 K within 3 in the fourth digit', () => {
    expect(Math.abs(whiteOfKelvin(2856).x - 0.44757)).toBeLessThan(6e-4);
    expect(Math.abs(whiteOfKelvin(2856).y - 0.40745)).toBeLessThan(3e-4);
  });

  test('the black body of 4000 K', () => {
    expect(blackBodyChromaticity(4000).x).toBeCloseTo(0.380528283, 8);
    expect(blackBodyChromaticity(4000).y).toBeCloseTo(0.376733531, 8);
  });

  test('no jump anywhere: ten kelvin move the white by less than a thousandth', () =>
    fc.assert(
      fc.property(kelvins, (kelvin) => {
        const [one, other] = [whiteOfKelvin(kelvin), whiteOfKelvin(kelvin + 10)];
        expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeLessThan(3e-3);
      }),
    ));

  test('the temperature of a white is that white’s, and it lies on the locus', () =>
    fc.assert(
      fc.property(kelvins, (kelvin) => {
        const found = correlatedTemperature(whiteOfKelvin(kelvin));
        // A hundredth of a mired: what the search leaves.
        expect(Math.abs(miredFromKelvin(found.kelvin) - miredFromKelvin(kelvin))).toBeLessThan(
          0.01,
        );
        expect(Math.abs(found.duv)).toBeLessThan(1e-6);
      }),
    ));

  // McCamy 1992, values of the colour-science tests; the two definitions differ by a few kelvin.
  test.each([
    [0.3127, 0.329, 6505, 15],
    [0.44757, 0.40745, 2857, 15],
    [0.3457, 0.3585, 5001, 10],
  ])('%d, %d is %d K', (x, y, kelvin, within) => {
    expect(Math.abs(correlatedTemperature({ x, y }).kelvin - kelvin)).toBeLessThan(within);
  });

  test('u, v and back', () => {
    const back = fromUv(uvOf(D65));
    expect([back.x, back.y]).toEqual([expect.closeTo(D65.x, 12), expect.closeTo(D65.y, 12)]);
  });
});

describe('adaptation and sRGB', () => {
  test('from D65 to D50 it is the published Bradford matrix', () => {
    const matrix = adaptation({ x: 0.3127, y: 0.329 }, { x: 0.3457, y: 0.3585 });
    const published = [
      [1.0479298, 0.0229469, -0.0501923],
      [0.0296278, 0.9904344, -0.0170738],
      [-0.009243, 0.0150552, 0.7518743],
    ];
    matrix.forEach((row, at) =>
      row.forEach((value, place) => expect(value).toBeCloseTo(published[at]?.[place] ?? NaN, 6)),
    );
  });

  test('an independent colour library adapts and encodes the same', () =>
    fc.assert(
      fc.property(fc.tuple(unit, unit, unit), ([r, g, b]) => {
        const xyzD65 = applied(XYZ_FROM_SRGB, [r, g, b]);
        const xyzD50 = applied(adaptation(D65, { x: 0.3457, y: 0.3585 }), xyzD65);
        const theirs = new Color('srgb-linear', [r, g, b]);
        // Their matrices are rounded differently in the fifth digit.
        theirs
          .to('xyz-d50')
          .coords.forEach((value, at) =>
            expect(Math.abs((value ?? NaN) - (xyzD50[at] ?? NaN))).toBeLessThan(2e-4),
          );
        const encoded = theirs.to('srgb').coords;
        [r, g, b].forEach((value, at) =>
          expect(Math.abs(encodeSrgb(value) - (encoded[at] ?? NaN))).toBeLessThan(1e-5),
        );
      }),
    ));

  test('18 % is 0.4614 encoded, sRGB 118', () => {
    expect(encodeSrgb(0.18)).toBeCloseTo(0.461356, 6);
    expect(Math.round(255 * encodeSrgb(0.18))).toBe(118);
  });

  test('encoding clips hard at both ends and decodes back', () => {
    expect([encodeSrgb(-0.2), encodeSrgb(1.7)]).toEqual([0, expect.closeTo(1, 12)]);
    fc.assert(
      fc.property(unit, (v) => {
        expect(decodeSrgb(encodeSrgb(v))).toBeCloseTo(v, 6);
      }),
    );
  });

  test('both matrices undo each other', () => {
    const back = applied(SRGB_FROM_XYZ, applied(XYZ_FROM_SRGB, [0.2, 0.5, 0.8]));
    expect(back).toEqual([expect.closeTo(0.2, 9), expect.closeTo(0.5, 9), expect.closeTo(0.8, 9)]);
  });
});

const unit = fc.double({ min: 0, max: 1, noNaN: true });

describe('white balance', () => {
  test('the light it is set to comes out grey', () =>
    fc.assert(
      fc.property(kelvins, fc.double({ min: -20, max: 20, noNaN: true }), (kelvin, tint) => {
        const [r, g, b] = renderedLight(neutralOf({ kelvin, tint }), { kelvin, tint });
        expect(Math.max(r, g, b) - Math.min(r, g, b)).toBeLessThan(1e-6);
        expect(g).toBeCloseTo(1, 6);
      }),
    ));

  // Linear sRGB of whites, largest = 1, under D65: computed from the published loci, three digits.
  test.each([
    [3200, [1, 0.5167, 0.1942]],
    [8000, [0.7476, 0.8363, 1]],
    [12_000, [0.5043, 0.6565, 1]],
  ] as const)('%d K seen at 6504 K', (kelvin, published) => {
    const seen = applied(SRGB_FROM_XYZ, xyzOf(whiteOfKelvin(kelvin), 1));
    const most = Math.max(...seen);
    seen.forEach((value, at) => expect(value / most).toBeCloseTo(published[at] ?? NaN, 2));
  });

  test('daylight under a tungsten setting is blue, tungsten under daylight is amber', () => {
    const [cold, warm] = [
      renderedLight(whiteOfKelvin(5600), { kelvin: 3200, tint: 0 }),
      renderedLight(whiteOfKelvin(3200), { kelvin: 5600, tint: 0 }),
    ];
    expect(cold[2]).toBeGreaterThan(cold[0] * 1.5);
    expect(warm[0]).toBeGreaterThan(warm[2] * 1.5);
  });

  test('a positive tint turns a neutral light to magenta: less green than red and blue', () => {
    const [r, g, b] = renderedLight(whiteOfKelvin(5500), { kelvin: 5500, tint: 15 });
    expect(g).toBeLessThan(Math.min(r, b));
  });

  test('the neutral of a setting without tint is the white of that temperature', () => {
    const { x, y } = chromaticityOf(xyzOf(neutralOf({ kelvin: 4300, tint: 0 }), 5));
    expect([x, y]).toEqual([
      expect.closeTo(whiteOfKelvin(4300).x, 9),
      expect.closeTo(whiteOfKelvin(4300).y, 9),
    ]);
  });
});

describe('the classic pairs', () => {
  const gels = [
    { id: 'full-cto', miredShift: 167, stops: 1.1 },
    { id: 'half-cto', miredShift: 81, stops: 0.45 },
    { id: 'three-quarter-cto', miredShift: 131, stops: 0.8 },
    { id: 'half-ctb', miredShift: -68, stops: 0.9 },
  ];
  const settable = { minKelvin: 2500, maxKelvin: 10_000 };

  test('tungsten balance over daylight: three quarters CTO, 3200 K, the sky 131 mired bluer', () => {
    // Lighting handbook recipe: 3/4 CTO on the flash, white balance 3200 K.
    const best = colourPairs({
      flashKelvin: 5500,
      ambientKelvin: 5500,
      bluerMired: 131,
      gels,
      settable,
    })[0];
    expect(best?.gelIds).toEqual(['three-quarter-cto']);
    expect(best?.whiteBalanceKelvin).toBeCloseTo(3200, -1);
    expect(Math.abs(best?.missMired ?? NaN)).toBeLessThan(1);
  });

  test('a warmer ambient takes blue on the flash', () => {
    const best = colourPairs({
      flashKelvin: 5500,
      ambientKelvin: 5500,
      bluerMired: -68,
      gels,
      settable,
    })[0];
    expect(best?.gelIds).toEqual(['half-ctb']);
  });

  test('gelled flash and white balance agree: the skin is neutral in every pair', () => {
    const all = colourPairs({
      flashKelvin: 5600,
      ambientKelvin: 7000,
      bluerMired: 60,
      gels,
      settable,
    });
    expect(all.length).toBeGreaterThan(4);
    for (const { gelMiredShift, whiteBalanceKelvin } of all)
      expect(shiftedKelvin(5600, gelMiredShift)).toBeCloseTo(whiteBalanceKelvin, 6);
  });

  test('what no camera can be set to is no pair', () => {
    const all = colourPairs({
      flashKelvin: 5600,
      ambientKelvin: 5600,
      bluerMired: 300,
      gels,
      settable: { minKelvin: 2500, maxKelvin: 10_000 },
    });
    for (const { whiteBalanceKelvin } of all)
      expect(whiteBalanceKelvin).toBeGreaterThanOrEqual(2500);
  });
});
