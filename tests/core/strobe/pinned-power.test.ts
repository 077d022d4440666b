import fc from 'fast-check';
import { expect, test } from 'vitest';

import { checkRecipe } from '../../../src/core/strobe/check-recipe.ts';
import type { RecipeInput } from '../../../src/core/strobe/recipe.ts';
import { solveRecipe } from '../../../src/core/strobe/solve-recipe.ts';

const inputAt = (skyEv: number, distanceM: number, stepStops: number): RecipeInput => ({
  sky: { patchEv: skyEv, meanEv: skyEv },
  ambientOnSubjectEv: skyEv - 5,
  incidentEv: skyEv - 4,
  hold: { stops: 1.3, under: 'patch' },
  unlitUnderStops: 2,
  lights: [
    {
      role: 'key',
      stops: 0,
      guideNumberM: 64,
      distanceM,
      lossStops: 0.4,
      minPowerStops: -8,
      stepStops,
    },
  ],
  camera: { syncShutterS: 1 / 250, slowestShutterS: 1 / 60, baseIso: 100, maxIso: 6400 },
  lens: { minFNumber: 2.8, maxFNumber: 22 },
  ndStops: [2, 3],
});

// A law: what the tool itself has just shown must not stop working by being kept.
test('a power pinned as the recipe shows it still gives a recipe, and that one lands', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 6, max: 16, noNaN: true }),
      fc.double({ min: 0.8, max: 6, noNaN: true }),
      fc.constantFrom(0.1, 1 / 3),
      (skyEv, distanceM, stepStops) => {
        const input = inputAt(skyEv, distanceM, stepStops);
        const free = solveRecipe(input);
        fc.pre(free.ok);
        if (!free.ok) return;
        const powerStops = free.value.lights.map((light) => light.powerStops);
        const pinned = { ...input, pins: { powerStops } };
        const kept = solveRecipe(pinned);
        expect(kept.ok).toBe(true);
        if (kept.ok) expect(checkRecipe(pinned, kept.value).lands).toBe(true);
      },
    ),
    { numRuns: 500, seed: 14052027 },
  );
});
