import { fail, ok, type Result } from '../units/result.ts';
import type { RecipeInput } from '../strobe/recipe.ts';
import { framingOf } from './picture-geometry.ts';
import type { Kit } from './kit.ts';
import { setupLightAt } from './setup-column.ts';
import { setupScene, type SetupLight, type SetupScene } from './setup-light.ts';
import type { KitGap } from './kit-gap.ts';
import { setupQuestion, setupSources } from './setup-lights.ts';
import { recipeInput, type SetupQuestion } from './setup-question.ts';
import type { Setup } from './setup-schema.ts';
import type { SetupSource } from './setup-source.ts';
import type { Shoot, Spot } from './shoot.ts';
import type { ShootFraming } from './spot-schema.ts';

export type SetupCaseInput = {
  readonly shoot: Shoot;
  readonly kit: Kit;
  readonly setupId: string;
  readonly instantMs: number;
};

/** A setup at one minute with everything that its recipe is asked from. */
export type SetupCase = {
  readonly spot: Spot;
  readonly setup: Setup;
  readonly framing: ShootFraming;
  readonly scene: SetupScene;
  readonly light: SetupLight;
  readonly sources: readonly SetupSource[];
  readonly question: SetupQuestion;
  /** Null when the frame shows no sky. */
  readonly input: RecipeInput | null;
};

export type SetupGap = { readonly kind: 'gone' } | KitGap;

/** The light may be handed in where scene and minute are known to be the same. */
export function setupCase(
  { shoot, kit, setupId, instantMs }: SetupCaseInput,
  known?: SetupLight,
): Result<SetupCase, SetupGap> {
  const setup = shoot.setups[setupId];
  const spot = setup && shoot.spots[setup.spotId];
  if (setup === undefined || spot === undefined) return fail({ kind: 'gone' });
  const sources = setupSources(setup, spot, kit);
  if (!sources.ok) return sources;
  const question = setupQuestion(setup, spot, kit, sources.value);
  if (!question.ok) return question;
  const scene = { ...setupScene(shoot, setup, spot), skyFilters: question.value.skyFilters };
  const light = known ?? setupLightAt(scene, instantMs);
  return ok({
    spot,
    setup,
    framing: framingOf(setup, spot),
    scene,
    light,
    sources: sources.value,
    question: question.value,
    input: recipeInput(question.value, light),
  });
}
