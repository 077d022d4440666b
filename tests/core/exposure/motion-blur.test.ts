import { describe, expect, test } from 'vitest';
import {
  isGhostEdgeLikely,
  SLOWEST_SHUTTER_BY_MOTION_S,
  slowestShutterS,
} from '../../../src/core/exposure/motion-blur.ts';

const FULL_FRAME_DIAGONAL_MM = Math.hypot(36, 24);

describe('the slowest shutter, common practice', () => {
  test('in the hand one over the focal length, on a tripod the subject alone', () => {
    const shot = { motion: 'posing', focalLengthMm: 200, sensorDiagonalMm: FULL_FRAME_DIAGONAL_MM };
    expect(slowestShutterS({ ...shot, motion: 'posing', support: 'hand' })).toBeCloseTo(
      1 / 200,
      12,
    );
    expect(slowestShutterS({ ...shot, motion: 'posing', support: 'tripod' })).toBeCloseTo(
      1 / 60,
      12,
    );
  });

  test('half the picture asks for half the time', () => {
    expect(
      slowestShutterS({
        motion: 'still',
        support: 'hand',
        focalLengthMm: 50,
        sensorDiagonalMm: FULL_FRAME_DIAGONAL_MM / 2,
      }),
    ).toBeCloseTo(1 / 100, 12);
  });

  test('livelier movement never allows a slower shutter', () => {
    const times = Object.values(SLOWEST_SHUTTER_BY_MOTION_S);
    expect(times.toSorted((first, second) => second - first)).toEqual(times);
  });
});

describe('a ghost edge', () => {
  const dusk = { shutterS: 1 / 30, motion: 'walking', unlitStops: -4, skyStops: -1.5 } as const;

  test('is likely behind a walker at 1/30 against a sky 1.5 under', () => {
    expect(isGhostEdgeLikely(dusk)).toBe(true);
  });

  test('is not with a shutter that stops the walk, nor with everything 3 stops under or more', () => {
    // A practitioner on hard sun: about three stops under for flash to hide it.
    expect(isGhostEdgeLikely({ ...dusk, shutterS: 1 / 250 })).toBe(false);
    expect(isGhostEdgeLikely({ ...dusk, skyStops: -3.2 })).toBe(false);
  });
});
