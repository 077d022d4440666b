import fc from 'fast-check';
import { expect, test } from 'vitest';
import { weightedQuantiles } from '../../../src/core/sky/weighted-quantiles.ts';

const quantile = (values: readonly number[], weights: readonly number[], share: number): number =>
  weightedQuantiles(Float64Array.from(weights), [share])(Float64Array.from(values))[0] ?? NaN;

test('of a hundred even steps a twentieth lies below the fifth', () => {
  const values = Array.from({ length: 100 }, (_, at) => 99.5 - at); // 0.5 to 99.5
  const weights = values.map(() => 0.01);
  expect(quantile(values, weights, 0.05)).toBeCloseTo(5, 9);
  expect(quantile(values, weights, 0.95)).toBeCloseTo(95, 9);
  expect(quantile(values, weights, 0.5)).toBeCloseTo(50, 9);
});

test('a heavy value pulls the quantile to itself', () => {
  expect(quantile([1, 2, 3], [1, 98, 1], 0.5)).toBeCloseTo(2, 9);
});

test('one value, or many alike, is its own quantile', () => {
  expect(quantile([7], [0.2], 0.05)).toBe(7);
  expect(quantile([7, 7, 7], [0.2, 0.1, 0.3], 0.95)).toBe(7);
});

test('the same as sorting everything, whatever the spread of values', () => {
  const value = fc.double({ min: -6, max: 6, noNaN: true }).map((power) => 10 ** power);
  const weight = fc.double({ min: 0.01, max: 1, noNaN: true });
  fc.assert(
    fc.property(
      fc.array(fc.tuple(value, weight), { minLength: 2, maxLength: 300 }),
      fc.constantFrom(0.01, 0.05, 0.5, 0.95, 0.99),
      (pairs, share) => {
        const sorted = pairs.toSorted((one, other) => one[0] - other[0]);
        const total = sorted.reduce((sum, pair) => sum + pair[1], 0);
        let before = 0;
        const middles = sorted.map(([of, weightOf]) => {
          before += weightOf;
          return { of, middle: before - weightOf / 2 };
        });
        const target = share * total;
        const after = middles.findIndex(({ middle }) => middle >= target);
        const high = middles[after === -1 ? middles.length - 1 : after]!;
        const low = after <= 0 ? high : middles[after - 1]!;
        const along = low === high ? 0 : (target - low.middle) / (high.middle - low.middle);
        const expected = low.of + along * (high.of - low.of);
        const found = quantile(
          pairs.map((pair) => pair[0]),
          pairs.map((pair) => pair[1]),
          share,
        );
        expect(Math.abs(found / expected - 1)).toBeLessThan(1e-6);
      },
    ),
  );
});

test('asked again with other values it has forgotten the first', () => {
  const middle = weightedQuantiles(Float64Array.of(1, 1, 1), [0.5]);
  expect(middle(Float64Array.of(1, 2, 3))[0]).toBeCloseTo(2, 9);
  expect(middle(Float64Array.of(30, 10, 20))[0]).toBeCloseTo(20, 9);
});
