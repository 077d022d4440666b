import { describe, expect, test } from 'vitest';
import {
  isFilled,
  VOID_HEIGHT_M,
  type ElevationGrid,
} from '../../../src/core/skyline/elevation-grid.ts';
import { fillVoids } from '../../../src/core/skyline/fill-voids.ts';
import { terrainGrid } from '../../support/terrain-grid.ts';

const BOX = { south: 46, north: 46.1, west: 7, east: 7.1, stepDeg: 0.001 };
const slope = (latitudeDeg: number, longitudeDeg: number): number =>
  400 + 3000 * (latitudeDeg - 46) + 5000 * (longitudeDeg - 7);

const withHole = (
  grid: ElevationGrid,
  isHole: (row: number, column: number) => boolean,
): ElevationGrid => {
  const heights = Float32Array.from(grid.heights, (heightM, index) =>
    isHole(Math.floor(index / grid.columns), index % grid.columns) ? VOID_HEIGHT_M : heightM,
  );
  const voidCount = heights.reduce((sum, each) => sum + (each === VOID_HEIGHT_M ? 1 : 0), 0);
  return { ...grid, heights, voidCount };
};

const filledGrid = (grid: ElevationGrid): ElevationGrid => {
  const work = fillVoids(grid);
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
};

describe('voids are filled from the nearest heights around them', () => {
  const whole = terrainGrid(BOX, slope);

  test('a hole in an even slope is closed as if it had never been', () => {
    const holed = withHole(
      whole,
      (row, column) => row > 40 && row < 50 && column > 60 && column < 72,
    );
    expect(holed.voidCount).toBe(9 * 11);
    const filled = filledGrid(holed);
    filled.heights.forEach((heightM, index) => {
      expect(Math.abs(heightM - (whole.heights[index] ?? 0))).toBeLessThan(0.01);
    });
    const count = Array.from(whole.heights, (_, at) => isFilled(filled.filled, at)).filter(Boolean);
    expect(count).toHaveLength(9 * 11);
  });

  test('the middle of a hole farther than 16 samples from all heights stays a void', () => {
    const holed = withHole(
      whole,
      (row, column) => row >= 20 && row < 80 && column >= 20 && column < 80,
    );
    const filled = filledGrid(holed);
    expect(filled.heights[50 * whole.columns + 50]).toBe(VOID_HEIGHT_M);
    expect(isFilled(filled.filled, 50 * whole.columns + 50)).toBe(false);
    expect(filled.heights[21 * whole.columns + 21]).not.toBe(VOID_HEIGHT_M);
  });

  test('what is filled lies between the heights it was filled from', () => {
    const rough = terrainGrid(
      BOX,
      (latitudeDeg, longitudeDeg) =>
        500 + 300 * Math.sin(latitudeDeg * 900) * Math.cos(longitudeDeg * 700),
    );
    const filled = filledGrid(withHole(rough, (row, column) => (row * 7 + column * 3) % 11 < 4));
    filled.heights.forEach((heightM) => {
      expect(heightM).toBeGreaterThanOrEqual(200);
      expect(heightM).toBeLessThanOrEqual(800);
    });
  });

  test('whole metres are rounded, not cut', () => {
    const heights = Int16Array.of(-3, VOID_HEIGHT_M, -4, -3, VOID_HEIGHT_M, -4);
    const grid = { ...whole, columns: 3, rows: 2, heights, voidCount: 2 };
    expect(Array.from(filledGrid(grid).heights)).toEqual([-3, -3, -4, -3, -3, -4]);
  });

  test('a grid without voids is left as it is', () => {
    expect(filledGrid(whole)).toBe(whole);
  });
});
