import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { depthOfGroupM, facePlaces } from '../../../src/core/plan/face-places.ts';

const group = { people: 8, spacingM: 0.7, faceHeightM: 1.65, rows: 2, rowSpacingM: 0.9 };
const across = (people: number, rows: number): readonly (readonly number[])[] =>
  Array.from({ length: rows }, (_, row) =>
    facePlaces({ ...group, people, rows, spacingM: 1 }).flatMap((place) =>
      place.row === row ? [place.rightM] : [],
    ),
  );

describe('people in rows', () => {
  test('eight in two rows: four before, four behind them half a place to the right', () => {
    expect(across(8, 2)).toEqual([
      [-1.5, -0.5, 0.5, 1.5],
      [-1, 0, 1, 2],
    ]);
  });

  test('seven in two rows: the back row takes the one left over and so stands in the gaps', () => {
    expect(across(7, 2)).toEqual([
      [-1, 0, 1],
      [-1.5, -0.5, 0.5, 1.5],
    ]);
  });

  test('nine in three rows: every second one is shifted', () => {
    expect(across(9, 3)).toEqual([
      [-1, 0, 1],
      [-0.5, 0.5, 1.5],
      [-1, 0, 1],
    ]);
  });

  test('the front row is at the camera’s distance, the others behind it', () => {
    expect(depthOfGroupM({ ...group, rows: 3 })).toBeCloseTo(1.8, 12);
    expect(depthOfGroupM({ ...group, rows: 1 })).toBe(0);
    expect(depthOfGroupM({ people: 4, spacingM: 0.7, faceHeightM: 1.65 })).toBe(0);
  });

  test('nobody is lost, no row is empty, no face stands straight behind another of the row before', () => {
    const drawn = fc.record({
      people: fc.integer({ min: 1, max: 20 }),
      rows: fc.integer({ min: 1, max: 5 }),
    });
    fc.assert(
      fc.property(drawn, ({ people, rows }) => {
        const places = facePlaces({ ...group, people, rows });
        expect(places).toHaveLength(people);
        const used = Math.max(...places.map(({ row }) => row)) + 1;
        expect(used).toBe(Math.min(rows, people));
        for (const one of places)
          for (const other of places)
            if (other.row === one.row + 1)
              expect(Math.abs(one.rightM - other.rightM)).toBeGreaterThan(0.3);
      }),
    );
  });
});
