import { describe, expect, test } from 'vitest';
import {
  densityFromStops,
  filterFactorFromStops,
  filterStacks,
  formatNd,
  parseEngravedFilter,
  stopsFromDensity,
  stopsFromFilterFactor,
} from '../../../src/core/exposure/lens-filter.ts';
import { largestError } from '../../support/largest-error.ts';

describe('neutral density in stops, density and factor', () => {
  const stopsError = largestError('ND stops from density against the table', 'stop', {
    quantity: 'ND in stops',
    method: 'density over log 2',
    comparedWith: 'table of densities 0.1 to 5, stops and factors, three figures',
  });

  // D = −log10 T, stops = D / log10 2; nominal densities with their exact stops and factors.
  test.each([
    { density: 0.1, factor: 1.26, stops: 0.332 },
    { density: 0.3, factor: 1.995, stops: 0.997 },
    { density: 0.6, factor: 3.98, stops: 1.993 },
    { density: 0.9, factor: 7.94, stops: 2.99 },
    { density: 1.2, factor: 15.85, stops: 3.986 },
    { density: 1.8, factor: 63.1, stops: 5.979 },
    { density: 2, factor: 100, stops: 6.644 },
    { density: 3, factor: 1000, stops: 9.966 },
    { density: 5, factor: 1e5, stops: 16.61 },
  ])('density $density is $stops stops, factor $factor', ({ density, factor, stops }) => {
    // Three decimals, three figures.
    expect(stopsError(stopsFromDensity(density) - stops)).toBeLessThan(6e-4);
    expect(stopsError(stopsFromFilterFactor(factor) - stops)).toBeLessThan(2.5e-3);
    expect(densityFromStops(stopsFromDensity(density))).toBeCloseTo(density, 12);
    expect(filterFactorFromStops(stopsFromFilterFactor(factor))).toBeCloseTo(factor, 8);
  });

  // An encyclopaedia's 'Filter factor': 1.3 ⅓, 1.5 ⅔, 2 1, 2.5 1⅓, 3 1⅔, 4 2, 8 3 stops.
  test.each([
    [1.3, 1 / 3],
    [1.5, 2 / 3],
    [2, 1],
    [2.5, 4 / 3],
    [3, 5 / 3],
    [4, 2],
    [8, 3],
  ])('a filter factor of %d costs %d stops', (factor, stops) => {
    expect(Math.abs(stopsFromFilterFactor(factor) - stops)).toBeLessThan(0.1);
  });
});

describe('what is engraved on a ring', () => {
  test.each([
    ['0.6', 1.993],
    ['ND 0.9', 2.99],
    ['3.0', 9.966],
    ['0,3', 0.997],
    ['ND4', 2],
    ['nd 1000', 9.966],
    ['×8', 3],
    ['4x', 2],
    ['2 stops', 2],
    ['1 1/3 stops', 1.333],
    ['6 stop', 6],
  ])('%s is %d stops', (engraving, stops) => {
    const parsed = parseEngravedFilter(engraving);
    expect(parsed.ok && Math.abs(parsed.value - stops) < 1e-3).toBe(true);
  });

  test.each(['4', '', 'ND', 'ND2-400', '-0.6', 'ND1', '99 stops', 'polariser'])(
    '“%s” is refused with what was expected',
    (engraving) => {
      const parsed = parseEngravedFilter(engraving);
      expect(parsed.ok).toBe(false);
      if (!parsed.ok) {
        expect(parsed.problem.sentence).toContain(`“${engraving}”`);
        expect(parsed.problem.sentence).toContain('expected');
      }
    },
  );

  test('it is written in stops with the density, never as a factor', () => {
    expect(formatNd(2)).toBe('ND 2 stops (0.6)');
    expect(formatNd(stopsFromDensity(0.3))).toBe('ND 1 stop (0.3)');
    expect(formatNd(stopsFromFilterFactor(1000))).toBe('ND 10 stops (3.0)');
  });
});

describe('filters are stacked as they can be stacked', () => {
  test('two at most: none, each, and each pair', () => {
    const stacks = filterStacks([1, 2, 3], 2);
    expect(stacks.map(({ stops }) => stops).toSorted((first, second) => first - second)).toEqual([
      0, 1, 2, 3, 3, 4, 5,
    ]);
    expect(stacks.find(({ stops }) => stops === 5)?.filters).toEqual([1, 2]);
  });

  test('one at most, and none owned', () => {
    expect(filterStacks([1, 2], 1).map(({ stops }) => stops)).toEqual([0, 1, 2]);
    expect(filterStacks([], 2)).toEqual([{ stops: 0, filters: [] }]);
  });
});
