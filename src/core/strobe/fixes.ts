import { applyFix } from './apply-fix.ts';
import { attemptRecipe, type UnfixedProblem } from './attempt-recipe.ts';
import {
  darkerHoldFix,
  fasterSyncFix,
  lighterHoldFix,
  marginFix,
  missingNdFix,
  shadeFix,
  slowerShutterFix,
  unpinFixes,
} from './camera-fixes.ts';
import { fixPairs, smallSteps, withoutRepeats } from './fix-pairs.ts';
import { fixWeight } from './fix-weight.ts';
import {
  closerFix,
  furtherFix,
  headNdFix,
  headsFix,
  leaveOutFix,
  trimDistanceFix,
} from './light-fixes.ts';
import type { Fix, RecipeInput } from './recipe.ts';

/**
 * What would end a problem, each solved again before it is offered, the lightest first: every
 * single change that does, or, when none does, the two lightest pairs. Opening up, ISO and ND
 * change sky and flash alike and so are never fixes for a sky above the reach.
 */
export const fixesFor = (input: RecipeInput, problem: UnfixedProblem): readonly Fix[] => {
  const steps = possibleFixes(input, problem);
  const single = steps.filter((fix) => attemptRecipe(applyFix(input, fix)).ok);
  if (single.length > 0) return lightestFirst(input, single);
  const pairs = fixPairs(input, [...steps, ...smallSteps(input, problem)], possibleFixes);
  return withoutRepeats(lightestFirst(input, pairs)).slice(0, 2);
};

/** One change of each kind, as far as it goes; some may not be enough alone. */
const possibleFixes = (input: RecipeInput, problem: UnfixedProblem): readonly Fix[] => {
  const own = (): readonly (Fix | null)[] => {
    switch (problem.kind) {
      case 'sky-above-reach':
        return [
          closerFix(input, problem),
          headsFix(input, problem),
          fasterSyncFix(input),
          lighterHoldFix(input, problem),
        ];
      case 'ambient-lights-the-face':
        return [marginFix(input, problem), darkerHoldFix(input, problem), shadeFix(problem)];
      case 'head-too-strong':
        return [
          furtherFix(input, problem),
          headNdFix(input, problem),
          slowerShutterFix(input),
          darkerHoldFix(input, problem),
          leaveOutFix(problem),
        ];
      case 'no-setting':
        return problem.shortByStops > 0
          ? [
              slowerShutterFix(input),
              problem.limit === 'too-dark' ? null : missingNdFix(input),
              problem.limit === 'too-bright' ? null : darkerHoldFix(input, problem),
            ]
          : [trimDistanceFix(input)];
      case 'bad-input':
        return [];
    }
  };
  return [...unpinFixes(input, problem), ...own().filter((fix) => fix !== null)];
};

const lightestFirst = (input: RecipeInput, fixes: readonly Fix[]): readonly Fix[] =>
  fixes.toSorted((first, second) => fixWeight(input, first) - fixWeight(input, second));
