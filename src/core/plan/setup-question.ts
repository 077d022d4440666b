import type { SkyFilters } from '../sky/filtered-frame.ts';
import type { RecipeInput } from '../strobe/recipe.ts';
import type { SetupLight } from './setup-light.ts';

/** A recipe's question without the light, which changes with the minute. */
export type SetupQuestion = Omit<
  RecipeInput,
  'sky' | 'ambientOnSubjectEv' | 'ambientOutEv' | 'incidentEv' | 'skyFilterStops'
> & {
  /** A panel keeps the sun's beam off the subject. */
  readonly shaded: boolean;
  /** Pinned filters that part the sky; null: none. */
  readonly skyFilters: SkyFilters | null;
  /** What the graduated one takes at the faces; it is in `otherFilterStops`. */
  readonly faceFilterStops: number;
};

/** The question at a minute; null when the frame shows no sky. */
export function recipeInput(question: SetupQuestion, light: SetupLight): RecipeInput | null {
  if (light.skyInFrame === null) return null;
  const { shaded, skyFilters, faceFilterStops, ...rest } = question;
  const { patchEv, patchIsFrame, meanEv } = light.skyInFrame;
  const ambientOutEv = shaded ? light.ambientShadedEv : light.ambientOutEv;
  return {
    ...rest,
    sky: { patchEv: patchIsFrame ? null : patchEv, meanEv },
    ambientOnSubjectEv: Math.min(light.ambientHiddenEv, ambientOutEv),
    ambientOutEv,
    incidentEv: light.incidentEv,
    ...(skyFilters === null ? {} : skyFilterStops(light, faceFilterStops)),
  };
}

/** How much darker the sky is behind the filters that part it, over what the faces lose to them. */
function skyFilterStops(
  { skyInFrame, filteredSky }: SetupLight,
  faceFilterStops: number,
): Pick<RecipeInput, 'skyFilterStops'> {
  if (skyInFrame === null || filteredSky === null) return {};
  const { reading } = filteredSky;
  return {
    skyFilterStops: {
      patch: skyInFrame.patchEv - reading.patchEv - faceFilterStops,
      frame: skyInFrame.meanEv - reading.meanEv - faceFilterStops,
    },
  };
}
