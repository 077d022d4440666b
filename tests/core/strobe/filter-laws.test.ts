import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { ndChoices } from '../../../src/core/exposure/nd-choices.ts';
import { checkRecipe } from '../../../src/core/strobe/check-recipe.ts';
import { judgeRecipe } from '../../../src/core/strobe/judge-recipe.ts';
import type { Recipe, RecipeInput } from '../../../src/core/strobe/recipe.ts';
import { runForward } from '../../../src/core/strobe/run-forward.ts';
import { solveRecipe } from '../../../src/core/strobe/solve-recipe.ts';
import { plainSetup } from '../../support/plain-setup.ts';
import { recipeInputs } from '../../support/recipe-arbitrary.ts';

const span = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });

type Stack = {
  readonly owned: readonly {
    readonly fromStops: number;
    readonly turn: number;
    readonly ringMm: number;
  }[];
  readonly mostMm: number;
  readonly otherFilterStops: number;
  readonly skyFilterStops: { readonly patch: number; readonly frame: number };
};

/** What may stand before a lens: up to five ND, some of them variable, and what parts the sky. */
const stacks: fc.Arbitrary<Stack> = fc.record({
  owned: fc.array(
    fc.record({ fromStops: span(0.5, 4), turn: fc.constantFrom(0, 0, 3), ringMm: span(3, 7) }),
    { maxLength: 5 },
  ),
  mostMm: span(5, 25),
  otherFilterStops: span(0, 3),
  skyFilterStops: fc.record({ patch: span(-0.8, 3), frame: span(-0.8, 3) }),
});

const behind = (input: RecipeInput, stack: Stack): RecipeInput => {
  const owned = stack.owned.map(({ fromStops, turn, ringMm }) => ({
    fromStops,
    toStops: fromStops + turn,
    ringMm,
  }));
  return {
    ...input,
    ndStops: owned.map(({ fromStops }) => fromStops),
    ndStacks: ndChoices(owned, { mostFilters: 4, mostMm: stack.mostMm }),
    otherFilterStops: stack.otherFilterStops,
    skyFilterStops: stack.skyFilterStops,
  };
};

const recipeOf = (input: RecipeInput): Recipe => {
  const solved = solveRecipe(input);
  if (!solved.ok) throw new Error(`expected a recipe, found ${JSON.stringify(solved.problem)}`);
  return solved.value;
};

describe('recipes behind random stacks', () => {
  test('land by the second path, sky and every light', () => {
    let solvedCount = 0;
    fc.assert(
      fc.property(recipeInputs(), stacks, (drawn, stack) => {
        const input = behind(drawn, stack);
        const solved = solveRecipe(input);
        if (!solved.ok) return;
        solvedCount += 1;
        const { value } = solved;
        expect(checkRecipe(input, value).lands).toBe(true);
        const landing = runForward(input, value);
        expect(landing.patchStops).toBeCloseTo(value.patchStops, 6);
        expect(landing.frameStops).toBeCloseTo(value.frameStops, 6);
        expect(input.ndStacks?.map(({ stops }) => stops)).toContain(value.ndStops);
      }),
      { numRuns: 150 },
    );
    expect(solvedCount).toBeGreaterThan(20);
  });

  test('what is in hand does not depend on what flash and ambient lose alike', () =>
    fc.assert(
      fc.property(recipeInputs(), stacks, (drawn, stack) => {
        const { otherFilterStops: _, ...bare } = drawn;
        const one = judgeRecipe({ ...bare, otherFilterStops: stack.otherFilterStops });
        expect(one.inHandStops).toBeCloseTo(judgeRecipe(bare).inHandStops, 9);
      }),
    ));

  test('what the sky alone loses is as good as a sky so much darker, and the reach says which sky that is', () =>
    fc.assert(
      fc.property(recipeInputs(), span(-0.8, 3), (input, stops) => {
        const filtered = judgeRecipe({ ...input, skyFilterStops: { patch: stops, frame: stops } });
        const darker = judgeRecipe({
          ...input,
          sky: { patchEv: (input.sky.patchEv ?? NaN) - stops, meanEv: input.sky.meanEv - stops },
        });
        expect(filtered.verdict).toBe(darker.verdict);
        expect(filtered.inHandStops).toBeCloseTo(darker.inHandStops, 9);
        expect(filtered.reachEv).toBeCloseTo(darker.reachEv + stops, 9);
      }),
    ));
});

describe('the forward path through a stack, worked out by hand', () => {
  const settings = {
    shutterS: 1 / 250,
    fNumber: 4,
    iso: 100,
    ndStops: 2,
    lights: [],
  };

  test('luminance 1000 cd/m² behind ND 0.6, a colour filter of factor 2 and a graduated stop', () => {
    // N²/t = L S/K: L/16 · 100 / 250 / (12.5 · 16) = 0.125 → −3 stops, ISO 2720 with K 12.5.
    const landing = runForward(
      {
        ...plainSetup,
        sky: { patchEv: Math.log2(8 * 1000), meanEv: Math.log2(8 * 1000) },
        otherFilterStops: 1,
        skyFilterStops: { patch: 1, frame: 0 },
      },
      settings,
    );
    expect(landing.patchStops).toBeCloseTo(-3, 9);
    expect(landing.frameStops).toBeCloseTo(-2, 9);
  });
});

describe('filters in a recipe', () => {
  const sunny: RecipeInput = {
    ...plainSetup,
    sky: { patchEv: 14, meanEv: 14 },
    hold: { stops: 1, under: 'patch' },
    lights: plainSetup.lights.map((light) => ({ ...light, guideNumberM: 110 })),
    wish: { fNumber: 2.8 },
  };

  test('a variable one that is pinned is turned to what the wished aperture takes', () => {
    // 1/250 f/2.8 ISO 100 is EV 11; the sky of EV 14, one under, wants EV 15: 4 stops.
    const recipe = recipeOf({ ...sunny, pins: { ndStops: 2, ndUpToStops: 5 } });
    expect(recipe.fNumber).toBeCloseTo(2.8, 1);
    expect(Math.abs(recipe.ndStops - 4)).toBeLessThan(0.2);
  });

  test('a graduated stop on the sky alone saves the flash a stop', () => {
    const plain = recipeOf(sunny);
    const graduated = recipeOf({ ...sunny, skyFilterStops: { patch: 1, frame: 1 } });
    expect(graduated.inHandStops - plain.inHandStops).toBeCloseTo(1, 9);
    expect(graduated.skyStops).toBeCloseTo(plain.skyStops, 1);
  });

  test('a pinned stack no exposure opens is a problem with its pin named', () => {
    const solved = solveRecipe({ ...sunny, pins: { ndStops: 20 } });
    if (solved.ok) throw new Error('expected a problem');
    expect(solved.problem).toMatchObject({ kind: 'no-setting', limit: 'too-dark' });
    expect(solved.problem.fixes.map(({ kind }) => kind)).toContain('unpin-nd');
    // 1/30, f/1.4, ISO 6400 behind 20 stops is EV 4.9 + 1 − 6 + 20 = 19.9; EV 15 is wanted.
    expect(Math.abs(solved.problem.shortByStops - 4.9)).toBeLessThan(0.1);
  });

  test('a wanted part of the sky that is no number is said', () => {
    const solved = solveRecipe({ ...sunny, skyFilterStops: { patch: NaN, frame: 0 } });
    expect(solved.ok ? [] : solved.problem.sentences).toEqual([
      expect.stringContaining('skyFilterStops.patch'),
    ]);
  });
});
