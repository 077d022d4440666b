import type { RecipeInput } from '../strobe/recipe.ts';
import type { SetupLight } from './setup-light.ts';

/** A recipe's question without the light, which changes with the minute. */
export type SetupQuestion = Omit<
  RecipeInput,
  'sky' | 'ambientOnSubjectEv' | 'ambientOutEv' | 'incidentEv'
> & {
  /** A panel keeps the sun's beam off the subject. */
  readonly shaded: boolean;
};

/** The question at a minute; null when the frame shows no sky. */
export function recipeInput(question: SetupQuestion, light: SetupLight): RecipeInput | null {
  if (light.skyInFrame === null) return null;
  const { shaded, ...rest } = question;
  const { patchEv, patchIsFrame, meanEv } = light.skyInFrame;
  const ambientOutEv = shaded ? light.ambientShadedEv : light.ambientOutEv;
  return {
    ...rest,
    sky: { patchEv: patchIsFrame ? null : patchEv, meanEv },
    ambientOnSubjectEv: Math.min(light.ambientHiddenEv, ambientOutEv),
    ambientOutEv,
    incidentEv: light.incidentEv,
  };
}
