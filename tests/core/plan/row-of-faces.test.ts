import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import {
  facePositionsM,
  faceSpread,
  standPosition,
  type LightStand,
} from '../../../src/core/plan/row-of-faces.ts';

const stand = (changes: Partial<LightStand>): LightStand => ({
  distanceM: 3,
  angleDeg: 0,
  heightM: 1.65,
  sourceRadiusM: 0,
  ...changes,
});

describe('faces of a row', () => {
  test('four at 0.7 m stand 1.05 and 0.35 m to either side of the middle, one stands in it', () => {
    const row = { people: 4, spacingM: 0.7, faceHeightM: 1.65 };
    facePositionsM(row).forEach((faceM, place) =>
      expect(faceM).toBeCloseTo(-1.05 + 0.7 * place, 12),
    );
    expect(facePositionsM({ ...row, people: 1 })).toEqual([0]);
  });
});

describe('where a light stands', () => {
  test('a light at 45° to the camera’s right, level with the faces, is as far right as it is near', () => {
    const { rightM, towardsCameraM, aboveM } = standPosition(
      stand({ distanceM: Math.SQRT2, angleDeg: 45 }),
      { people: 1, spacingM: 1, faceHeightM: 1.65 },
    );
    expect(rightM).toBeCloseTo(1, 12);
    expect(towardsCameraM).toBeCloseTo(1, 12);
    expect(aboveM).toBe(0);
  });

  test('the tape runs aslant: 5 m to a head 3 m above the face leaves 4 m on the ground', () => {
    const position = standPosition(stand({ distanceM: 5, heightM: 4.65 }), {
      people: 1,
      spacingM: 1,
      faceHeightM: 1.65,
    });
    expect(position.towardsCameraM).toBeCloseTo(4, 12);
    expect(position.aboveM).toBeCloseTo(3, 12);
  });

  test('a head higher than it is far hangs straight above', () => {
    const position = standPosition(stand({ distanceM: 1, heightM: 6 }), {
      people: 1,
      spacingM: 1,
      faceHeightM: 1.65,
    });
    expect(position).toEqual({ rightM: 0, towardsCameraM: 0, aboveM: 1 });
  });
});

describe('spread over the row, by the inverse square law', () => {
  const pair = { people: 2, spacingM: 2, faceHeightM: 1.65 };

  test('a point light in line with the row, 3 m from its middle: faces at 2 and 4 m lie 2 stops apart', () => {
    const spread = faceSpread(stand({ distanceM: 3, angleDeg: 90 }), pair);
    expect(spread.spreadStops).toBeCloseTo(2, 12);
    expect(spread.nearestStops).toBeCloseTo(Math.log2(9 / 4), 12);
    expect(spread.farthestStops).toBeCloseTo(Math.log2(9 / 16), 12);
  });

  test('a disc of radius 1 m there: 2² + 1 against 4² + 1, 1.77 stops', () => {
    const spread = faceSpread(stand({ distanceM: 3, angleDeg: 90, sourceRadiusM: 1 }), pair);
    expect(spread.spreadStops).toBeCloseTo(Math.log2(17 / 5), 12);
  });

  test('on the axis both faces are as far, and farther than the middle', () => {
    const spread = faceSpread(stand({ distanceM: 3 }), pair);
    expect(spread.spreadStops).toBeCloseTo(0, 12);
    expect(spread.nearestStops).toBeCloseTo(Math.log2(9 / 10), 12);
  });

  test('one person has no spread', () => {
    expect(faceSpread(stand({ angleDeg: 60 }), { ...pair, people: 1 }).spreadStops).toBe(0);
  });

  test('mirrored to the other side a light spreads the same', () => {
    const drawn = fc.record({
      distanceM: fc.double({ min: 1, max: 8, noNaN: true }),
      angleDeg: fc.double({ min: -180, max: 180, noNaN: true }),
      people: fc.integer({ min: 2, max: 8 }),
      spacingM: fc.double({ min: 0.3, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(drawn, ({ distanceM, angleDeg, people, spacingM }) => {
        const row = { people, spacingM, faceHeightM: 1.65 };
        const one = faceSpread(stand({ distanceM, angleDeg, heightM: 2.3 }), row);
        const other = faceSpread(stand({ distanceM, angleDeg: -angleDeg, heightM: 2.3 }), row);
        expect(other.spreadStops).toBeCloseTo(one.spreadStops, 9);
      }),
    );
  });
});
