import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import {
  filterStackFigures,
  strongestStops,
  type StackedFilter,
} from '../../../src/core/colour/filter-stack.ts';
import { GRADUATION_HEIGHT, graduatedStops } from '../../../src/core/colour/graduated-filter.ts';
import {
  densityFromStops,
  formatNd,
  stopsFromDensity,
  stopsFromFilterFactor,
} from '../../../src/core/exposure/lens-filter.ts';

const filter = (made: Partial<StackedFilter>): StackedFilter => ({
  kind: 'nd',
  stops: 0,
  maxStops: null,
  miredShift: 0,
  greenStops: 0,
  ringMm: 5,
  ...made,
});

const filters = fc.array(
  fc.record({
    kind: fc.constantFrom(
      'nd' as const,
      'variable-nd' as const,
      'graduated-nd' as const,
      'polariser' as const,
      'colour' as const,
    ),
    stops: fc.double({ min: 0, max: 10, noNaN: true }),
    maxStops: fc.option(fc.double({ min: 0, max: 12, noNaN: true })),
    miredShift: fc.double({ min: -200, max: 200, noNaN: true }),
    greenStops: fc.double({ min: -1, max: 1, noNaN: true }),
    ringMm: fc.double({ min: 2, max: 10, noNaN: true }),
  }),
  { maxLength: 6 },
);

const even = (of: readonly StackedFilter[]): number => {
  const { nd, otherStops } = filterStackFigures(of);
  return nd.fromStops + otherStops;
};

describe('a stack of filters', () => {
  test('densities add: 0.3 and 0.6 are 0.9, 3 stops, a factor of 8', () => {
    // Practitioners' ND tables: density 0.3, 0.6, 0.9 = 1, 2, 3 stops = factor 2, 4, 8; nominal, so to a hundredth.
    const { nd } = filterStackFigures([
      filter({ stops: stopsFromDensity(0.3) }),
      filter({ stops: stopsFromDensity(0.6) }),
    ]);
    expect(densityFromStops(nd.toStops)).toBeCloseTo(0.9, 9);
    expect(Math.abs(nd.toStops - stopsFromFilterFactor(8))).toBeLessThan(0.02);
    expect(formatNd(nd.toStops)).toBe('ND 3 stops (0.9)');
  });

  // 'Filter factor', encyclopaedia table: factor to stops, thirds.
  test.each([
    [1.5, 2 / 3],
    [2, 1],
    [2.5, 4 / 3],
    [3, 5 / 3],
    [4, 2],
    [8, 3],
  ])('a colour filter of factor %d takes %d stops', (factor, stops) => {
    const { otherStops } = filterStackFigures([
      filter({ kind: 'colour', stops: stopsFromFilterFactor(factor) }),
    ]);
    expect(Math.abs(otherStops - stops)).toBeLessThan(0.09);
  });

  test('a full CTO with one stop of ND is 31.5 % light, 1.67 stops', () => {
    // Cine gel table: CTO 63 %, CTO + ND 0.3 31.5 %.
    const { nd, otherStops } = filterStackFigures([
      filter({ kind: 'colour', stops: -Math.log2(0.63) }),
      filter({ stops: 1 }),
    ]);
    expect(2 ** -(nd.fromStops + otherStops)).toBeCloseTo(0.315, 3);
    expect(nd.fromStops + otherStops).toBeCloseTo(1.67, 2);
  });

  test('a deep blue and its orange of ±131 mired leave no colour', () => {
    // Light-balancing filters 80A and 85B: −131 and +131 mired, 2 and 2/3 stops.
    const { miredShift, otherStops } = filterStackFigures([
      filter({ kind: 'colour', stops: 2, miredShift: -131 }),
      filter({ kind: 'colour', stops: 2 / 3, miredShift: 131 }),
    ]);
    expect(miredShift).toBe(0);
    expect(otherStops).toBeCloseTo(8 / 3, 9);
  });

  test('a graduated filter is no even loss, and a polariser counts with what it takes from everything', () => {
    expect(
      filterStackFigures([
        filter({ kind: 'graduated-nd', stops: 3 }),
        filter({ kind: 'polariser', stops: 1.5 }),
      ]),
    ).toMatchObject({
      nd: { fromStops: 0, toStops: 0 },
      otherStops: 1.5,
      graduatedStops: 3,
      polarisers: 1,
      depthMm: 10,
    });
  });

  test('a variable ND spans its weakest to its strongest, and one whose strongest is less does not vary', () => {
    expect(filterStackFigures([filter({ kind: 'variable-nd', stops: 2, maxStops: 5 })]).nd).toEqual(
      {
        fromStops: 2,
        toStops: 5,
      },
    );
    expect(strongestStops({ stops: 4, maxStops: 2 })).toBe(4);
    expect(strongestStops({ stops: 4, maxStops: null })).toBe(4);
  });

  test('the order of the filters does not matter', () =>
    fc.assert(
      fc.property(filters, (stack) => {
        const [one, other] = [filterStackFigures(stack), filterStackFigures(stack.toReversed())];
        for (const key of [
          'otherStops',
          'graduatedStops',
          'miredShift',
          'greenStops',
          'depthMm',
        ] as const)
          expect(one[key]).toBeCloseTo(other[key], 9);
        expect(one.nd.fromStops).toBeCloseTo(other.nd.fromStops, 9);
        expect(one.nd.toStops).toBeCloseTo(other.nd.toStops, 9);
      }),
    ));

  test('one filter more never lets more light through', () =>
    fc.assert(
      fc.property(filters, filters, (stack, more) => {
        expect(even([...stack, ...more])).toBeGreaterThanOrEqual(even(stack) - 1e-9);
      }),
    ));
});

describe('a graduated filter over the picture', () => {
  const grad = { stops: 3, fraction: 0.1 };

  test('takes nothing below its edge, half its stops in its middle, all above', () => {
    expect(graduatedStops(grad, 0.1 - GRADUATION_HEIGHT / 2)).toBe(0);
    expect(graduatedStops(grad, 0.1)).toBeCloseTo(1.5, 12);
    expect(graduatedStops(grad, 0.1 + GRADUATION_HEIGHT / 2)).toBe(3);
    expect(graduatedStops(grad, 0.5)).toBe(3);
  });

  test('never darkens less higher up, and is even about its middle', () =>
    fc.assert(
      fc.property(
        fc.double({ min: -0.5, max: 0.5, noNaN: true }),
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        (y, up) => {
          expect(graduatedStops(grad, y + up)).toBeGreaterThanOrEqual(graduatedStops(grad, y));
          expect(graduatedStops(grad, 0.1 + up) + graduatedStops(grad, 0.1 - up)).toBeCloseTo(3, 9);
        },
      ),
    ));
});
