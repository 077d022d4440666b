import { fail, ok, type Result } from '../units/result.ts';
import { checkRecipeInput } from './check-recipe-input.ts';
import { judgeCase } from './judge-recipe.ts';
import { recipeCase } from './recipe-case.ts';
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
