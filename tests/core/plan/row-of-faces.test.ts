import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { facePlaces } from '../../../src/core/plan/face-places.ts';
import {
  facePositionsM,
  faceSpread,
  lightAgainstMiddle,
  spreadOfLights,
  spreadStops,
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
      { faceHeightM: 1.65 },
    );
    expect(rightM).toBeCloseTo(1, 12);
    expect(towardsCameraM).toBeCloseTo(1, 12);
    expect(aboveM).toBe(0);
  });

  test('the tape runs aslant: 5 m to a head 3 m above the face leaves 4 m on the ground', () => {
    const position = standPosition(stand({ distanceM: 5, heightM: 4.65 }), {
      faceHeightM: 1.65,
    });
    expect(position.towardsCameraM).toBeCloseTo(4, 12);
    expect(position.aboveM).toBeCloseTo(3, 12);
  });

  test('a head higher than it is far hangs straight above', () => {
    const position = standPosition(stand({ distanceM: 1, heightM: 6 }), {
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

/** A diffuse face, aimed so far off the middle face. */
const flat = (offAxisDeg: number): LightStand['aim'] => ({
  offAxisDeg,
  beam: { diffuse: true, coreDeg: null },
});

describe('what the beam adds to the distance', () => {
  const pair = { people: 2, spacingM: 2, faceHeightM: 1.65 };

  test('aimed at the middle from 3 m on the axis, a flat face sends cos of 18.4° to either end', () => {
    // tan a = 1/3: distance and cosine each take 10/9 and √(10/9).
    const { nearestStops } = faceSpread(stand({ distanceM: 3, aim: flat(0) }), pair);
    expect(nearestStops).toBeCloseTo(1.5 * Math.log2(9 / 10), 9);
  });

  test('turned off by 30° from 45° right, the axis passes before the faces to the camera’s left', () => {
    // By vectors: head at (2.121, 2.121), axis at 225° + 30° of the compass of right and toward.
    const aside = stand({ distanceM: 3, angleDeg: 45, aim: flat(30) });
    const head = 3 * Math.SQRT1_2;
    const axis = [-Math.cos(Math.PI / 12), -Math.sin(Math.PI / 12)];
    const stops = (faceM: number): number => {
      const [right, toward] = [faceM - head, -head];
      const square = right ** 2 + toward ** 2;
      const cosine = (right * (axis[0] ?? 0) + toward * (axis[1] ?? 0)) / Math.sqrt(square);
      return Math.log2((9 / square) * (cosine / (Math.sqrt(3) / 2)));
    };
    const { faces } = faceSpread(aside, pair);
    expect(faces[0]?.stops).toBeCloseTo(stops(-1), 9);
    expect(faces[1]?.stops).toBeCloseTo(stops(1), 9);
  });

  test('feathering evens a row: the near end loses more than the far end, until it lies under it', () => {
    const drawn = fc.record({
      distanceM: fc.double({ min: 2.5, max: 8, noNaN: true }),
      angleDeg: fc.double({ min: 15, max: 80, noNaN: true }),
      side: fc.constantFrom(-1, 1),
      spacingM: fc.double({ min: 0.4, max: 0.9, noNaN: true }),
      people: fc.integer({ min: 2, max: 5 }),
      offAxisDeg: fc.integer({ min: 0, max: 40 }),
    });
    fc.assert(
      fc.property(drawn, ({ distanceM, angleDeg, side, spacingM, people, offAxisDeg }) => {
        const row = { people, spacingM, faceHeightM: 1.65 };
        const ends = (featherDeg: number): number => {
          const { faces } = faceSpread(
            stand({ distanceM, angleDeg: side * angleDeg, heightM: 2.3, aim: flat(featherDeg) }),
            row,
          );
          const [left, right] = [faces[0]?.stops ?? NaN, faces.at(-1)?.stops ?? NaN];
          return side * (right - left);
        };
        expect(ends(offAxisDeg + 1)).toBeLessThan(ends(offAxisDeg));
      }),
    );
  });

  test('twice as far costs two stops at every face of a single person, feathered or not', () => {
    for (const offAxisDeg of [0, 40]) {
      const near = lightAgainstMiddle(stand({ distanceM: 2, aim: flat(offAxisDeg) }), pair);
      // The middle face stays the measure, so the law shows at a place twice as far along the line.
      expect(
        near({ rightM: 0, towardsCameraM: -2, aboveM: 0 }) /
          near({ rightM: 0, towardsCameraM: 0, aboveM: 0 }),
      ).toBeCloseTo(1 / 4, 9);
    }
  });

  test('a back row is farther from a light in front and nearer to one behind', () => {
    const rows = { people: 4, spacingM: 0.7, faceHeightM: 1.65, rows: 2, rowSpacingM: 1 };
    const front = faceSpread(stand({ distanceM: 3 }), rows);
    expect([front.nearest.row, front.farthest.row]).toEqual([0, 1]);
    // 3 m to the middle, a metre more to the back row's nearer face at 0.
    expect(front.faces[2]?.stops).toBeCloseTo(Math.log2(9 / 16), 9);
    expect(faceSpread(stand({ distanceM: 3, angleDeg: 180 }), rows).nearest.row).toBe(1);
  });

  test('asked often or once, the spread is the same', () => {
    const rows = { people: 7, spacingM: 0.7, faceHeightM: 1.65, rows: 2, rowSpacingM: 1 };
    const aside = stand({ distanceM: 3, angleDeg: 50, heightM: 2.4, aim: flat(25) });
    expect(spreadStops(aside, rows, facePlaces(rows))).toBeCloseTo(
      faceSpread(aside, rows).spreadStops,
      12,
    );
  });

  test('two equal lights from both sides even the row between them', () => {
    const lights = [60, -60].map((angleDeg) => ({ stand: stand({ angleDeg }), share: 1 }));
    const { faces, spreadStops: both } = spreadOfLights(lights, pair);
    expect(faces[0]?.stops).toBeCloseTo(faces[1]?.stops ?? NaN, 12);
    expect(both).toBeCloseTo(0, 12);
  });
});
