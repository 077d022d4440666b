import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyFix } from '../../../src/core/strobe/apply-fix.ts';
import { judgeRecipe } from '../../../src/core/strobe/judge-recipe.ts';
import type { Fix, FixKind, RecipeInput, RecipeProblem } from '../../../src/core/strobe/recipe.ts';
import { solveRecipe } from '../../../src/core/strobe/solve-recipe.ts';
import { plainLight, plainSetup, withSkyEv } from '../../support/plain-setup.ts';
import { recipeInputs } from '../../support/recipe-arbitrary.ts';

const problemFor = (input: RecipeInput): RecipeProblem | null => {
  const solved = solveRecipe(input);
  return solved.ok ? null : solved.problem;
};

const lastPart = (fix: Fix): Fix => fix.parts?.[fix.parts.length - 1] ?? fix;

/** The same change, a tenth less of it; null where it comes in whole pieces. */
const tenthWeaker = (input: RecipeInput, fix: Fix): Fix | null => {
  switch (fix.kind) {
    case 'distance': {
      const now = input.lights[fix.lights?.[0] ?? -1]?.distanceM ?? Number.NaN;
      return { ...fix, value: fix.value < now ? fix.value * 1.1 : fix.value * 0.9 };
    }
    case 'hold':
      return {
        ...fix,
        value:
          fix.value -
          0.1 * (fix.value - input.hold.stops) +
          (fix.value < input.hold.stops ? 0.1 : -0.1),
      };
    case 'unlit-under':
      return { ...fix, value: fix.value + 0.1 };
    case 'shade':
      return { ...fix, value: fix.value - 0.1 };
    default:
      return null;
  }
};

describe('a fix fixes', { timeout: 60_000 }, () => {
  const seen = new Map<FixKind, number>();
  const offered = (check: (input: RecipeInput, problem: RecipeProblem, fix: Fix) => void): void => {
    fc.assert(
      fc.property(recipeInputs(), (input) => {
        const problem = problemFor(input);
        for (const fix of problem?.fixes ?? []) {
          seen.set(fix.kind, (seen.get(fix.kind) ?? 0) + 1);
          if (problem !== null) check(input, problem, fix);
        }
      }),
      { numRuns: 300, seed: 12 },
    );
  };

  test('each offered fix, applied and solved again, gives a recipe', () => {
    offered((input, _, fix) => {
      expect(solveRecipe(applyFix(input, fix)).ok).toBe(true);
    });
    for (const kind of [
      'distance',
      'second-head',
      'sync-shutter',
      'hold',
      'shade',
      'unlit-under',
      'slower-shutter',
      'head-nd',
      'pair',
    ] as const)
      expect(seen.get(kind) ?? 0, `${kind} was offered`).toBeGreaterThan(0);
  });

  test('for a sky above the reach it leaves 0 to 0.2 stop in hand', () => {
    offered((input, problem, fix) => {
      const last = lastPart(fix).kind;
      if (problem.kind !== 'sky-above-reach' || (last !== 'distance' && last !== 'hold')) return;
      const before = fix.parts?.[0] === undefined ? input : applyFix(input, fix.parts[0]);
      if (judgeRecipe(before).verdict !== 'sky-above-reach') return;
      const { inHandStops } = judgeRecipe(applyFix(input, fix));
      expect(inHandStops).toBeGreaterThanOrEqual(-1e-6);
      expect(inHandStops).toBeLessThanOrEqual(0.2);
    });
  });

  test('ten per cent weaker it does not', () => {
    offered((input, problem, fix) => {
      // Under a problem of dials alone the landing tolerance forgives a tenth.
      if (fix.kind === 'pair' || problem.kind === 'no-setting') return;
      const weaker = tenthWeaker(input, fix);
      if (weaker === null) return;
      expect(judgeRecipe(applyFix(input, weaker)).verdict).toBe(problem.kind);
    });
  });

  test('a second head is the smallest number that works, a faster sync the slowest', () => {
    offered((input, problem, fix) => {
      if (fix.kind !== 'second-head' && fix.kind !== 'sync-shutter') return;
      const less =
        fix.kind === 'second-head'
          ? { ...fix, value: fix.value - 1 }
          : { ...fix, value: fix.value * 2 ** (1 / 3) };
      // One click slower is the same dial name as now: 1/128 for a stated 1/125.
      if (fix.kind === 'sync-shutter' && less.value > input.camera.syncShutterS * 0.9) return;
      expect(judgeRecipe(applyFix(input, less)).verdict).toBe(problem.kind);
    });
  });

  test('two pairs are never the same two changes in the other order', () => {
    offered((_, problem) => {
      const pairs = problem.fixes.flatMap(({ parts }) => (parts === undefined ? [] : [parts]));
      const changes = pairs.map((parts) =>
        parts
          .map(({ kind, role, lights }) => JSON.stringify([kind, role, lights]))
          .toSorted((first, second) => (first < second ? -1 : 1))
          .join(),
      );
      expect(new Set(changes).size).toBe(changes.length);
    });
  });

  test('opening up, ISO and ND are never offered for a sky above the reach', () => {
    const allowed: readonly FixKind[] = ['distance', 'second-head', 'sync-shutter', 'hold', 'pair'];
    offered((_, problem, fix) => {
      if (problem.kind === 'sky-above-reach') expect(allowed).toContain(fix.kind);
    });
    // And they would not help: wider, faster film or darker glass leave the verdict as it is.
    const above = withSkyEv(plainSetup, judgeRecipe(plainSetup).reachEv + 1);
    for (const change of [
      { lens: { minFNumber: 0.7, maxFNumber: 90 } },
      { camera: { ...above.camera, baseIso: 25, maxIso: 102400 } },
      { ndStops: [1, 2, 3, 6] },
    ])
      expect(judgeRecipe({ ...above, ...change }).shortByStops).toBeCloseTo(1, 9);
  });
});

