import type { RecipeInput, RecipeLight } from '../../src/core/strobe/recipe.ts';

/** One bare key at 2 m, GN 40, no ambient, no filters: the plainest question there is. */
export const plainLight: RecipeLight = {
  role: 'key',
  stops: 0,
  guideNumberM: 40,
  distanceM: 2,
  lossStops: 0,
  minPowerStops: -8,
  stepStops: 0.1,
};

export const plainSetup: RecipeInput = {
  sky: { patchEv: 12, meanEv: 12 },
  ambientOnSubjectEv: Number.NEGATIVE_INFINITY,
  incidentEv: 9,
  hold: { stops: 2, under: 'patch' },
  unlitUnderStops: 2,
  lights: [plainLight],
  camera: { syncShutterS: 1 / 250, slowestShutterS: 1 / 30, baseIso: 100, maxIso: 6400 },
  lens: { minFNumber: 1.4, maxFNumber: 22 },
  ndStops: [],
};

export const withSkyEv = (input: RecipeInput, skyEv: number): RecipeInput => ({
  ...input,
  sky: { patchEv: skyEv, meanEv: skyEv },
});
