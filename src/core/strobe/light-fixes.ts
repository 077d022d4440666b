import { applyFix } from './apply-fix.ts';
import { attemptRecipe, type UnfixedProblem } from './attempt-recipe.ts';
import { ceilingEv } from './ceilings.ts';
import { fixThreshold, roundDownTo, roundUpTo } from './fix-threshold.ts';
import { judgeRecipe } from './judge-recipe.ts';
import { fastestShutter, recipeCase } from './recipe-case.ts';
import type { Fix, RecipeInput } from './recipe.ts';

/** Nearer than this a head is in the frame or in the subject's eyes, common practice. [lightingPractice] */
const NEAREST_M = 0.5;
const FARTHEST_FACTOR = 12;
/** More heads than this in one place is no longer one change. */
const MOST_HEADS = 4;

const distanceStepM = (distanceM: number): number => (distanceM < 0.75 ? 0.01 : 0.05);

const distanceFix = (problem: UnfixedProblem, value: number): Fix => ({
  kind: 'distance',
  value,
  unit: 'm',
  role: problem.role,
  lights: problem.lights,
});

const distancesM = (input: RecipeInput, problem: UnfixedProblem): readonly number[] =>
  (problem.lights ?? []).map((index) => input.lights[index]?.distanceM ?? Number.NaN);

/** The named side reaches the wanted sky by itself, whatever the other sides do. */
const sideReaches = (input: RecipeInput, problem: UnfixedProblem): boolean => {
  const question = recipeCase(input);
  const side = question.sides.all.find(({ lights }) => lights[0] === problem.lights?.[0]);
  if (side === undefined) return false;
  const ceiling = ceilingEv(input, question.sides, side, fastestShutter(question));
  return ceiling >= question.wantedEv;
};

/**
 * How near the side that runs out must come to reach, rounded down so that it does; as near as it
 * may when even that is too little.
 */
export const closerFix = (input: RecipeInput, problem: UnfixedProblem): Fix | null => {
  const farM = Math.max(...distancesM(input, problem));
  const nearM = Math.max(
    ...(problem.lights ?? []).map((index) => input.lights[index]?.minDistanceM ?? NEAREST_M),
  );
  if (!(nearM < farM)) return null;
  const reachesAt = fixThreshold({ failsAt: farM, worksAt: nearM }, (distanceM) =>
    sideReaches(applyFix(input, distanceFix(problem, distanceM)), problem),
  );
  if (reachesAt === null) return distanceFix(problem, nearM);
  return distanceFix(problem, Math.max(nearM, roundDownTo(reachesAt, distanceStepM(reachesAt))));
};

/** How far back a side must go whose heads are too strong at their lowest power. */
export const furtherFix = (input: RecipeInput, problem: UnfixedProblem): Fix | null => {
  const nowM = Math.min(...distancesM(input, problem));
  const fitsAt = fixThreshold({ failsAt: nowM, worksAt: nowM * FARTHEST_FACTOR }, (distanceM) => {
    const judged = judgeRecipe(applyFix(input, distanceFix(problem, distanceM)));
    return judged.verdict !== 'head-too-strong' || judged.side?.lights[0] !== problem.lights?.[0];
  });
  return fitsAt === null ? null : distanceFix(problem, roundUpTo(fitsAt, distanceStepM(fitsAt)));
};

/** Densest gel or cloth that is usual before a head. [lightingPractice] */
const DENSEST_HEAD_ND_STOPS = 4;

/** ND gel or diffuser before the heads of a side that are too strong, the fewest whole stops. */
export const headNdFix = (input: RecipeInput, problem: UnfixedProblem): Fix | null => {
  for (let value = 1; value <= DENSEST_HEAD_ND_STOPS; value += 1) {
    const fix: Fix = {
      kind: 'head-nd',
      value,
      unit: 'stops',
      role: problem.role,
      lights: problem.lights,
    };
    const judged = judgeRecipe(applyFix(input, fix));
    if (judged.verdict !== 'head-too-strong' || judged.side?.lights[0] !== problem.lights?.[0])
      return fix;
  }
  return null;
};

/** The fewest equal heads in the place of one with which the side reaches. */
export const headsFix = (input: RecipeInput, problem: UnfixedProblem): Fix | null => {
  const [index] = problem.lights ?? [];
  if (index === undefined) return null;
  const now = input.lights[index]?.heads ?? 1;
  for (let heads = now + 1; heads <= Math.max(MOST_HEADS, now + 1); heads += 1) {
    const fix: Fix = {
      kind: 'second-head',
      value: heads,
      unit: 'heads',
      role: problem.role,
      lights: [index],
    };
    if (heads >= MOST_HEADS || sideReaches(applyFix(input, fix), problem)) return fix;
  }
  return null;
};

/** Coarse power dials can miss together: the least move of one light that brings them to land. */
export const trimDistanceFix = (input: RecipeInput): Fix | null => {
  for (let steps = 1; steps <= 12; steps += 1) {
    for (const [index, light] of input.lights.entries()) {
      for (const direction of [-1, 1]) {
        const stepM = distanceStepM(light.distanceM);
        const value = roundDownTo(light.distanceM + direction * steps * stepM, stepM);
        if (value < (light.minDistanceM ?? NEAREST_M)) continue;
        const fix: Fix = { kind: 'distance', value, unit: 'm', role: light.role, lights: [index] };
        if (attemptRecipe(applyFix(input, fix)).ok) return fix;
      }
    }
  }
  return null;
};

/** A fill that ambient light makes needless. */
export const leaveOutFix = (problem: UnfixedProblem): Fix | null =>
  problem.role === 'fill' && problem.lights !== undefined
    ? {
        kind: 'leave-out',
        value: problem.lights.length,
        unit: 'lights',
        role: 'fill',
        lights: problem.lights,
      }
    : null;
