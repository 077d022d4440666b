import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  horizontalFieldDeg,
  isInsidePicture,
  projection,
  verticalFieldDeg,
  type Framing,
} from '../../../src/core/sky/framing.ts';
import { angleBetweenDeg } from '../../../src/core/units/direction.ts';

const FULL_FRAME = { sensorWidthMm: 36, sensorHeightMm: 24 } as const;
const camera = (bearingDeg: number, tiltDeg: number, focalLengthMm: number): Framing => ({
  ...FULL_FRAME,
  bearingDeg,
  tiltDeg,
  focalLengthMm,
});
const radians = (deg: number): number => (deg * Math.PI) / 180;

const anyFraming = fc.record({
  bearingDeg: fc.double({ min: 0, max: 360, noNaN: true }),
  tiltDeg: fc.double({ min: -90, max: 90, noNaN: true }),
  focalLengthMm: fc.double({ min: 14, max: 200, noNaN: true }),
  sensorWidthMm: fc.constantFrom(36, 24),
  sensorHeightMm: fc.constantFrom(24, 36),
});
const anyPoint = fc.record({
  xFraction: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
  yFraction: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
});

describe('angle of view, 2 atan(width / 2f)', () => {
  // Handbook angles of view of a 36 × 24 mm picture, in common print (rounded as printed).
  test.each([
    [14, 104.3, 81.2],
    [24, 73.7, 53.1],
    [35, 54.4, 37.8],
    [50, 39.6, 27.0],
    [85, 23.9, 16.1],
    [200, 10.3, 6.9],
  ])('%i mm sees %f° × %f°', (focalLengthMm, acrossDeg, uprightDeg) => {
    expect(Math.abs(horizontalFieldDeg(camera(0, 0, focalLengthMm)) - acrossDeg)).toBeLessThan(
      0.06,
    );
    expect(Math.abs(verticalFieldDeg(camera(0, 0, focalLengthMm)) - uprightDeg)).toBeLessThan(0.06);
  });

  test('the middle of each edge lies half the field from the lens axis', () => {
    fc.assert(
      fc.property(anyFraming, (framing) => {
        const { toDirection } = projection(framing);
        const axis = toDirection({ xFraction: 0, yFraction: 0 });
        for (const [point, fieldDeg] of [
          [{ xFraction: 0.5, yFraction: 0 }, horizontalFieldDeg(framing)],
          [{ xFraction: -0.5, yFraction: 0 }, horizontalFieldDeg(framing)],
          [{ xFraction: 0, yFraction: 0.5 }, verticalFieldDeg(framing)],
        ] as const) {
          expect(angleBetweenDeg(axis, toDirection(point))).toBeCloseTo(fieldDeg / 2, 5);
        }
      }),
    );
  });
});

describe('where things land in the picture', () => {
  test('the lens axis is the centre', () => {
    const centre = projection(camera(210, 12, 35)).toDirection({ xFraction: 0, yFraction: 0 });
    expect(centre.azimuthDeg).toBeCloseTo(210, 9);
    expect(centre.altitudeDeg).toBeCloseTo(12, 9);
  });

  test('east is to the right of a camera facing north, and up is up', () => {
    const { toPicture } = projection(camera(0, 0, 50));
    const right = toPicture({ azimuthDeg: 10, altitudeDeg: 0 });
    expect(right?.xFraction).toBeCloseTo((50 / 36) * Math.tan(radians(10)), 9);
    expect(right?.yFraction).toBeCloseTo(0, 9);
    const above = toPicture({ azimuthDeg: 0, altitudeDeg: 8 });
    expect(above?.xFraction).toBeCloseTo(0, 9);
    expect(above?.yFraction).toBeCloseTo((50 / 24) * Math.tan(radians(8)), 9);
  });

  test('of a level camera, x is the tangent of the turn and y the tangent of the rise over its cosine', () => {
    const { toPicture } = projection(camera(90, 0, 24));
    const point = toPicture({ azimuthDeg: 115, altitudeDeg: 20 });
    expect(point?.xFraction).toBeCloseTo((24 / 36) * Math.tan(radians(25)), 9);
    expect(point?.yFraction).toBeCloseTo(
      ((24 / 24) * Math.tan(radians(20))) / Math.cos(radians(25)),
      9,
    );
  });

  test('a camera tilted up by t shows the horizon f·tan t below the centre, level across', () => {
    const { toPicture } = projection(camera(45, 15, 24));
    for (const azimuthDeg of [20, 45, 70]) {
      expect(toPicture({ azimuthDeg, altitudeDeg: 0 })?.yFraction).toBeCloseTo(
        -Math.tan(radians(15)),
        9,
      );
    }
  });

  test('what lies behind the camera or straight across it is nowhere', () => {
    const { toPicture } = projection(camera(0, 0, 14));
    expect(toPicture({ azimuthDeg: 180, altitudeDeg: 0 })).toBeNull();
    expect(toPicture({ azimuthDeg: 91, altitudeDeg: 30 })).toBeNull();
  });

  test('straight up and straight down the bearing says where the picture’s top points', () => {
    const up = projection(camera(30, 90, 35)).toDirection({ xFraction: 0, yFraction: 0.4 });
    expect(up.azimuthDeg).toBeCloseTo(210, 6);
    const down = projection(camera(30, -90, 35)).toDirection({ xFraction: 0, yFraction: 0.4 });
    expect(down.azimuthDeg).toBeCloseTo(30, 6);
  });

  test('a point of the picture projected out and back is itself', () => {
    fc.assert(
      fc.property(anyFraming, anyPoint, (framing, point) => {
        const { toDirection, toPicture, toUnitVector } = projection(framing);
        const back = toPicture(toDirection(point));
        expect(back?.xFraction).toBeCloseTo(point.xFraction, 5);
        expect(back?.yFraction).toBeCloseTo(point.yFraction, 5);
        const { east, north, up } = toUnitVector(point);
        expect(east ** 2 + north ** 2 + up ** 2).toBeCloseTo(1, 12);
      }),
      { numRuns: 1000 },
    );
  });

  test('straight lines stay straight: a plumb line has one slope in the picture', () => {
    const { toPicture } = projection(camera(0, 20, 24));
    const [low, middle, high] = [0, 15, 30].map((altitudeDeg) =>
      toPicture({ azimuthDeg: 12, altitudeDeg }),
    );
    const slope = (a: typeof low, b: typeof low): number =>
      ((b?.xFraction ?? NaN) - (a?.xFraction ?? NaN)) /
      ((b?.yFraction ?? NaN) - (a?.yFraction ?? NaN));
    expect(slope(low, middle)).toBeCloseTo(slope(middle, high), 9);
  });

  test('the edge belongs to the picture, beyond it does not', () => {
    expect(isInsidePicture({ xFraction: 0.5, yFraction: -0.5 })).toBe(true);
    expect(isInsidePicture({ xFraction: 0.51, yFraction: 0 })).toBe(false);
    expect(isInsidePicture({ xFraction: 0, yFraction: -0.51 })).toBe(false);
  });
});
