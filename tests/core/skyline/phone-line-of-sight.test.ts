import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import {
  phoneLineOfSight,
  type PhoneAngles,
} from '../../../src/core/skyline/phone-line-of-sight.ts';
import { largestError } from '../../support/largest-error.ts';

const angles = (alphaDeg: number, betaDeg: number, gammaDeg: number): PhoneAngles => ({
  alphaDeg,
  betaDeg,
  gammaDeg,
});

describe('the worked examples of the W3C DeviceOrientation Event Specification, section 5.1', () => {
  test('lying flat with its top to the west, α 90, β 0, γ 0: the compass heading of the top is 360° − α', () => {
    const { azimuthDeg, altitudeDeg } = phoneLineOfSight(angles(90, 0, 0), 'top-edge');
    expect(azimuthDeg).toBeCloseTo(270, 9);
    expect(altitudeDeg).toBeCloseTo(0, 9);
    for (const alphaDeg of [0, 45, 181, 359])
      expect(phoneLineOfSight(angles(alphaDeg, 0, 0), 'top-edge').azimuthDeg).toBeCloseTo(
        (360 - alphaDeg) % 360,
        9,
      );
  });

  test('upright with its top up, β 90 whatever the others are: its top points up, its back is level', () => {
    for (const [alphaDeg, gammaDeg] of [
      [0, 0],
      [120, 30],
      [300, -80],
    ] as const) {
      expect(phoneLineOfSight(angles(alphaDeg, 90, gammaDeg), 'top-edge').altitudeDeg).toBeCloseTo(
        90,
        5,
      );
      expect(
        phoneLineOfSight(angles(alphaDeg, 90, gammaDeg), 'back-camera').altitudeDeg,
      ).toBeCloseTo(0, 9);
    }
  });

  test('before a user who faces a heading, top to the right, α 270 − heading, γ 90: the back looks along the heading, the top 90° to its right', () => {
    for (const heading of [0, 37, 145, 260]) {
      const held = angles(270 - heading, 0, 90);
      const back = phoneLineOfSight(held, 'back-camera');
      expect(back.azimuthDeg).toBeCloseTo(heading, 9);
      expect(back.altitudeDeg).toBeCloseTo(0, 9);
      expect(phoneLineOfSight(held, 'top-edge').azimuthDeg).toBeCloseTo((heading + 90) % 360, 9);
    }
  });
});

const times = (matrix: readonly (readonly number[])[], v: readonly number[]): readonly number[] =>
  matrix.map((row) => row.reduce((sum, each, at) => sum + each * (v[at] ?? NaN), 0));

const deg = (from: number, to: number): fc.Arbitrary<number> =>
  fc.double({ min: from, max: to, noNaN: true });

/** The product of the three rotations of section 4.1, by plain matrices, on a vector of the phone. */
const rotated = (
  { alphaDeg, betaDeg, gammaDeg }: PhoneAngles,
  vector: readonly [number, number, number],
): readonly number[] => {
  const [a, b, c] = [alphaDeg, betaDeg, gammaDeg].map((degrees) => (degrees * Math.PI) / 180) as [
    number,
    number,
    number,
  ];
  const about = {
    z: [
      [Math.cos(a), -Math.sin(a), 0],
      [Math.sin(a), Math.cos(a), 0],
      [0, 0, 1],
    ],
    x: [
      [1, 0, 0],
      [0, Math.cos(b), -Math.sin(b)],
      [0, Math.sin(b), Math.cos(b)],
    ],
    y: [
      [Math.cos(c), 0, Math.sin(c)],
      [0, 1, 0],
      [-Math.sin(c), 0, Math.cos(c)],
    ],
  };
  return times(about.z, times(about.x, times(about.y, vector)));
};

const error = largestError('line of sight of a phone against the three rotations', '°');

test('for any angles it is the vector of the phone turned about z, x and y in that order', () => {
  fc.assert(
    fc.property(deg(0, 359.9), deg(-180, 179.9), deg(-90, 89.9), (alpha, beta, gamma) => {
      const held = angles(alpha, beta, gamma);
      for (const [along, vector] of [
        ['top-edge', [0, 1, 0]],
        ['back-camera', [0, 0, -1]],
      ] as const) {
        const [east = NaN, north = NaN, up = NaN] = rotated(held, vector);
        const sight = phoneLineOfSight(held, along);
        const rad = Math.PI / 180;
        const level = Math.cos(sight.altitudeDeg * rad);
        const apart = Math.hypot(
          level * Math.sin(sight.azimuthDeg * rad) - east,
          level * Math.cos(sight.azimuthDeg * rad) - north,
          Math.sin(sight.altitudeDeg * rad) - up,
        );
        // Near straight up the sine of the altitude loses half the digits.
        expect(error(apart / rad)).toBeLessThan(1e-5);
      }
    }),
  );
});
