import { attemptRecipe, type UnfixedProblem } from '../strobe/attempt-recipe.ts';
import { checkRecipe } from '../strobe/check-recipe.ts';
import { filteredReferences, holdReferenceEv } from '../strobe/hold-reference.ts';
import type { Recipe, RecipeInput } from '../strobe/recipe.ts';
import { civilDateOf, dayOfYear } from '../units/civil-time.ts';
import { fail, ok, type Result } from '../units/result.ts';
import { setupCase, type SetupCase, type SetupCaseInput, type SetupGap } from './setup-case.ts';
import { setupLight, type SetupLight } from './setup-light.ts';
import { recipeInput } from './setup-question.ts';
import { stopCrossings } from './stop-crossings.ts';
import type { StopOrder } from './stop-ladder.ts';
import { stopLine, type StopLineGap, type StopSetting } from './stop-line.ts';

export type StopLine = {
  readonly atMs: number;
  /** Whole stops since the first line: −1 is a stop darker. */
  readonly stops: number;
  /** What the hold is counted from, filters that part the sky taken into account. */
  readonly referenceEv: number;
  readonly setting: Result<StopSetting, StopLineGap>;
};

export type StopTimes = {
  /** The beginning, or the first whole minute after it at which the setup works. */
  readonly fromMs: number;
  readonly referenceEv: number;
  /** What stands on camera and heads then. */
  readonly start: Recipe;
  readonly order: StopOrder;
  readonly lines: readonly StopLine[];
};

export type StopTimesGap =
  | SetupGap
  | { readonly kind: 'no-time' }
  | { readonly kind: 'no-sky' }
  /** At no minute between beginning and end; the problem is that of the beginning. */
  | { readonly kind: 'never-works'; readonly problem: UnfixedProblem };

const MS_PER_MIN = 60_000;

/**
 * The clock times from beginning to end at which the sky's reference in this frame lies a further
 * stop from where it began, and what to change then, each line run forward before it is given.
 */
export function stopTimes(
  asked: SetupCaseInput,
  span: { readonly fromMs: number; readonly toMs: number },
  order: StopOrder,
): Result<StopTimes, StopTimesGap> {
  if (!(span.toMs > span.fromMs)) return fail({ kind: 'no-time' });
  const made = setupCase({ ...asked, instantMs: span.fromMs });
  return made.ok ? stopTimesOf(made.value, span, order) : made;
}

/** The same of a case whose light may have been shifted by readings. */
export function stopTimesOf(
  base: Pick<SetupCase, 'scene' | 'question'>,
  { fromMs, toMs }: { readonly fromMs: number; readonly toMs: number },
  order: StopOrder,
  shift: (light: SetupLight, instantMs: number) => SetupLight = (light) => light,
): Result<StopTimes, StopTimesGap> {
  const light = setupLight(base.scene);
  const inputAt = (instantMs: number): RecipeInput | null => {
    const day = dayOfYear(civilDateOf(instantMs, base.scene.zone));
    return recipeInput(base.question, shift(light({ instantMs, dayOfYear: day }), instantMs));
  };
  const begun = firstThatWorks(inputAt, fromMs, toMs);
  if (!begun.ok) return begun;
  const start = begun.value;
  let before = start.recipe;
  const lines = stopCrossings(
    (instantMs) => {
      const input = inputAt(instantMs);
      return input === null ? Number.NaN : referenceEvOf(input);
    },
    { fromMs: start.atMs, toMs },
  ).flatMap(({ atMs, stops }): StopLine[] => {
    const input = inputAt(atMs);
    if (input === null) return [];
    const setting = stopLine({ start: start.recipe, before, input, stops, order });
    if (setting.ok) before = setting.value.recipe;
    return [{ atMs, stops, referenceEv: referenceEvOf(input), setting }];
  });
  return ok({
    fromMs: start.atMs,
    referenceEv: start.referenceEv,
    start: start.recipe,
    order,
    lines,
  });
}

const referenceEvOf = (input: RecipeInput): number =>
  holdReferenceEv(input.hold.under, filteredReferences(input));

type Begun = { readonly atMs: number; readonly recipe: Recipe; readonly referenceEv: number };

function firstThatWorks(
  inputAt: (instantMs: number) => RecipeInput | null,
  fromMs: number,
  toMs: number,
): Result<Begun, StopTimesGap> {
  let problem: UnfixedProblem | null = null;
  for (let atMs = fromMs; atMs < toMs; atMs = nextWholeMinuteMs(atMs)) {
    const input = inputAt(atMs);
    if (input === null) continue;
    const answer = attemptRecipe(input);
    if (answer.ok && checkRecipe(input, answer.value).lands)
      return ok({ atMs, recipe: answer.value, referenceEv: referenceEvOf(input) });
    if (!answer.ok) problem ??= answer.problem;
  }
  return fail(problem === null ? { kind: 'no-sky' } : { kind: 'never-works', problem });
}

const nextWholeMinuteMs = (ms: number): number => (Math.floor(ms / MS_PER_MIN) + 1) * MS_PER_MIN;
