import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  flashDistanceM,
  flashFNumber,
  flashFNumberSquared,
  guideNumberAtIso,
  guideNumberFromReading,
  guideNumberMFromFeet,
} from '../../../src/core/strobe/guide-number.ts';
import { largestError } from '../../support/largest-error.ts';

const stopsBetween = (first: number, second: number): number => 2 * Math.log2(first / second);
const full = { powerStops: 0, iso: 100 };
const number = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });

// Lambertian disc, equal rings: E ∝ ∫ cos² / s² dA = ∫ d² / (d² + ρ²)² 2πρ dρ.
const sumOverFace = (d: number, r: number): number => {
  let sum = 0;
  const rings = 2000;
  for (let ring = 0; ring < rings; ring += 1) {
    const rho = ((ring + 0.5) * r) / rings;
    sum += ((d * d) / (d * d + rho * rho) ** 2) * 2 * Math.PI * rho * (r / rings);
  }
  return sum / (Math.PI * r * r);
};

describe('guide numbers against published examples', () => {
  const exampleError = largestError(
    'flash aperture against published guide-number examples',
    'stop',
    {
      quantity: 'aperture for flash',
      method: 'guide number over distance',
      comparedWith: 'published guide-number and inverse-square examples, nominal f-numbers',
    },
  );

  // Open Photographic Society 'Flash Guide Numbers'; a dictionary of photography; a flash maker's
  // manual (at ISO 200); a practitioner's pairs for GN 56 feet, rounded to whole stops.
  test.each([
    { guideNumberM: 32, iso: 100, distanceM: 4, fNumber: 8, tolerance: 0.01 },
    { guideNumberM: 45, iso: 100, distanceM: 5, fNumber: 9, tolerance: 0.01 },
    { guideNumberM: 51 / Math.SQRT2, iso: 200, distanceM: 9, fNumber: 5.67, tolerance: 0.01 },
    { guideNumberM: 56 * 0.3048, iso: 100, distanceM: 5 * 0.3048, fNumber: 11, tolerance: 0.1 },
    { guideNumberM: 56 * 0.3048, iso: 100, distanceM: 7 * 0.3048, fNumber: 8, tolerance: 0.1 },
    { guideNumberM: 56 * 0.3048, iso: 100, distanceM: 10 * 0.3048, fNumber: 5.6, tolerance: 0.1 },
  ])(
    'GN $guideNumberM at $distanceM m and ISO $iso gives f/$fNumber',
    ({ guideNumberM, iso, distanceM, fNumber, tolerance }) => {
      const found = flashFNumber({ guideNumberM, distanceM, lossStops: 0 }, { powerStops: 0, iso });
      expect(exampleError(stopsBetween(found, fNumber))).toBeLessThan(tolerance);
    },
  );

  test('GN 58 at f/4 reaches 14.5 m (a camera weekly on buying a flashgun)', () => {
    expect(flashDistanceM({ guideNumberM: 58, lossStops: 0 }, { fNumber: 4, ...full })).toBeCloseTo(
      14.5,
      9,
    );
  });

  test('ISO 400 doubles the number; 360 feet at ISO 200 is 77.6 m at ISO 100', () => {
    expect(guideNumberAtIso(32, { fromIso: 100, toIso: 400 })).toBeCloseTo(64, 9);
    const metres = guideNumberMFromFeet(360);
    expect(Math.abs(guideNumberAtIso(metres, { fromIso: 200, toIso: 100 }) - 77.6)).toBeLessThan(
      0.05,
    );
  });

  // 'Inverse Square Law': distance × 2, 3, 4, 5; 'What is a watt second?': 1 m to 10 feet.
  test.each([
    { from: 1, to: 2, stops: -2 },
    { from: 1, to: 3, stops: -3.17 },
    { from: 1, to: 4, stops: -4 },
    { from: 1, to: 5, stops: -4.64 },
    { from: 1, to: 3.048, stops: -3.2 },
    { from: 2, to: 3.048, stops: -1.2 },
    { from: 1.5, to: 2, stops: -0.83 },
    { from: 2, to: 3, stops: -1.17 },
    { from: 3, to: 10, stops: -3.47 },
  ])('from $from to $to m is $stops stops', ({ from, to, stops }) => {
    const point = { guideNumberM: 40, lossStops: 0 };
    const near = flashFNumber({ ...point, distanceM: from }, full);
    const far = flashFNumber({ ...point, distanceM: to }, full);
    expect(exampleError(stopsBetween(far, near) - stops)).toBeLessThan(0.05);
  });

  // Two GN 41 give 58 (the source rounds to 57), four 82, three 71: 'Stop thinking'.
  test.each([
    [2, 58],
    [3, 71],
    [4, 82],
  ])('%d heads of GN 41 are one of GN %d', (heads, guideNumberM) => {
    const found = Math.sqrt(
      flashFNumberSquared({ guideNumberM: 41, distanceM: 1, lossStops: 0, heads }),
    );
    expect(Math.abs(found - guideNumberM)).toBeLessThan(0.5);
  });

  // A small flash, GN 137.8 feet, balanced to EV 16 at 1/250: 8.5 feet (the source has 8.61).
  test.each([
    { heads: 1, ev: 16, feet: 8.5 },
    { heads: 4, ev: 16, feet: 17 },
    { heads: 1, ev: 15, feet: 12 },
  ])('$heads × GN 137.8 ft meets EV $ev at 1/250 from $feet feet', ({ heads, ev, feet }) => {
    const fNumber = Math.sqrt(2 ** ev / 250);
    const source = { guideNumberM: guideNumberMFromFeet(137.8), lossStops: 0, heads };
    const distanceM = flashDistanceM(source, { fNumber, ...full });
    // A tenth of a stop: the source works with nominal f-numbers.
    expect(exampleError(stopsBetween(distanceM / 0.3048, feet))).toBeLessThan(0.1);
  });

  test('a 1/4 + two 1/8 make 1/2 power (forum, elementary flash math)', () => {
    const [half = 0, quarter = 0, eighth = 0] = [-1, -2, -3].map(
      (powerStops) =>
        flashFNumber({ guideNumberM: 40, distanceM: 2, lossStops: 0 }, { powerStops, iso: 100 }) **
        2,
    );
    expect(quarter + 2 * eighth).toBeCloseTo(half, 9);
  });
});

