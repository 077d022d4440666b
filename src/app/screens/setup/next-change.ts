import type { SetupCase } from '../../../core/plan/setup-case.ts';
import { setupLight } from '../../../core/plan/setup-light.ts';
import { recipeInput } from '../../../core/plan/setup-question.ts';
import { attemptRecipe } from '../../../core/strobe/attempt-recipe.ts';
import type { Recipe } from '../../../core/strobe/recipe.ts';
import { civilDateOf, dayOfYear } from '../../../core/units/civil-time.ts';

const MS_PER_MIN = 60_000;
const FARTHEST_MIN = 90;

export type NextChange = {
  readonly atMs: number;
  /** Null: from then on the setup does not work. */
  readonly recipe: Recipe | null;
};

/** The first whole minute after this one at which a dial of camera or heads stands otherwise. */
export function nextChange(
  base: Pick<SetupCase, 'scene' | 'question'>,
  now: Recipe,
  fromMs: number,
): NextChange | null {
  const light = setupLight(base.scene);
  const day = dayOfYear(civilDateOf(fromMs, base.scene.zone));
  for (let minutes = 1; minutes <= FARTHEST_MIN; minutes += 1) {
    const atMs = (Math.floor(fromMs / MS_PER_MIN) + minutes) * MS_PER_MIN;
    const input = recipeInput(base.question, light({ instantMs: atMs, dayOfYear: day }));
    const answer = input === null ? null : attemptRecipe(input);
    if (answer?.ok !== true) return { atMs, recipe: null };
    if (!isSameSetting(now, answer.value)) return { atMs, recipe: answer.value };
  }
  return null;
}

const SAME = 1.02;

const same = (one: number, other: number): boolean =>
  Math.max(one, other) / Math.min(one, other) < SAME;

function isSameSetting(first: Recipe, second: Recipe): boolean {
  return (
    same(first.shutterS, second.shutterS) &&
    same(first.fNumber, second.fNumber) &&
    same(first.iso, second.iso) &&
    first.ndStops === second.ndStops &&
    first.lights.every(
      ({ powerStops }, place) =>
        Math.abs(powerStops - (second.lights[place]?.powerStops ?? powerStops)) < 0.05,
    )
  );
}
