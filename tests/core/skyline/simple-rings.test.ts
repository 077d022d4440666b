import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import {
  ringsCross,
  signedDoubleArea,
  simpleRings,
  type PointRing,
} from '../../../src/core/skyline/simple-rings.ts';

const areaOf = (rings: readonly PointRing[]): number =>
  rings.reduce((sum, ring) => sum + Math.abs(signedDoubleArea(ring)) / 2, 0);

const bowTie: PointRing = [
  [0, 0],
  [4, 4],
  [4, 0],
  [0, 4],
];

describe('an outline that crosses itself is taken apart into loops', () => {
  test('a square stays as it is, 16 in area either way round', () => {
    const square: PointRing = [
      [0, 0],
      [4, 0],
      [4, 4],
      [0, 4],
    ];
    expect(simpleRings(square)).toEqual([square]);
    expect(signedDoubleArea(square)).toBe(32);
    expect(signedDoubleArea(square.toReversed())).toBe(-32);
  });

  test('a bow tie of a 4 m square becomes two triangles of 4 m² with a corner at its knot', () => {
    const loops = simpleRings(bowTie);
    expect(loops).toHaveLength(2);
    expect(loops.map((loop) => Math.abs(signedDoubleArea(loop)) / 2)).toEqual([4, 4]);
    for (const loop of loops) expect(loop).toContainEqual([2, 2]);
  });

  test('two loops that touch in one corner are two', () => {
    const loops = simpleRings([
      [2, 2],
      [0, 0],
      [0, 4],
      [2, 2],
      [4, 4],
      [4, 0],
    ]);
    expect(loops).toHaveLength(2);
    expect(areaOf(loops)).toBe(8);
  });

  test('a five-pointed star drawn in one stroke has no loop left that crosses itself', () => {
    const star: PointRing = Array.from({ length: 5 }, (_, n) => [
      Math.sin((n * 4 * Math.PI) / 5),
      Math.cos((n * 4 * Math.PI) / 5),
    ]);
    const loops = simpleRings(star);
    for (const loop of loops) expect(simpleRings(loop)).toHaveLength(1);
    // The pentagon in the middle and five points: the pentagon is turned round twice.
    const inner = Math.cos(0.4 * Math.PI) / Math.cos(0.2 * Math.PI);
    const whole = 5 * inner * Math.sin(0.2 * Math.PI);
    const pentagon = 2.5 * inner ** 2 * Math.sin(0.4 * Math.PI);
    expect(areaOf(loops)).toBeCloseTo(whole + pentagon, 9);
  });

  test('a line there and back has no loop', () => {
    expect(
      simpleRings([
        [0, 0],
        [3, 0],
        [6, 0],
        [3, 0],
      ]),
    ).toEqual([]);
  });

  test('however corners are strewn, every loop is simple and their signed areas add up', () => {
    const coordinate = fc.integer({ min: 0, max: 1000 });
    fc.assert(
      fc.property(fc.array(fc.tuple(coordinate, coordinate), { maxLength: 9 }), (ring) => {
        const loops = simpleRings(ring);
        const sum = loops.reduce((total, loop) => total + signedDoubleArea(loop), 0);
        // Crossings are rounded to the last bits of a double.
        expect(sum).toBeCloseTo(ring.length === 0 ? 0 : signedDoubleArea(ring), 4);
        for (const loop of loops) expect(ringsCross(loop, loop)).toBe(false);
      }),
    );
  });

  test('a tangle of 2,000 corners ends', () => {
    const tangle: PointRing = Array.from({ length: 2000 }, (_, n) => [
      Math.sin(n * 2.4) * 1000,
      Math.cos(n * 3.7) * 1000,
    ]);
    expect(simpleRings(tangle).length).toBeGreaterThan(0);
  });
});
