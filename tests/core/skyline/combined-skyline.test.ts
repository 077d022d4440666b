import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import {
  bySector,
  byTrace,
  combinedSkyline,
  highestSource,
} from '../../../src/core/skyline/combined-skyline.ts';
import { skylineAltitude } from '../../../src/core/skyline/skyline.ts';

const sectors = (altitudeOf: (azimuthDeg: number) => number): number[] =>
  Array.from({ length: 360 }, (_, azimuthDeg) => altitudeOf(azimuthDeg));

describe('the highest of trace, terrain and obstacles is the skyline', () => {
  test('a hill of 8° behind a traced roof of 3° is what hides the sun', () => {
    const skyline = combinedSkyline([
      byTrace([{ azimuthDeg: 0, altitudeDeg: 3 }]),
      bySector(sectors((azimuthDeg) => (azimuthDeg >= 250 && azimuthDeg <= 290 ? 8 : 1))),
    ]);
    const altitude = skylineAltitude(skyline);
    expect(altitude(270)).toBeCloseTo(8, 2);
    expect(altitude(90)).toBeCloseTo(3, 2);
  });

  test('a sector of terrain holds for half a degree to both sides of its whole degree', () => {
    const hill = bySector(sectors((azimuthDeg) => (azimuthDeg === 0 ? 5 : 0)));
    expect([359.6, 0, 0.4].map(hill)).toEqual([5, 5, 5]);
    expect([359.4, 0.6].map(hill)).toEqual([0, 0]);
  });

  test('an empty trace says nothing: terrain seen from a height may lie below the horizontal', () => {
    const skyline = combinedSkyline([byTrace([]), bySector(sectors(() => -0.4))]);
    expect(skylineAltitude(skyline)(123.4)).toBeCloseTo(-0.4, 2);
  });

  test('with no source at all the horizon is flat at 0', () => {
    expect(skylineAltitude(combinedSkyline([byTrace([])]))(77)).toBe(0);
  });

  test('of equal sources the earlier is named, and none where none knows anything', () => {
    const five = bySector(sectors(() => 5));
    expect(highestSource([five, five], 10)).toEqual({ index: 0, altitudeDeg: 5 });
    expect(highestSource([byTrace([])], 10).index).toBe(-1);
  });

  test('leaving out points on straight stretches moves the edge nowhere by more than 0.02°', () => {
    // Twice the 0.01° within which a point counts as straight, and the rounding of the rest.
    const altitude = fc.double({ min: 0, max: 60, noNaN: true });
    const points = fc.array(
      fc.record({ azimuthDeg: fc.integer({ min: 0, max: 359 }), altitudeDeg: altitude }),
      { minLength: 1, maxLength: 12 },
    );
    fc.assert(
      fc.property(points, (trace) => {
        const source = byTrace(trace);
        const read = skylineAltitude(combinedSkyline([source]));
        for (let azimuthDeg = 0; azimuthDeg < 360; azimuthDeg += 0.25)
          expect(Math.abs(read(azimuthDeg) - source(azimuthDeg))).toBeLessThan(0.02);
      }),
      { numRuns: 40 },
    );
  });

  test('a flat terrain needs few points', () => {
    expect(combinedSkyline([bySector(sectors(() => 2))]).length).toBeLessThan(4);
  });
});
