import { withOneMoreNd } from './nd-stacks.ts';
import type { Fix, RecipeInput, RecipeLight, RecipePins } from './recipe.ts';

/** The same question with a fix made. */
export const applyFix = (input: RecipeInput, fix: Fix): RecipeInput => {
  const { value } = fix;
  switch (fix.kind) {
    case 'distance':
      return changeLights(input, fix, { distanceM: value });
    case 'second-head':
      return changeLights(input, fix, { heads: value });
    case 'head-nd':
      return {
        ...input,
        lights: input.lights.map((light, index) =>
          fix.lights?.includes(index) === true
            ? { ...light, lossStops: light.lossStops + value }
            : light,
        ),
      };
    case 'sync-shutter':
      return { ...input, camera: { ...input.camera, syncShutterS: value } };
    case 'slower-shutter':
      return { ...input, camera: { ...input.camera, slowestShutterS: value } };
    case 'hold':
      return { ...input, hold: { ...input.hold, stops: value } };
    case 'unlit-under':
      return { ...input, unlitUnderStops: value };
    case 'shade':
      return shaded(input, value);
    case 'leave-out':
      return withoutLights(input, fix.lights ?? []);
    case 'nd':
      return withOneMoreNd(input, value);
    case 'unpin-shutter':
      return changePins(input, { shutterS: undefined });
    case 'unpin-aperture':
      return changePins(input, { fNumber: undefined });
    case 'unpin-iso':
      return changePins(input, { iso: undefined });
    case 'unpin-nd':
      // Filters are pinned as a whole: with the ND go those that stand beside it.
      return {
        ...changePins(input, { ndStops: undefined, ndUpToStops: undefined }),
        otherFilterStops: undefined,
        skyFilterStops: undefined,
      };
    case 'unpin-power':
      return changePins(input, {
        powerStops: input.pins?.powerStops?.map((power, index) =>
          fix.lights?.includes(index) === true ? null : power,
        ),
      });
    case 'pair':
      return (fix.parts ?? []).reduce(applyFix, input);
  }
};

const changeLights = (
  input: RecipeInput,
  fix: Fix,
  change: Partial<Pick<RecipeLight, 'distanceM' | 'heads'>>,
): RecipeInput => ({
  ...input,
  lights: input.lights.map((light, index) =>
    fix.lights?.includes(index) === true ? { ...light, ...change } : light,
  ),
});

const changePins = (input: RecipeInput, change: Partial<RecipePins>): RecipeInput => ({
  ...input,
  pins: { ...input.pins, ...change },
});

/** A panel takes the sun first; what it leaves is at most what falls with the sun hidden. */
const shaded = (input: RecipeInput, stops: number): RecipeInput => {
  const outEv = (input.ambientOutEv ?? input.ambientOnSubjectEv) - stops;
  const ambientOnSubjectEv = Math.min(input.ambientOnSubjectEv, outEv);
  return input.ambientOutEv === undefined
    ? { ...input, ambientOnSubjectEv }
    : { ...input, ambientOnSubjectEv, ambientOutEv: outEv };
};

const withoutLights = (input: RecipeInput, left: readonly number[]): RecipeInput => {
  const stays = (_: unknown, index: number): boolean => !left.includes(index);
  return {
    ...input,
    lights: input.lights.filter(stays),
    pins: { ...input.pins, powerStops: input.pins?.powerStops?.filter(stays) },
  };
};
