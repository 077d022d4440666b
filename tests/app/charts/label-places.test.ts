import fc from 'fast-check';
import { expect, test } from 'vitest';

import { labelPlaces } from '../../../src/app/charts/label-places.ts';

const SCALE = { gap: 1, from: 0.5, to: 29.5 };

test('labels that are far enough apart stand where they belong', () => {
  expect(labelPlaces([2, 5, 9], SCALE)).toEqual([2, 5, 9]);
});

test('two labels of one tone part evenly, half a gap to either side', () => {
  expect(labelPlaces([10, 10], SCALE)).toEqual([9.5, 10.5]);
});

test('labels past the ends are moved inside, still in order', () => {
  expect(labelPlaces([-3, 0, 40], SCALE)).toEqual([0.5, 1.5, 29.5]);
});

test('no label ever stands nearer to its neighbour than the gap, and none outside', () => {
  const middles = fc.array(fc.double({ min: -5, max: 35, noNaN: true }), { maxLength: 25 });
  fc.assert(
    fc.property(middles, (wanted) => {
      const sorted = wanted.toSorted((first, second) => first - second);
      const places = labelPlaces(sorted, SCALE);
      expect(places).toHaveLength(sorted.length);
      places.forEach((place, at) => {
        expect(place).toBeGreaterThanOrEqual(SCALE.from - 1e-9);
        expect(place).toBeLessThanOrEqual(SCALE.to + 1e-9);
        const next = places[at + 1];
        if (next !== undefined) expect(next - place).toBeGreaterThanOrEqual(SCALE.gap - 1e-9);
      });
    }),
  );
});

test('a label that has room on both sides is not moved', () => {
  const whole = fc.array(fc.integer({ min: 1, max: 29 }), { maxLength: 12 });
  fc.assert(
    fc.property(whole, (wanted) => {
      const sorted = [...new Set(wanted)].toSorted((first, second) => first - second);
      expect(labelPlaces(sorted, SCALE)).toEqual(sorted);
    }),
  );
});