describe('laws of distance', () => {
  test('doubling the distance of a point always costs two stops', () => {
    fc.assert(
      fc.property(number(10, 120), number(0.2, 20), (guideNumberM, distanceM) => {
        const at = (d: number): number =>
          flashFNumber({ guideNumberM, distanceM: d, lossStops: 0 }, full);
        expect(stopsBetween(at(2 * distanceM), at(distanceM))).toBeCloseTo(-2, 9);
      }),
    );
  });

  test('a disc follows d² + r² exactly, as its light summed over its face says', () => {
    fc.assert(
      fc.property(number(0.3, 6), number(0.1, 2), (distanceM, sourceDiameterM) => {
        const found = flashFNumberSquared({
          guideNumberM: 1,
          distanceM,
          lossStops: 0,
          sourceDiameterM,
        });
        // Midpoint sums of 2000 rings agree to a millionth.
        expect(found / sumOverFace(distanceM, sourceDiameterM / 2)).toBeCloseTo(1, 5);
      }),
      { numRuns: 50 },
    );
  });

  test('at five times its width a source is a point within one per cent (lighting handbooks)', () => {
    const disc = { guideNumberM: 40, distanceM: 5, lossStops: 0, sourceDiameterM: 1 };
    const error =
      1 - flashFNumberSquared(disc) / flashFNumberSquared({ ...disc, sourceDiameterM: 0 });
    expect(error).toBeGreaterThan(0.009);
    expect(error).toBeLessThan(0.0101);
  });

  test('a reading close to a large face predicts the reading anywhere on its axis', () => {
    fc.assert(
      fc.property(
        number(2, 32),
        number(0.5, 4),
        number(0, 2),
        number(0.5, 10),
        fc.constantFrom(50, 100, 400),
        (fNumber, distanceM, sourceDiameterM, elsewhereM, iso) => {
          const guideNumberM = guideNumberFromReading({ fNumber, iso, distanceM, sourceDiameterM });
          const source = { guideNumberM, distanceM, lossStops: 0, sourceDiameterM };
          expect(flashFNumber(source, { powerStops: 0, iso }) / fNumber).toBeCloseTo(1, 9);
          const ratio =
            (distanceM ** 2 + sourceDiameterM ** 2 / 4) /
            (elsewhereM ** 2 + sourceDiameterM ** 2 / 4);
          const there = flashFNumber({ ...source, distanceM: elsewhereM }, { powerStops: 0, iso });
          expect((there / fNumber) ** 2 / ratio).toBeCloseTo(1, 9);
        },
      ),
    );
  });
});
