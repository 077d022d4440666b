import { describe, expect, test } from 'vitest';

import { isInLeaf, isSolid, lightPassed } from '../../../src/core/skyline/obstacle.ts';
import { plainBuilding, plainTrees, plainWall } from '../../support/metres-round.ts';

describe('trees are in leaf in the summer of their side of the equator', () => {
  // Months of common practice.
  test.each([
    ['2027-01-15', 45, false],
    ['2027-04-30', 45, false],
    ['2027-05-01', 45, true],
    ['2027-10-31', 45, true],
    ['2027-11-01', 45, false],
    ['2027-01-15', -38, true],
    ['2027-04-30', -38, true],
    ['2027-05-01', -38, false],
    ['2027-11-01', -38, true],
    ['2027-01-15', 10, true],
    ['2027-07-15', -10, true],
  ])('%s at latitude %d: %s', (date, latitudeDeg, leaves) => {
    expect(isInLeaf({ date, latitudeDeg })).toBe(leaves);
  });

  test('what comes through follows the leaves', () => {
    const row = { ...plainTrees, outline: [], passesInLeaf: 0.2, passesBare: 0.6 };
    expect(lightPassed(row, { date: '2027-07-01', latitudeDeg: 50 })).toBe(0.2);
    expect(lightPassed(row, { date: '2027-12-01', latitudeDeg: 50 })).toBe(0.6);
  });
});

test('a garden wall that runs round is open inside, a wood is not', () => {
  const outline = [
    [0, 0],
    [1, 0],
    [0, 1],
  ] as const;
  expect(isSolid({ ...plainWall, closed: true, outline })).toBe(false);
  expect(isSolid({ ...plainTrees, outline })).toBe(true);
  expect(isSolid({ ...plainBuilding, outline })).toBe(true);
  expect(isSolid({ ...plainBuilding, outline: outline.slice(0, 2) })).toBe(false);
});
