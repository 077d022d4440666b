import { describe, expect, test } from 'vitest';

import { lightInFrame, poleInFrame } from '../../../src/core/plan/light-in-frame.ts';
import type { LightStand } from '../../../src/core/plan/row-of-faces.ts';
import type { ShootFraming } from '../../../src/core/plan/spot-schema.ts';

/** 35 mm: the edge lies 18/35 of the way forward to either side, 12/35 above. */
const framing: ShootFraming = {
  bearingDeg: 200,
  tiltDeg: 0,
  focalLengthMm: 35,
  sensorWidthMm: 36,
  sensorHeightMm: 24,
  orientation: 'landscape',
  cameraDistanceM: 5,
  cameraHeightM: 1.65,
};
const row = { people: 1, spacingM: 0.7, faceHeightM: 1.65 };

const stand = (changes: Partial<LightStand>): LightStand => ({
  distanceM: 2,
  angleDeg: 0,
  heightM: 1.65,
  sourceRadiusM: 0,
  ...changes,
});

const above = (distanceM: number): boolean =>
  lightInFrame(stand({ distanceM, heightM: 1.65 + distanceM }), row, framing);

describe('whether a light’s face stands in the picture', () => {
  test('between camera and subject on the axis it does, behind the camera it does not', () => {
    expect(lightInFrame(stand({}), row, framing)).toBe(true);
    expect(lightInFrame(stand({ distanceM: 6 }), row, framing)).toBe(false);
  });

  test('square to the side it leaves at 18/35 of the camera distance, 2.571 m from 5 m', () => {
    expect(lightInFrame(stand({ angleDeg: 90, distanceM: 2.56 }), row, framing)).toBe(true);
    expect(lightInFrame(stand({ angleDeg: 90, distanceM: 2.58 }), row, framing)).toBe(false);
    expect(lightInFrame(stand({ angleDeg: -90, distanceM: 2.58 }), row, framing)).toBe(false);
  });

  test('a face 0.4 m in radius shows its rim until 2.971 m', () => {
    const large = { angleDeg: 90, sourceRadiusM: 0.4 };
    expect(lightInFrame(stand({ ...large, distanceM: 2.96 }), row, framing)).toBe(true);
    expect(lightInFrame(stand({ ...large, distanceM: 2.98 }), row, framing)).toBe(false);
  });

  test('above the head it leaves at 12/35 of the camera distance, 1.714 m', () => {
    expect(above(1.7)).toBe(true);
    expect(above(1.73)).toBe(false);
  });

  test('held upright the picture is narrower: to the side it leaves at 12/35, 1.714 m', () => {
    const upright: ShootFraming = { ...framing, orientation: 'portrait' };
    expect(lightInFrame(stand({ angleDeg: 90, distanceM: 1.7 }), row, upright)).toBe(true);
    expect(lightInFrame(stand({ angleDeg: 90, distanceM: 1.73 }), row, upright)).toBe(false);
  });
});

describe('whether the pole under a light stands in the picture', () => {
  test('a light above the upper edge leaves its pole in the picture, one beside the frame does not', () => {
    const high = stand({ distanceM: 3, heightM: 4.4 });
    expect(lightInFrame(high, row, framing)).toBe(false);
    expect(poleInFrame(high, row, framing)).toBe(true);
    expect(poleInFrame(stand({ angleDeg: 90, distanceM: 2.58 }), row, framing)).toBe(false);
    expect(poleInFrame(stand({ distanceM: 6 }), row, framing)).toBe(false);
  });

  test('with the camera tilted up past the light there is nothing of it', () => {
    // 19° up the lower edge, 18.9° under the axis, is level: a light at camera height lies under it.
    expect(poleInFrame(stand({ heightM: 1.6 }), row, { ...framing, tiltDeg: 25 })).toBe(false);
  });
});
