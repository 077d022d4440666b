import fc from 'fast-check';

import type { RecipeInput, RecipeLight } from '../../src/core/strobe/recipe.ts';

const span = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

const light = (
  role: RecipeLight['role'],
  stops: fc.Arbitrary<number>,
  stepStops: fc.Arbitrary<number>,
): fc.Arbitrary<RecipeLight> =>
  fc
    .record({
      role: fc.constant(role),
      stops,
      guideNumberM: span(20, 110),
      distanceM: span(1, 6),
      lossStops: span(-1, 3),
      sourceDiameterM: fc.option(span(0.1, 1.8), { nil: undefined }),
      minPowerStops: fc.constantFrom(-5, -7, -8, -9),
      stepStops,
      flashDurationS: fc.option(span(1 / 2000, 1 / 120), { nil: undefined }),
      // A tail cut short, or a voltage lowered: never shorter faster than the light gets less.
      lowestOverFull: fc.option(span(0.05, 2.5), { nil: null }),
    })
    .map(({ lowestOverFull, ...drawn }): RecipeLight =>
      drawn.flashDurationS === undefined || lowestOverFull === null
        ? drawn
        : { ...drawn, flashDurationLowestS: drawn.flashDurationS * lowestOverFull },
    );

/** Setups as they are carried: a key, often a fill, a rim, a background; sky from noon to dusk. */
export const recipeInputs = (
  stepStops: fc.Arbitrary<number> = fc.constantFrom(0.1, 1 / 3),
): fc.Arbitrary<RecipeInput> =>
  fc
    .record({
      meanEv: span(7, 16),
      patchOverMean: span(-1.5, 1.5),
      incidentUnderMean: span(0, 5),
      ambientUnderMean: fc.oneof(span(1, 7), fc.constant(Number.POSITIVE_INFINITY)),
      holdStops: span(0.5, 3.5),
      under: fc.constantFrom('patch' as const, 'frame' as const),
      unlitUnderStops: span(1, 3),
      key: light('key', fc.constantFrom(0, 0.3, -0.3), stepStops),
      fill: fc.option(light('fill', span(-2.5, -1), stepStops), { nil: null }),
      rim: fc.option(light('rim', span(-1, 1), stepStops), { nil: null }),
      background: fc.option(light('background', span(-2, 0), stepStops), { nil: null }),
      syncShutterS: fc.constantFrom(1 / 125, 1 / 160, 1 / 180, 1 / 200, 1 / 250, 1 / 500),
      slowestShutterS: fc.constantFrom(1 / 60, 1 / 30, 1 / 8, 1),
      baseIso: fc.constantFrom(64, 100, 200),
      maxIso: fc.constantFrom(1600, 6400),
      step: fc.constantFrom('third' as const, 'half' as const),
      highSpeedSync: fc.constantFrom('none' as const, 'when pinned' as const, 'free' as const),
      hssLossStops: fc.option(span(1.5, 2.3), { nil: undefined }),
      otherFilterStops: fc.constantFrom(undefined, 1.5),
      minFNumber: fc.constantFrom(1.4, 1.8, 2.8, 4),
      maxFNumber: fc.constantFrom(16, 22),
      ndStops: fc.constantFrom([], [2.99], [0.997, 1.993, 2.99], [2, 3, 6]),
      wishFNumber: fc.constantFrom(null, 2, 4, 8, 11),
    })
    .map((drawn): RecipeInput => ({
      sky: { patchEv: drawn.meanEv + drawn.patchOverMean, meanEv: drawn.meanEv },
      ambientOnSubjectEv: drawn.meanEv - drawn.ambientUnderMean,
      incidentEv: drawn.meanEv - drawn.incidentUnderMean,
      hold: { stops: drawn.holdStops, under: drawn.under },
      unlitUnderStops: drawn.unlitUnderStops,
      lights: [drawn.key, drawn.fill, drawn.rim, drawn.background].filter((one) => one !== null),
      camera: {
        syncShutterS: drawn.syncShutterS,
        slowestShutterS: drawn.slowestShutterS,
        baseIso: drawn.baseIso,
        maxIso: drawn.maxIso,
        step: drawn.step,
        ...(drawn.highSpeedSync === 'none' ? {} : { fastestShutterS: 1 / 8000 }),
        allowHss: drawn.highSpeedSync === 'free',
        hssLossStops: drawn.hssLossStops,
      },
      otherFilterStops: drawn.otherFilterStops,
      lens: { minFNumber: drawn.minFNumber, maxFNumber: drawn.maxFNumber },
      ndStops: drawn.ndStops,
      ...(drawn.wishFNumber === null ? {} : { wish: { fNumber: drawn.wishFNumber } }),
    }));

const pinnedShutterS = fc.constantFrom(1 / 60, 1 / 125, 1 / 250, 1 / 512, 1 / 1000, 1 / 2048);
const pinnedIso = fc.constantFrom(100, 200, 400);

/** The same with a value or two decided by hand. */
export const pinnedRecipeInputs = (): fc.Arbitrary<RecipeInput> =>
  fc
    .tuple(
      recipeInputs(),
      fc.oneof(
        fc.record({ shutterS: pinnedShutterS }),
        fc.record({ shutterS: pinnedShutterS, iso: pinnedIso }),
        fc.record({ fNumber: fc.constantFrom(2.8, 4, 5.6, 8, 11) }),
        fc.record({ iso: pinnedIso, ndStops: fc.constantFrom(0, 2, 3) }),
        fc.record({ powerStops: fc.constantFrom([-1], [-2], [-3, null], [null, -2]) }),
      ),
    )
    .map(([input, pins]) => ({ ...input, pins }));
