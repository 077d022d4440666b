import { judgeRecipe } from '../strobe/judge-recipe.ts';
import { civilDateOf, dayOfYear } from '../units/civil-time.ts';
import { holdWindows, type HoldWindow } from './hold-windows.ts';
import type { Kit } from './kit.ts';
import { setupColumn, verdictOf, type SetupColumn } from './setup-column.ts';
import { setupLight, setupScene } from './setup-light.ts';
import { setupQuestion } from './setup-lights.ts';
import { recipeInput } from './setup-question.ts';
import type { Shoot } from './shoot.ts';
import type { Verdict } from './verdicts.ts';

export type HoldDayInput = {
  readonly shoot: Shoot;
  readonly kit: Kit;
  readonly setupId: string;
  readonly stepMin: number;
};

export type HoldDay = {
  readonly column: SetupColumn;
  readonly windows: readonly HoldWindow[];
};

/** When a setup's lights hold the sky on the shoot's date; null when the setup or its spot is gone. */
export function holdDay({ shoot, kit, setupId, stepMin }: HoldDayInput): HoldDay | null {
  const setup = shoot.setups[setupId];
  const spot = setup && shoot.spots[setup.spotId];
  if (setup === undefined || spot === undefined) return null;
  const asked = setupQuestion(setup, spot, kit);
  const question = asked.ok ? asked.value : null;
  const scene = setupScene(shoot, setup, spot);
  const column = setupColumn({ scene, question, date: shoot.date, stepMin });
  const light = setupLight(scene);
  const verdictAt = (instantMs: number): Verdict => {
    if (question === null) return 'not-asked';
    const day = dayOfYear(civilDateOf(instantMs, scene.zone));
    const recipe = recipeInput(question, light({ instantMs, dayOfYear: day }));
    return recipe === null ? 'no-sky' : verdictOf(judgeRecipe(recipe));
  };
  return { column, windows: holdWindows(column, verdictAt) };
}
