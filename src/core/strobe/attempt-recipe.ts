import { fail, ok, type Result } from '../units/result.ts';
import { checkRecipeInput } from './check-recipe-input.ts';
import { judgeCase, type Judgement } from './judge-recipe.ts';
import { LANDING_STOPS } from './landing.ts';
import { recipeCase, type RecipeCase } from './recipe-case.ts';
import { recipeFigures } from './recipe-figures.ts';
import type { Recipe, RecipeInput, RecipeProblem } from './recipe.ts';
import { settleDials } from './settle-dials.ts';

export type UnfixedProblem = Omit<RecipeProblem, 'fixes'>;

/** A recipe, or the first rule that breaks, without looking for fixes. */
export const attemptRecipe = (input: RecipeInput): Result<Recipe, UnfixedProblem> => {
  const sentences = checkRecipeInput(input);
  if (sentences.length > 0) return fail({ kind: 'bad-input', shortByStops: Number.NaN, sentences });
  const question = recipeCase(input);
  const judgement = judgeCase(question);
  if (judgement.verdict !== 'works') {
    if (isWithinPinnedDial(question, judgement)) {
      const dials = settleDials(question);
      const inHandStops = Math.max(0, judgement.inHandStops);
      if (dials !== null) return ok(recipeFigures(question, { ...judgement, inHandStops }, dials));
    }
    const { verdict, shortByStops, side, limit } = judgement;
    return fail({
      kind: verdict,
      shortByStops,
      ...(side === null ? {} : { role: side.role, lights: side.lights }),
      ...(limit === null ? {} : { limit }),
    });
  }
  const dials = settleDials(question);
  if (dials !== null) return ok(recipeFigures(question, judgement, dials));
  return fail({ kind: 'no-setting', shortByStops: 0, limit: 'between' });
};

/** A camera off by what its dials leave, and a side off by as much the other way. */
const PINNED_SLACK_STOPS = 2 * LANDING_STOPS;

/**
 * A power pinned as it stands on the dial misses the exact one by what rounding left, and so may
 * seem too weak or too strong: whether it lands is then for the dials to say.
 */
const isWithinPinnedDial = (
  { input }: RecipeCase,
  { verdict, shortByStops, side }: Judgement,
): boolean =>
  (verdict === 'sky-above-reach' || verdict === 'head-too-strong') &&
  shortByStops <= PINNED_SLACK_STOPS &&
  side?.lights.some((index) => (input.pins?.powerStops?.[index] ?? null) !== null) === true;
