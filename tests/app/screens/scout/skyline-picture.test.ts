import { describe, expect, test } from 'vitest';

import {
  framingOutline,
  skylineSteps,
  stretchOutline,
  stripTopDeg,
  toneOf,
} from '../../../../src/app/screens/scout/skyline-picture.ts';

const framing = {
  bearingDeg: 300,
  tiltDeg: 0,
  focalLengthMm: 35,
  sensorWidthMm: 36,
  sensorHeightMm: 24,
};
const atanDeg = (tangent: number): number => (Math.atan(tangent) * 180) / Math.PI;

describe('the strip of the low sky', () => {
  test('the grey card is sRGB 118, one stop under 85, and 2.5 stops over clips [IEC 61966-2-1]', () => {
    // EV 14 is 2048 cd/m² at K 12.5.
    expect(toneOf(2048, 14)).toBe(118);
    expect(toneOf(1024, 14)).toBe(85);
    expect(toneOf(2048 * 2 ** 2.5, 14)).toBe(255);
    expect(toneOf(0, 14)).toBe(0);
  });

  test('a level 35 mm frame spans ±27.2° at the horizon and 18.9° up in its middle', () => {
    const outline = framingOutline(framing);
    const azimuths = outline.map(({ azimuthDeg }) => azimuthDeg - 300);
    expect(Math.max(...azimuths)).toBeCloseTo(atanDeg(18 / 35), 1);
    expect(Math.min(...azimuths)).toBeCloseTo(-atanDeg(18 / 35), 1);
    expect(Math.max(...outline.map(({ altitudeDeg }) => altitudeDeg))).toBeCloseTo(
      atanDeg(12 / 35),
      1,
    );
  });

  test('a frame to the north runs on past 0° in one piece', () => {
    const azimuths = framingOutline({ ...framing, bearingDeg: 5 }).map(
      ({ azimuthDeg }) => azimuthDeg,
    );
    expect(Math.min(...azimuths)).toBeCloseTo(5 - atanDeg(18 / 35), 1);
    expect(Math.max(...azimuths)).toBeLessThan(40);
  });

  test('it is 25° high, higher where skyline or frame are, up to 60°', () => {
    expect(stripTopDeg(framing, [])).toBe(25);
    expect(stripTopDeg({ ...framing, tiltDeg: 14 }, [])).toBe(35);
    expect(stripTopDeg(framing, [{ azimuthDeg: 0, altitudeDeg: 34 }])).toBe(40);
    expect(stripTopDeg({ ...framing, tiltDeg: 80 }, [])).toBe(60);
  });

  test('the skyline keeps its own corners between the degrees', () => {
    const steps = skylineSteps([
      { azimuthDeg: 90.5, altitudeDeg: 12 },
      { azimuthDeg: 100, altitudeDeg: 0 },
      { azimuthDeg: 80, altitudeDeg: 0 },
    ]);
    expect(steps).toContainEqual({ azimuthDeg: 90.5, altitudeDeg: 12 });
    expect(steps[0]?.azimuthDeg).toBe(0);
    expect(steps.at(-1)?.azimuthDeg).toBe(360);
  });

  test('a stretch of it is cut out at its two ends, straight between the corners', () => {
    const slope = [
      { azimuthDeg: 0, altitudeDeg: 0 },
      { azimuthDeg: 90, altitudeDeg: 9 },
      { azimuthDeg: 360, altitudeDeg: 0 },
    ];
    const outline = stretchOutline(slope, 45, 100);
    const edge = outline.slice(1, -1);
    expect(edge.map(({ azimuthDeg }) => azimuthDeg)).toEqual([45, 90, 100]);
    // Half-way up to 9°, and 10/270 of the way down again.
    expect(edge.map(({ altitudeDeg }) => altitudeDeg)).toEqual([4.5, 9, 9 - 9 * (10 / 270)]);
    // Down to below everything that is drawn.
    for (const corner of [outline[0], outline.at(-1)])
      expect(corner?.altitudeDeg).toBeLessThanOrEqual(-10);
  });
});
