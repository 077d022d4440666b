import { attemptRecipe, type UnfixedProblem } from './attempt-recipe.ts';
import { applyFix } from './apply-fix.ts';
import { roundDownTo } from './fix-threshold.ts';
import type { Fix, RecipeInput } from './recipe.ts';

/** Every change of `steps` that is not enough alone, with every second one that then is. */
export const fixPairs = (
  input: RecipeInput,
  steps: readonly Fix[],
  possibleFixes: (input: RecipeInput, problem: UnfixedProblem) => readonly Fix[],
): readonly Fix[] => {
  const found: Fix[] = [];
  for (const first of steps) {
    const after = applyFix(input, first);
    const attempt = attemptRecipe(after);
    if (attempt.ok) continue;
    for (const second of possibleFixes(after, attempt.problem)) {
      if (isSameChange(first, second) || !attemptRecipe(applyFix(after, second)).ok) continue;
      found.push({ kind: 'pair', value: 2, unit: 'fixes', parts: [first, second] });
    }
  }
  return found;
};

const isSameChange = (first: Fix, second: Fix): boolean =>
  first.kind === second.kind && first.lights?.[0] === second.lights?.[0];

/** The first of every pair that changes the same two things, in whichever order and by how much. */
export const withoutRepeats = (pairs: readonly Fix[]): readonly Fix[] => {
  const seen = new Set<string>();
  return pairs.filter((pair) => {
    const changes = (pair.parts ?? [])
      .map(({ kind, lights }) => `${kind} ${lights?.[0] ?? ''}`)
      .toSorted((first, second) => first.localeCompare(second))
      .join();
    if (seen.has(changes)) return false;
    seen.add(changes);
    return true;
  });
};

/** Small first halves of a pair for a sky above the reach: one head more, one stop of sync, one of hold. */
export const smallSteps = (input: RecipeInput, problem: UnfixedProblem): readonly Fix[] => {
  if (problem.kind !== 'sky-above-reach') return [];
  const steps: Fix[] = [];
  const index = problem.lights?.[0];
  const light = input.lights[index ?? -1];
  if (index !== undefined && light !== undefined)
    steps.push({
      kind: 'second-head',
      value: (light.heads ?? 1) + 1,
      unit: 'heads',
      role: light.role,
      lights: [index],
    });
  const syncClicks = Math.ceil(-Math.log2(input.camera.syncShutterS) * 3 - 0.5) + 3;
  if (input.pins?.shutterS === undefined && syncClicks <= 33)
    steps.push({ kind: 'sync-shutter', value: 2 ** (-syncClicks / 3), unit: 's' });
  if (input.hold.stops > 1)
    steps.push({ kind: 'hold', value: roundDownTo(input.hold.stops - 1, 0.1), unit: 'stops' });
  return steps;
};
