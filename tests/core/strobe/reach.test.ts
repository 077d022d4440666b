import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reach } from '../../../src/core/strobe/reach.ts';
import { largestError } from '../../support/largest-error.ts';

const number = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });

const side = {
  syncShutterS: 1 / 250,
  holdStops: 2,
  keyStops: 0,
  ambientOnSubjectEv: Number.NEGATIVE_INFINITY,
};
const point = { guideNumberM: 40, distanceM: 2, lossStops: 0 };

describe('reach against worked figures', () => {
  const reachError = largestError('reach against worked examples', 'stop', {
    quantity: 'reach',
    method: 'guide numbers squared over distances squared, plus ambient',
    comparedWith: 'worked examples by luminance, by watt-seconds and with sun on the subject',
  });

  // N = √(L S t 2^u/K), GN = N d: the sky whose luminance asks for just this guide number at 2 m.
  test.each([
    { cdM2: 3000, perSecond: 200, hold: 2, guideNumberM: 43.82 },
    { cdM2: 5000, perSecond: 250, hold: 1, guideNumberM: 35.78 },
    { cdM2: 800, perSecond: 160, hold: 1.5, guideNumberM: 21.27 },
    { cdM2: 200, perSecond: 200, hold: 2, guideNumberM: 11.31 },
  ])(
    'GN $guideNumberM at 2 m just holds $cdM2 cd/m² $hold under at 1/$perSecond',
    ({ cdM2, perSecond, hold, guideNumberM }) => {
      const found = reach({
        ...side,
        lights: [{ ...point, guideNumberM }],
        syncShutterS: 1 / perSecond,
        holdStops: hold,
      });
      // Four figures of the guide number.
      expect(reachError(found - Math.log2((cdM2 * 100) / 12.5))).toBeLessThan(0.002);
    },
  );

  // N_eq = √(t 2^(EV + k)), Ws = 600 (N_eq d/GN 80)² 2^L: at 2 m, 2 stops of loss, EV 14, 2 under.
  test.each([
    { perSecond: 160, fNumber: 20.2, energyWs: 614 },
    { perSecond: 200, fNumber: 18.1, energyWs: 492 },
    { perSecond: 250, fNumber: 16.2, energyWs: 393 },
    { perSecond: 500, fNumber: 11.4, energyWs: 197 },
    { perSecond: 1000, fNumber: 8.1, energyWs: 98 },
  ])(
    '$energyWs Ws just hold EV 14 two under at 1/$perSecond',
    ({ perSecond, fNumber, energyWs }) => {
      const guideNumberM = 80 * Math.sqrt(energyWs / 600);
      const found = reach({
        ...side,
        lights: [{ guideNumberM, distanceM: 2, lossStops: 2 }],
        syncShutterS: 1 / perSecond,
      });
      // Whole watt-seconds and one decimal of f-number.
      expect(reachError(found - 14)).toBeLessThan(0.01);
      expect(Math.abs(2 * Math.log2(fNumber) - Math.log2(2 ** 16 / perSecond))).toBeLessThan(0.02);
    },
  );

  // A photographers' question-and-answer page: GN 40 matches sun at f/16, 2.5 m; with the sun on
  // the subject too and the background two under, flash must be 3 × sun: GN 69.
  test.each([
    { under: 1, factor: 1 },
    { under: 2, factor: Math.sqrt(3) },
    { under: 3, factor: Math.sqrt(7) },
  ])('sun on subject and background, $under under: GN × $factor', ({ under, factor }) => {
    const sunEv = Math.log2(16 ** 2 * 250);
    const found = reach({
      lights: [{ guideNumberM: 40 * factor, distanceM: 2.5, lossStops: 0 }],
      syncShutterS: 1 / 250,
      holdStops: under,
      keyStops: 0,
      ambientOnSubjectEv: sunEv,
    });
    expect(reachError(found - sunEv)).toBeLessThan(1e-9);
  });
  test('GN 40 × √3 is the published 69', () => {
    expect(Math.round(40 * Math.sqrt(3))).toBe(69);
  });
});

describe('laws of reach', () => {
  test('without ambient, doubling the distance of a point costs two stops', () => {
    fc.assert(
      fc.property(number(10, 120), number(0.5, 10), (guideNumberM, distanceM) => {
        const at = (metres: number): number =>
          reach({ ...side, lights: [{ guideNumberM, distanceM: metres, lossStops: 0 }] });
        expect(at(2 * distanceM) - at(distanceM)).toBeCloseTo(-2, 9);
      }),
    );
  });

  test('without ambient, two equal heads gain one stop, listed twice or as two heads', () => {
    fc.assert(
      fc.property(
        number(10, 120),
        number(0.5, 10),
        number(0, 2),
        (guideNumberM, distanceM, face) => {
          const head = { guideNumberM, distanceM, lossStops: 1, sourceDiameterM: face };
          const one = reach({ ...side, lights: [head] });
          expect(reach({ ...side, lights: [head, head] }) - one).toBeCloseTo(1, 9);
          expect(reach({ ...side, lights: [{ ...head, heads: 2 }] }) - one).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  test('a disc gains by coming nearer exactly what d² + r² says', () => {
    fc.assert(
      fc.property(number(0.5, 6), number(0.5, 6), number(0.1, 2), (nearM, farM, diameterM) => {
        const at = (distanceM: number): number =>
          reach({ ...side, lights: [{ ...point, distanceM, sourceDiameterM: diameterM }] });
        const squares = (farM ** 2 + diameterM ** 2 / 4) / (nearM ** 2 + diameterM ** 2 / 4);
        expect(at(nearM) - at(farM)).toBeCloseTo(Math.log2(squares), 9);
      }),
    );
  });

  test('a stop of hold, of key or of sync time costs a stop', () => {
    const now = reach({ ...side, lights: [point] });
    expect(reach({ ...side, lights: [point], holdStops: 3 })).toBeCloseTo(now - 1, 9);
    expect(reach({ ...side, lights: [point], keyStops: 1 })).toBeCloseTo(now - 1, 9);
    expect(reach({ ...side, lights: [point], syncShutterS: 1 / 125 })).toBeCloseTo(now - 1, 9);
  });

  test('ambient alone holds what it reads less the hold; nothing holds nothing', () => {
    expect(reach({ ...side, lights: [], ambientOnSubjectEv: 10 })).toBeCloseTo(8, 9);
    expect(reach({ ...side, lights: [] })).toBe(Number.NEGATIVE_INFINITY);
  });
});
