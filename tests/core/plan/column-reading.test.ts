import { describe, expect, test } from 'vitest';

import { columnFigure, columnStep } from '../../../src/core/plan/column-reading.ts';

const column = { instantMs: Float64Array.of(1000, 2000, 3000) };

describe('what a column says between its steps', () => {
  test('on a step its figure, between two the straight line', () => {
    expect(columnFigure(column, [10, 12, 8], 2000)).toBe(12);
    expect(columnFigure(column, [10, 12, 8], 1250)).toBe(10.5);
    expect(columnFigure(column, [10, 12, 8], 2500)).toBe(10);
    expect(columnFigure(column, [10, 12, 8], 3000)).toBe(8);
  });

  test('nothing before the first step, far behind the last one, or beside a step without a figure', () => {
    expect(columnFigure(column, [10, 12, 8], 999)).toBeNaN();
    expect(columnFigure(column, [10, 12, 8], 5000)).toBeNaN();
    expect(columnFigure(column, [10, NaN, 8], 1500)).toBeNaN();
    expect(columnFigure(column, [10, NaN, 8], 1000)).toBe(10);
    expect(columnFigure({ instantMs: Float64Array.of(1000) }, [10], 1000)).toBeNaN();
  });

  test('a minute belongs to the nearest step, the last one reaches one step on', () => {
    expect([1000, 1400, 1600, 3000, 3999].map((ms) => columnStep(column, ms))).toEqual([
      0, 0, 1, 2, 2,
    ]);
    expect([999, 4000].map((ms) => columnStep(column, ms))).toEqual([-1, -1]);
  });
});
