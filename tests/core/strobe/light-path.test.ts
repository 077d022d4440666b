import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { offAxisStops } from '../../../src/core/strobe/beam.ts';
import { bounce, type BouncePath } from '../../../src/core/strobe/bounce.ts';
import { flashFNumberSquared } from '../../../src/core/strobe/guide-number.ts';
import { bouncedPath, type LightPath } from '../../../src/core/strobe/light-path.ts';
import { perSquareM } from '../../../src/core/strobe/light-on-subject.ts';

const span = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });

/** As bounces are built: the subject no nearer than the head stands to the surface. */
const built = (panel: boolean): fc.Arbitrary<BouncePath> =>
  fc
    .record({
      headToSurfaceM: span(0.3, 2),
      subjectTimes: span(1, 4),
      incidenceDeg: span(0, 50),
      exitDeg: span(0, 50),
      beamDeg: span(20, 110),
      reflectance: span(0.05, 0.95),
      panelSideM: span(0.5, 2.4),
    })
    .map(({ subjectTimes, panelSideM, ...path }) => ({
      ...path,
      surfaceToSubjectM: path.headToSurfaceM * subjectTimes,
      ...(panel ? { panelSideM } : {}),
    }));

const forward = ({ surfaceToSubjectM, ...off }: BouncePath): number =>
  perSquareM({ kind: 'bounced', off, lossStops: 0 }, { distanceM: surfaceToSubjectM, radiusM: 0 });

describe('a bounce as a light of a recipe', () => {
  test.each([
    ['a wall', false],
    ['a panel', true],
  ])('rays of the beam and cells of the surface bring the same light off %s', (_, panel) => {
    fc.assert(
      fc.property(built(panel), (path) => {
        const cells = Math.log2(forward(path) * path.surfaceToSubjectM ** 2);
        // What checking a recipe allows for the two sums.
        expect(Math.abs(cells - bounce(path).againstDirectStops)).toBeLessThan(0.03);
      }),
      { numRuns: 150 },
    );
  });

  test('at its distance it gives just what the rays give, for any guide number', () => {
    fc.assert(
      fc.property(built(false), span(10, 100), (asked, guideNumberM) => {
        const { path, sourceDiameterM, bounce: found } = bouncedPath(asked);
        const distanceM = asked.surfaceToSubjectM;
        const bounced = flashFNumberSquared({
          guideNumberM,
          distanceM,
          lossStops: path.lossStops,
          sourceDiameterM,
        });
        const direct = flashFNumberSquared({ guideNumberM, distanceM, lossStops: 0 });
        expect(Math.log2(bounced / direct)).toBeCloseTo(found.againstDirectStops, 9);
        expect(found.againstDirectStops).toBeLessThan(0);
      }),
      { numRuns: 60 },
    );
  });

  test('its source is the lit patch, or a panel smaller than that by its area', () => {
    const path: BouncePath = {
      headToSurfaceM: 1.5,
      surfaceToSubjectM: 3,
      incidenceDeg: 0,
      exitDeg: 0,
      beamDeg: 60,
      reflectance: 0.8,
    };
    expect(bouncedPath(path).sourceDiameterM).toBeCloseTo(1.732, 3);
    // A square metre is a disc of 1.128 m.
    expect(bouncedPath({ ...path, panelSideM: 1 }).sourceDiameterM).toBeCloseTo(1.128, 3);
    expect(bouncedPath({ ...path, panelSideM: 9 }).sourceDiameterM).toBeCloseTo(1.732, 3);
  });

  test('head 1 m from the wall, wall 2 m from the subject: between the path and reflectance terms of the textbook rule (H8)', () => {
    // Against a head straight from 2 m: 1.5 to 3.2 stops for reflectances of 0.8 to 0.25; the rule
    // leaves the spread of the patch out, which a 90° beam makes nearly nothing of.
    for (const [reflectance, stops] of [
      [0.8, 1.5],
      [0.25, 3.2],
    ] as const) {
      const found = bounce({
        headToSurfaceM: 1,
        surfaceToSubjectM: 2,
        incidenceDeg: 0,
        exitDeg: 0,
        beamDeg: 90,
        reflectance,
      });
      // BOUNCE_SPREAD_STOPS: what textbooks and meters differ by.
      expect(Math.abs(-found.againstDirectStops - stops)).toBeLessThan(0.6);
    }
  });
});

test('a feathered light loses on the forward path what it loses in stops', () => {
  const drawn = fc.record({
    offAxisDeg: span(0, 80),
    diffuse: fc.boolean(),
    coreDeg: fc.option(span(10, 170), { nil: null }),
    distanceM: span(0.5, 10),
    radiusM: span(0, 0.8),
  });
  fc.assert(
    fc.property(drawn, ({ offAxisDeg, diffuse, coreDeg, distanceM, radiusM }) => {
      const beam = { diffuse, coreDeg };
      const path: LightPath = { kind: 'feathered', offAxisDeg, beam, lossStops: 0 };
      const source = { distanceM, radiusM };
      const stops = Math.log2(perSquareM(path, source) / perSquareM(undefined, source));
      expect(stops).toBeCloseTo(offAxisStops(beam, offAxisDeg), 6);
    }),
  );
});

test('straight ahead it is 1/(d² + r²)', () => {
  expect(perSquareM(undefined, { distanceM: 3, radiusM: 0.5 })).toBeCloseTo(1 / 9.25, 12);
});
