import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  discShareAbove,
  skylineAltitude,
  type Skyline,
} from '../../../src/core/skyline/skyline.ts';

const anySkyline = fc.array(
  fc.record({
    azimuthDeg: fc.double({ min: -360, max: 720, noNaN: true }),
    altitudeDeg: fc.double({ min: -5, max: 80, noNaN: true }),
  }),
  { minLength: 1, maxLength: 40 },
);
const anyAzimuth = fc.double({ min: -720, max: 720, noNaN: true });

describe('the skyline between its points', () => {
  //  20°       *
  //          /   \          straight from (90°, 0°) up to (100°, 20°) and down to (120°, 0°)
  //   0° __*       *__
  const hill: Skyline = [
    { azimuthDeg: 90, altitudeDeg: 0 },
    { azimuthDeg: 100, altitudeDeg: 20 },
    { azimuthDeg: 120, altitudeDeg: 0 },
  ];
  test.each([
    [90, 0],
    [95, 10],
    [100, 20],
    [105, 15],
    [119, 1],
    [120, 0],
    [270, 0],
    [0, 0],
    [-265, 10],
    [455, 10],
  ])('at %i° it stands at %i°', (azimuthDeg, altitudeDeg) => {
    expect(skylineAltitude(hill)(azimuthDeg)).toBeCloseTo(altitudeDeg, 9);
  });

  test('closes through north', () => {
    const at = skylineAltitude([
      { azimuthDeg: 10, altitudeDeg: 4 },
      { azimuthDeg: 350, altitudeDeg: 2 },
    ]);
    expect(at(0)).toBeCloseTo(3, 9);
    expect(at(355)).toBeCloseTo(2.5, 9);
    expect(at(180)).toBeCloseTo(3, 9);
  });

  test('none is flat at 0, one is level all round', () => {
    expect(skylineAltitude([])(123)).toBe(0);
    expect(skylineAltitude([{ azimuthDeg: 40, altitudeDeg: 7 }])(310)).toBe(7);
  });

  test('two points at one azimuth are a vertical edge', () => {
    const wall = skylineAltitude([
      { azimuthDeg: 100, altitudeDeg: 0 },
      { azimuthDeg: 100, altitudeDeg: 30 },
      { azimuthDeg: 140, altitudeDeg: 30 },
      { azimuthDeg: 140, altitudeDeg: 0 },
    ]);
    expect(wall(99.999)).toBeCloseTo(0, 6);
    expect(wall(100.001)).toBeCloseTo(30, 6);
    expect(wall(139.999)).toBeCloseTo(30, 6);
    expect(wall(140.001)).toBeCloseTo(0, 6);
  });

  test('passes through every point, in whatever order they come', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 0, max: 359 }), { minLength: 1, maxLength: 36 }),
        fc.infiniteStream(fc.double({ min: -2, max: 60, noNaN: true })),
        (azimuths, altitudes) => {
          const skyline = azimuths.map((azimuthDeg) => ({
            azimuthDeg,
            altitudeDeg: altitudes.next().value ?? 0,
          }));
          const at = skylineAltitude(skyline);
          for (const { azimuthDeg, altitudeDeg } of skyline) {
            expect(at(azimuthDeg)).toBeCloseTo(altitudeDeg, 9);
          }
        },
      ),
    );
  });

  test('stays between its lowest and highest point, any turn round', () => {
    fc.assert(
      fc.property(anySkyline, anyAzimuth, (skyline, azimuthDeg) => {
        const altitudes = skyline.map((point) => point.altitudeDeg);
        const found = skylineAltitude(skyline)(azimuthDeg);
        expect(found).toBeGreaterThanOrEqual(Math.min(...altitudes) - 1e-9);
        expect(found).toBeLessThanOrEqual(Math.max(...altitudes) + 1e-9);
      }),
    );
  });
});

describe('the share of the sun’s disc above the skyline', () => {
  // Linear over the disc's 0.54°.
  test.each([
    [5, 5, 0.5],
    [5.27, 5, 1],
    [4.73, 5, 0],
    [5.135, 5, 0.75],
    [10, 5, 1],
    [-3, 0, 0],
  ])('centre at %f°, skyline at %f°: %f', (apparentAltitudeDeg, skylineDeg, share) => {
    expect(discShareAbove({ apparentAltitudeDeg }, skylineDeg)).toBeCloseTo(share, 9);
  });
});
