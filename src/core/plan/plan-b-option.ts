import { produce } from 'immer';

import { attemptRecipe, type UnfixedProblem } from '../strobe/attempt-recipe.ts';
import { checkRecipe } from '../strobe/check-recipe.ts';
import { judgeRecipe } from '../strobe/judge-recipe.ts';
import type { Recipe, RecipeInput } from '../strobe/recipe.ts';
import { fail, ok, type Result } from '../units/result.ts';
import { changedCase } from './changed-case.ts';
import { editLight } from './edits.ts';
import { setupCase, type SetupCase, type SetupCaseInput } from './setup-case.ts';
import type { SetupChange } from './setup-fix.ts';

/** Another head of the kit on a light, modifier and place as they are. */
export type HeadSwap = {
  readonly kind: 'swap-head';
  readonly lightId: string;
  readonly headId: string;
};

export type PlanBChange = SetupChange | HeadSwap;

/** A way to go on, solved again; none to change: as it stands. */
export type PlanBOption = {
  readonly changes: readonly PlanBChange[];
  /** A recipe that was run forward and lands, or what stands in the way. */
  readonly answer: Result<Recipe, UnfixedProblem>;
  /** Below 0: short by so much. */
  readonly inHandStops: number;
};

/** The setup with changes made, in the light of `base`; null when nothing can be asked then. */
export function changedOption(
  asked: SetupCaseInput,
  base: SetupCase,
  changes: readonly PlanBChange[],
): PlanBOption | null {
  const swaps = changes.filter((change) => change.kind === 'swap-head');
  const others = changes.filter((change): change is SetupChange => change.kind !== 'swap-head');
  const shoot = produce(asked.shoot, (draft) => {
    for (const { lightId, headId } of swaps) editLight(asked.setupId, lightId, { headId })(draft);
  });
  const now = { ...asked, shoot };
  const swapped = swaps.length === 0 ? ok(base) : setupCase(now, base.light);
  if (!swapped.ok) return null;
  const input =
    others.length === 0
      ? swapped.value.input
      : (changedCase(now, swapped.value, others)?.input ?? null);
  return input === null ? null : { changes, ...answerOf(input) };
}

function answerOf(input: RecipeInput): Pick<PlanBOption, 'answer' | 'inHandStops'> {
  const { inHandStops } = judgeRecipe(input);
  const answer = attemptRecipe(input);
  return answer.ok && !checkRecipe(input, answer.value).lands
    ? { answer: fail({ kind: 'no-setting', shortByStops: 0, limit: 'between' }), inHandStops }
    : { answer, inHandStops };
}

/** What works first, then what leaves the most lights, then what changes the least; else as given. */
export const sorted = (options: readonly PlanBOption[]): readonly PlanBOption[] =>
  options.toSorted(
    (first, second) =>
      Number(second.answer.ok) - Number(first.answer.ok) ||
      lightsLost(first) - lightsLost(second) ||
      first.changes.length - second.changes.length,
  );

const lightsLost = ({ changes }: PlanBOption): number =>
  changes.reduce(
    (sum, change) => sum + (change.kind === 'leave-out' ? change.lightIds.length : 0),
    0,
  );