describe('the numbers of fixes', () => {
  /** With ND for the bright settings that full power holds. */
  const setup: RecipeInput = { ...plainSetup, ndStops: [2, 3] };
  const reachEv = judgeRecipe(setup).reachEv;

  test('one stop short at 2 m: 1.4 m, two heads, 1/500 and one stop less', () => {
    const problem = problemFor(withSkyEv(setup, reachEv + 0.99));
    const values = new Map(problem?.fixes.map(({ kind, value }) => [kind, value]));
    // Inverse square: 2/√2 = 1.414 m and rounded down; 1/250 · 2^−0.99 in third stops is 1/512.
    expect(values.get('distance')).toBeCloseTo(1.4, 9);
    expect(values.get('second-head')).toBe(2);
    expect(values.get('sync-shutter')).toBeCloseTo(1 / 512, 9);
    expect(values.get('hold')).toBeCloseTo(1, 9);
  });

  test('the lightest change comes first: a step with the stand before new gear', () => {
    const kinds = problemFor(withSkyEv(setup, reachEv + 0.5))?.fixes.map(({ kind }) => kind);
    expect(kinds?.[0]).toBe('distance');
    expect(kinds?.at(-1)).toBe('sync-shutter');
  });

  test('no nearer than half a metre, or than the light allows', () => {
    const short = withSkyEv(setup, reachEv + 2.5);
    expect(problemFor(short)?.fixes.map(({ kind }) => kind)).toContain('distance');
    const blocked = { ...short, lights: [{ ...plainLight, minDistanceM: 1.5 }] };
    expect(problemFor(blocked)?.fixes.map(({ kind }) => kind)).not.toContain('distance');
  });

  test('five stops short, hold 0.5: no single change does, two together do', () => {
    const problem = problemFor({
      ...withSkyEv(setup, reachEv + 1.5 + 4.6),
      hold: { stops: 0.5, under: 'patch' },
    });
    expect(problem?.fixes).toHaveLength(2);
    expect(problem?.fixes.every(({ kind }) => kind === 'pair')).toBe(true);
  });

  test('nearer but with no aperture small enough takes an ND as well', () => {
    // One stop over the reach at f/20 is f/28, which this lens does not have.
    const problem = problemFor({ ...withSkyEv(setup, reachEv + 1), ndStops: [] });
    expect(problem?.fixes.map(({ kind }) => kind)).not.toContain('distance');
  });

  test('ambient 0.7 stop too bright on the face: a smaller margin, a darker setting, or shade', () => {
    const problem = problemFor({ ...plainSetup, ambientOnSubjectEv: 12.68 });
    const values = new Map(problem?.fixes.map(({ kind, value }) => [kind, value]));
    expect(values.get('unlit-under')).toBeCloseTo(1.3, 9);
    expect(values.get('shade')).toBeCloseTo(0.7, 9);
  });

  test('coarse heads that cannot land together are moved a little', () => {
    const light = { ...plainLight, guideNumberM: 30, stepStops: 1 };
    const input: RecipeInput = {
      ...plainSetup,
      lights: [light, { ...light, role: 'rim', stops: 0.5 }],
    };
    const problem = problemFor(input);
    expect(problem?.kind).toBe('no-setting');
    expect(problem?.fixes[0]?.kind).toBe('distance');
    expect(Math.abs((problem?.fixes[0]?.value ?? 9) - 2)).toBeLessThan(0.35);
  });
});
