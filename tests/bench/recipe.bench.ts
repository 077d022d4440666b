import { attemptRecipe } from '../../src/core/strobe/attempt-recipe.ts';
import { judgeRecipe } from '../../src/core/strobe/judge-recipe.ts';
import type { RecipeInput } from '../../src/core/strobe/recipe.ts';
import { solveRecipe } from '../../src/core/strobe/solve-recipe.ts';
import { plainLight, plainSetup, withSkyEv } from '../support/plain-setup.ts';
import type { Bench } from './bench.ts';

const RUNS = 20;
const ROUNDS = 20;

/** Key, fill and rim with three ND filters, sixty skies a tenth of a stop apart. */
const questions = (): readonly RecipeInput[] => {
  const setup: RecipeInput = {
    ...plainSetup,
    lights: [
      { ...plainLight, guideNumberM: 66, lossStops: 1.5, sourceDiameterM: 0.8 },
      {
        ...plainLight,
        role: 'fill',
        stops: -1.6,
        guideNumberM: 66,
        distanceM: 3.5,
        lossStops: 1.5,
      },
      { ...plainLight, role: 'rim', stops: 0.3, distanceM: 3, stepStops: 1 / 3 },
    ],
    ndStops: [1, 2, 3],
  };
  return Array.from({ length: 60 }, (_, step) => withSkyEv(setup, 7 + step / 10));
};

const medianMicroseconds = (
  inputs: readonly RecipeInput[],
  work: (input: RecipeInput) => unknown,
): number => {
  const times = Array.from({ length: RUNS + 5 }, () => {
    const startMs = performance.now();
    for (let round = 0; round < ROUNDS; round += 1) inputs.forEach((input) => work(input));
    return ((performance.now() - startMs) * 1000) / (ROUNDS * inputs.length);
  }).slice(5);
  return times.toSorted((first, second) => first - second)[RUNS / 2] ?? Number.NaN;
};

export const benches: readonly Bench[] = [
  {
    name: 'recipe',
    run: async () => {
      const solvable = questions().filter((input) => attemptRecipe(input).ok);
      const solveUs = medianMicroseconds(solvable, solveRecipe);
      const judgeUs = medianMicroseconds(solvable, judgeRecipe);
      return [
        { figure: 'one recipe', value: solveUs, unit: 'µs', target: 40, ok: solveUs < 40 },
        {
          figure: 'judgements in the time of one recipe',
          value: solveUs / judgeUs,
          unit: '×',
          target: 3,
          ok: solveUs / judgeUs >= 3,
        },
      ];
    },
  },
];
