import { describe, expect, test } from 'vitest';
import {
  isGhostEdgeLikely,
  motionBlurMm,
  SLOWEST_SHUTTER_BY_MOTION_S,
  slowestShutterS,
  SUBJECT_SPEED_M_S,
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

describe('what moves while the light lasts', () => {
  test('a person 2.2 m tall over the 24 mm of a picture, a metre a second, 1/100 s: 0.11 mm', () => {
    // 85 mm from 7.8 m, the printed framing; 10 mm of way times 24/2200.
    const blur = motionBlurMm({
      speedMS: 1,
      lightS: 1 / 100,
      focalLengthMm: 85,
      distanceM: 7.8,
    });
    expect(Math.abs(blur - (10 * 24) / 2200)).toBeLessThan(0.002);
  });

  test('as near as twice the focal length the picture is as large as life', () => {
    // Thin lens: object and image both at 2f.
    expect(
      motionBlurMm({ speedMS: 0.001, lightS: 1, focalLengthMm: 50, distanceM: 0.1 }),
    ).toBeCloseTo(1, 9);
  });

  test('walking is the comfortable pace of adults, jumping the start of a leap of 0.45 m', () => {
    // Bohannon 1997: 1.27 to 1.46 m/s over all ages; v² = 2 g h.
    expect(SUBJECT_SPEED_M_S.walking).toBeGreaterThan(1.27);
    expect(SUBJECT_SPEED_M_S.walking).toBeLessThan(1.46);
    expect(SUBJECT_SPEED_M_S.jumping).toBeCloseTo(Math.sqrt(2 * 9.81 * 0.45), 1);
  });
});
