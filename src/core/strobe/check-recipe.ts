import { holdReferenceEv } from './hold-reference.ts';
import type { LightRole, Recipe, RecipeInput } from './recipe.ts';
import { runForward } from './run-forward.ts';

export type LandingError = {
  readonly what: 'sky' | LightRole;
  readonly wantedStops: number;
  readonly foundStops: number;
};

export type RecipeCheck = {
  /** Sky and every side within a sixth of a stop of what was asked for. */
  readonly lands: boolean;
  readonly worstStops: number;
  readonly errors: readonly LandingError[];
};

/** A sixth of a stop, and what adding logarithms rounds. */
const ALLOWED_STOPS = 1 / 6 + 1e-5;
/** Two ways of adding up a lit surface agree to this where it is not far larger than it is far. */
const TWO_SUMS_STOPS = 0.03;

/** Runs a recipe forward and compares where everything lands with what the input asks for. */
export const checkRecipe = (input: RecipeInput, recipe: Recipe): RecipeCheck => {
  const landing = runForward(input, recipe);
  const wantedByRole = new Map<LightRole, number>();
  const errors: LandingError[] = [
    { what: 'sky', wantedStops: -input.hold.stops, foundStops: referenceStops(input, landing) },
  ];
  landing.lights.forEach(({ role, faceStops }, index) => {
    const own = input.lights[index]?.stops ?? Number.NaN;
    const adds = role === 'key' || role === 'fill';
    const wantedStops = adds ? (wantedByRole.get(role) ?? own) : own;
    wantedByRole.set(role, wantedStops);
    errors.push({ what: role, wantedStops, foundStops: faceStops });
  });
  let worstStops = 0;
  for (const { wantedStops, foundStops } of errors) {
    const error = Math.abs(foundStops - wantedStops);
    worstStops = error <= worstStops ? worstStops : error;
  }
  const allowedStops = input.lights.some(({ path }) => path?.kind === 'bounced')
    ? ALLOWED_STOPS + TWO_SUMS_STOPS
    : ALLOWED_STOPS;
  const landsEverywhere = errors.every(
    ({ wantedStops, foundStops }) => Math.abs(foundStops - wantedStops) <= allowedStops,
  );
  return { lands: landsEverywhere, worstStops, errors };
};

const referenceStops = (
  { hold, sky, incidentEv }: RecipeInput,
  landing: ReturnType<typeof runForward>,
): number =>
  holdReferenceEv(hold.under, {
    patchEv: sky.patchEv === null ? null : landing.patchStops,
    meanEv: landing.frameStops,
    incidentEv: Number.isFinite(incidentEv) ? landing.incidentStops : Number.NaN,
  });
