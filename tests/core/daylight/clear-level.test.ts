import { readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clearLevelLux, dayFactor } from '../../../src/core/daylight/clear-level.ts';
import { largestError } from '../../support/largest-error.ts';

describe('the clear level is the Explanatory Supplement’s table (1992, ch. 9)', () => {
  const recordTable = largestError('clear level, table', '%', {
    quantity: 'light of a clear sky',
    method: 'Explanatory Supplement 1992, sun −18° to 90°',
    comparedWith: 'its published polynomials, 33 altitudes',
  });
  const recordFit = largestError('clear level, naval observatory fit', '%', {
    quantity: 'light of a clear sky',
    method: 'Explanatory Supplement 1992, sun −18° to 90°',
    comparedWith: 'fit of the US Naval Observatory 1996 to Brown 1952, from −12° up',
  });
  // Values of the published polynomials, four figures. At the joins −12, −5 and 5 the two
  // neighbouring polynomials differ by up to 1 %.
  const table = [
    [-18, 6.447e-4],
    [-15, 2.023e-3],
    [-12, 8.056e-3],
    [-11, 0.01708],
    [-10, 0.04211],
    [-9, 0.1164],
    [-8, 0.3481],
    [-7, 1.086],
    [-6, 3.412],
    [-5, 10.44],
    [-4, 29.93],
    [-3, 79.07],
    [-2, 189.4],
    [-1, 404.6],
    [-0.833, 453.6],
    [0, 758.6],
    [1, 1268.0],
    [2, 1920.8],
    [3, 2689.0],
    [4, 3548.0],
    [5, 4538.3],
    [8, 8172.0],
    [10, 11121],
    [15, 19228],
    [20, 27376],
    [25, 36328],
    [30, 46297],
    [40, 67538],
    [50, 87386],
    [60, 103118],
    [70, 114110],
    [80, 121763],
    [90, 128825],
  ] as const;
  test.each(table)('sun at %f°: %f lx', (altitudeDeg, lux) => {
    expect(recordTable(100 * (clearLevelLux(altitudeDeg) / lux - 1))).toBeLessThan(0.1);
  });

  test('it stays within 7.5 % of the naval observatory’s independent fit from −13° up', () => {
    // Chebyshev series fitted to Brown 1952 by the US Naval Observatory (1996), apparent
    // altitudes; at and above 2° the argument makes no more than 0.06 stop.
    const fit = [
      [-12, 8.426e-3],
      [-9, 0.1214],
      [-6, 3.472],
      [-4, 30.73],
      [-2, 191.7],
      [10, 10932],
      [20, 27278],
      [30, 46933],
      [60, 101816],
      [90, 123867],
    ] as const;
    for (const [altitudeDeg, lux] of fit) {
      expect(recordFit(100 * (clearLevelLux(altitudeDeg) / lux - 1))).toBeLessThan(7.5);
    }
  });

  test('below −18° the night stays as bright as at −18°', () => {
    expect(clearLevelLux(-40)).toBe(clearLevelLux(-18));
  });

  test('it never rises as the sun sinks, and no tenth of a degree costs a quarter stop', () => {
    fc.assert(
      fc.property(fc.double({ min: -20, max: 90, noNaN: true }), (altitudeDeg) => {
        const fallStops = Math.log2(clearLevelLux(altitudeDeg) / clearLevelLux(altitudeDeg - 0.1));
        expect(fallStops).toBeGreaterThanOrEqual(0);
        expect(fallStops).toBeLessThan(0.25);
      }),
      { numRuns: 2000, examples: [[-0.75], [-0.8], [-4.95], [-11.95], [-12], [5.05], [20.05]] },
    );
  });

  test.each([20, 5, -0.8, -5, -12])(
    'where two polynomials meet, at %f°, it does not rise',
    (joinDeg) => {
      expect(clearLevelLux(joinDeg - 1e-6)).toBeLessThanOrEqual(clearLevelLux(joinDeg));
    },
  );
});

describe('the day factor is RP-21’s (1984)', () => {
  // Extraterrestrial illuminance for the solar constant 127.5 klx.
  test.each([
    { day: 2, klx: 131.835 },
    { day: 93, klx: 127.519 },
    { day: 172, klx: 123.265 },
    { day: 185, klx: 123.165 },
    { day: 355, klx: 131.743 },
  ])('day $day: $klx klx', ({ day, klx }) => {
    expect(Math.abs(127.5 * dayFactor(day) - klx)).toBeLessThan(0.001);
  });
});

describe('measured on a roof in Tübingen, eight days of mixed weather', () => {
  const rows = readFileSync(
    new URL('../../reference/roof-illuminance.csv', import.meta.url),
    'utf8',
  )
    .split('\n')
    .filter((line) => /^\d/.test(line))
    .map((line) => line.split(',').map(Number))
    .map(([dayOfYear = NaN, sunDeg = NaN, lux = NaN]) => ({
      sunDeg,
      errorStops: Math.log2(lux / (clearLevelLux(sunDeg) * dayFactor(dayOfYear))),
    }));

  const recordRoof = largestError('clear level, clearest tenth of measured minutes', 'stop', {
    quantity: 'light of a clear sky',
    method: 'Explanatory Supplement 1992, sun −18° to 90°',
    comparedWith:
      'measured on a roof, eight days: where the clearest tenth of the minutes begins, sun −5° to 40°',
  });
  const byAltitude = [-5, 0, 5, 10, 15, 20, 25, 30, 35, 40].map((sunDeg) => {
    const errors = rows
      .filter((row) => Math.abs(row.sunDeg - sunDeg) <= 2.5)
      .map((row) => row.errorStops)
      .toSorted((first, second) => first - second);
    const quantile = (share: number): number => errors[Math.floor(share * errors.length)] ?? NaN;
    return {
      sunDeg,
      minutes: errors.length,
      medianStops: quantile(0.5),
      spanStops: quantile(0.9) - quantile(0.1),
      clearestTenthStops: quantile(0.9),
    };
  });

  test('print measured over clear level, in stops', () => {
    console.table(
      byAltitude.map((bin) => ({
        'sun ± 2.5°': bin.sunDeg,
        minutes: bin.minutes,
        median: bin.medianStops.toFixed(2),
        'span 10 to 90 %': bin.spanStops.toFixed(2),
        'clearest tenth from': bin.clearestTenthStops.toFixed(2),
      })),
    );
    expect(rows.length).toBe(5951);
  });

  test.each(byAltitude)(
    'the clearest tenth of the minutes round $sunDeg° begins within 0.2 stop of the clear level',
    ({ minutes, clearestTenthStops }) => {
      expect(minutes).toBeGreaterThan(150);
      expect(recordRoof(clearestTenthStops)).toBeLessThan(0.2);
    },
  );
});
