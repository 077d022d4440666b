import { fail, type Result } from '../units/result.ts';
import { attemptRecipe } from './attempt-recipe.ts';
import { fixesFor } from './fixes.ts';
import type { Recipe, RecipeInput, RecipeProblem } from './recipe.ts';

/**
 * Shutter, aperture, ISO, ND and the power of every head that hold the sky and land every light on
 * its stops, or the first rule that breaks, by how much, and what would end it.
 * EV at ISO 100, stops, metres, seconds; powerStops 0 is full power. Sky and every side land within
 * a sixth of a stop.
 */
export const solveRecipe = (input: RecipeInput): Result<Recipe, RecipeProblem> => {
  const attempt = attemptRecipe(input);
  return attempt.ok
    ? attempt
    : fail({ ...attempt.problem, fixes: fixesFor(input, attempt.problem) });
};
