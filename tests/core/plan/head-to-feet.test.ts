import { describe, expect, test } from 'vitest';

import { headToFeetStops } from '../../../src/core/plan/head-to-feet.ts';

const key = { distanceM: 2, angleDeg: 0, heightM: 1.7, sourceRadiusM: 0 };
const person = { people: 1, spacingM: 0.7, faceHeightM: 1.7 };

describe('from head to feet, by the inverse square law', () => {
  test('standing 2 m from a light at face height: the feet are √(4 + 1.7²) away, 0.8 stop down', () => {
    expect(headToFeetStops(key, { ...person, pose: 'standing' })).toBeCloseTo(
      Math.log2(4 / (4 + 1.7 ** 2)),
      9,
    );
  });

  test('sitting: face 1.2 m up, feet half a metre nearer the light', () => {
    const seated = { ...person, faceHeightM: 1.2, pose: 'sitting' as const };
    expect(headToFeetStops({ ...key, heightM: 1.2 }, seated)).toBeCloseTo(
      Math.log2(4 / (1.5 ** 2 + 1.2 ** 2)),
      9,
    );
  });

  test('lying: the feet are a metre and a half farther from a light at the side', () => {
    const lying = { ...person, faceHeightM: 0.3, pose: 'lying' as const };
    for (const angleDeg of [90, -90])
      expect(headToFeetStops({ ...key, heightM: 0.3, angleDeg }, lying)).toBeCloseTo(
        Math.log2(4 / 3.5 ** 2),
        9,
      );
  });

  test('a light from twice as far is more even', () => {
    const standing = { ...person, pose: 'standing' as const };
    expect(headToFeetStops({ ...key, distanceM: 4 }, standing)).toBeGreaterThan(
      headToFeetStops(key, standing) / 2,
    );
  });
});
