import { describe, expect, test } from 'vitest';
import { refractionDeg, saemundssonArcmin } from '../../../src/core/sun-moon/refraction.ts';
import { largestError } from '../../support/largest-error.ts';

describe('refraction is Sæmundsson’s', () => {
  const record = largestError('refraction, published formula', '′', {
    quantity: 'refraction',
    method: 'Sæmundsson 1986, at 1010 hPa and 10 °C',
    comparedWith: 'the published formula, twelve altitudes',
  });
  const recordOthers = largestError('refraction, other formulas', '′', {
    quantity: 'refraction',
    method: 'Sæmundsson 1986, at 1010 hPa and 10 °C',
    comparedWith: 'the formulas of the NOAA solar calculator and of USNO Circular 171',
  });

  // Computed from the published formula at 1010 hPa and 10 °C; beside it the same true altitude in
  // the formula of the NOAA solar calculator and of USNO Circular 171, from which it differs by
  // up to 0.6′ at the horizon.
  test.each([
    { trueDeg: -0.5667, arcmin: 34.3598, noaa: 34.4045, usno: 34.399 },
    { trueDeg: 0, arcmin: 28.9819, noaa: 28.9167, usno: 29.436 },
    { trueDeg: 0.5, arcmin: 25.0039, noaa: 25.0033, usno: 25.4747 },
    { trueDeg: 1, arcmin: 21.7439, noaa: 21.802, usno: 22.135 },
    { trueDeg: 2, arcmin: 16.9257, noaa: 17.0209, usno: 17.1372 },
    { trueDeg: 5, arcmin: 9.6741, noaa: 9.5771, usno: 9.6555 },
    { trueDeg: 10, arcmin: 5.4077, noaa: 5.2873, usno: 5.3453 },
    { trueDeg: 20, arcmin: 2.7412, noaa: 2.6365, usno: 2.6958 },
    { trueDeg: 30, arcmin: 1.746, noaa: 1.6712, usno: 1.7147 },
    { trueDeg: 45, arcmin: 1.0127, noaa: 0.9672, usno: 0.9939 },
    { trueDeg: 60, arcmin: 0.5851, noaa: 0.5588, usno: 0.5742 },
    { trueDeg: 90, arcmin: -0.0019, noaa: 0, usno: -0.0016 },
  ])('at true $trueDeg° it is $arcmin′', ({ trueDeg, arcmin, noaa, usno }) => {
    expect(record(saemundssonArcmin(trueDeg) - arcmin)).toBeLessThan(0.001);
    expect(recordOthers(saemundssonArcmin(trueDeg) - noaa)).toBeLessThan(0.6);
    expect(recordOthers(saemundssonArcmin(trueDeg) - usno)).toBeLessThan(0.6);
  });

  test('at true 33.246′ it is 24.618′ (Meeus, example 16.a)', () => {
    expect(Math.abs(saemundssonArcmin(33.246 / 60) - 24.618)).toBeLessThan(0.001);
  });

  test('at 1013 hPa and 15 °C it is 1.44 % less than at 1010 hPa and 10 °C', () => {
    // 1013/1010 × 283/288, the factor of Meeus, ch. 16.
    expect(refractionDeg(0) * 60).toBeCloseTo(28.9819 * 0.98558, 2);
    expect(refractionDeg(10) * 60).toBeCloseTo(5.4077 * 0.98558, 3);
  });

  test('between true −1° and −3° it fades evenly to none', () => {
    expect(refractionDeg(-2)).toBeCloseTo(refractionDeg(-1) / 2, 10);
    expect(refractionDeg(-3)).toBe(0);
    expect(refractionDeg(-30)).toBe(0);
    expect(Math.abs(refractionDeg(-1 + 1e-9) - refractionDeg(-1 - 1e-9))).toBeLessThan(1e-8);
  });

  test('a body that truly rises is never seen to sink', () => {
    const apparent = Array.from({ length: 9400 }, (_, step) => {
      const trueDeg = -4 + step / 100;
      return trueDeg + refractionDeg(trueDeg);
    });
    for (const [index, altitudeDeg] of apparent.slice(1).entries())
      expect(altitudeDeg).toBeGreaterThan(apparent[index] ?? Number.NaN);
  });
});
