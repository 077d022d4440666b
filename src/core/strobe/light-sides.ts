import { ratioFromStops } from '../units/stops.ts';
import { flashFNumberSquared } from './guide-number.ts';
import type { LightRole, RecipeInput, RecipeLight } from './recipe.ts';
import { clippedShare, flashDurationAtS, isHighSpeedSync } from './sync.ts';

/** The lights that add up to one level: all keys, all fills, or one rim or background. */
export type LightSide = {
  readonly role: LightRole;
  /** Places in the input's `lights`. */
  readonly lights: readonly number[];
  /** Where the side is to land, as a ratio to mid-grey. */
  readonly target: number;
  /** f-number squared at ISO 100 of all its lights at their strongest: full power, or the pinned one. */
  readonly strongest: number;
  /** The same at their weakest: lowest power, or the pinned one. */
  readonly weakest: number;
  /** Whether a shutter can cut a flash of this side short. */
  readonly canClip: boolean;
};

export type LightSides = {
  readonly key: LightSide | null;
  readonly fill: LightSide | null;
  /** Fill before key before the rest: the order in which their powers can be decided. */
  readonly all: readonly LightSide[];
  /** By place in `lights`: f-number squared at full power, nothing clipped. */
  readonly fullSquared: readonly number[];
};

export const lightSides = (input: RecipeInput): LightSides => {
  const fullSquared = input.lights.map(flashFNumberSquared);
  const placesOf = (role: LightRole): number[] => {
    const places: number[] = [];
    for (let index = 0; index < input.lights.length; index += 1)
      if (input.lights[index]?.role === role) places.push(index);
    return places;
  };
  const fill = lightSide(input, fullSquared, placesOf('fill'));
  const key = lightSide(input, fullSquared, placesOf('key'));
  const all: LightSide[] = [];
  if (fill !== null) all.push(fill);
  if (key !== null) all.push(key);
  for (const place of [...placesOf('rim'), ...placesOf('background')]) {
    const side = lightSide(input, fullSquared, [place]);
    if (side !== null) all.push(side);
  }
  return { key, fill, all, fullSquared };
};

const lightSide = (
  input: RecipeInput,
  fullSquared: readonly number[],
  lights: readonly number[],
): LightSide | null => {
  const first = input.lights[lights[0] ?? -1];
  if (first === undefined) return null;
  let strongest = 0;
  let weakest = 0;
  let canClip = false;
  for (const place of lights) {
    const light = input.lights[place];
    const full = fullSquared[place] ?? 0;
    const pinned = input.pins?.powerStops?.[place] ?? null;
    strongest += pinned === null ? full : full * ratioFromStops(pinned);
    weakest += full * ratioFromStops(pinned ?? light?.minPowerStops ?? 0);
    canClip ||= (light?.flashDurationS ?? 0) > 0;
  }
  return {
    role: first.role,
    lights,
    target: ratioFromStops(first.stops),
    strongest,
    weakest,
    canClip,
  };
};

/** Share of a light's flash at a power that a shutter lets through; in high-speed sync nothing more is cut. */
export const passedShare = (
  light: RecipeLight | undefined,
  shutter: { readonly shutterS: number; readonly syncShutterS: number },
  powerStops: number,
): number => {
  if (light?.flashDurationS === undefined || isHighSpeedSync(shutter)) return 1;
  const flashDurationS = flashDurationAtS(light, powerStops) ?? 0;
  return 1 - clippedShare({ shutterS: shutter.shutterS, flashDurationS });
};

/** A side's strongest as a shutter lets it through. */
export const strongestThrough = (
  input: RecipeInput,
  sides: LightSides,
  side: LightSide,
  shutterS: number,
): number =>
  side.canClip ? sideThrough(input, sides, side, { shutterS, end: 'full' }) : side.strongest;

/** A side's weakest as a shutter lets it through. */
export const weakestThrough = (
  input: RecipeInput,
  sides: LightSides,
  side: LightSide,
  shutterS: number,
): number =>
  side.canClip ? sideThrough(input, sides, side, { shutterS, end: 'lowest' }) : side.weakest;

const sideThrough = (
  { lights, pins, camera }: RecipeInput,
  sides: LightSides,
  side: LightSide,
  at: { readonly shutterS: number; readonly end: 'full' | 'lowest' },
): number => {
  const shutter = { shutterS: at.shutterS, syncShutterS: camera.syncShutterS };
  let sum = 0;
  for (const place of side.lights) {
    const light = lights[place];
    const end = at.end === 'full' ? 0 : (light?.minPowerStops ?? 0);
    const powerStops = pins?.powerStops?.[place] ?? end;
    sum +=
      (sides.fullSquared[place] ?? 0) *
      ratioFromStops(powerStops) *
      passedShare(light, shutter, powerStops);
  }
  return sum;
};

/**
 * What a side's flash must add, as a ratio to mid-grey, so that the side lands on its target: a
 * fill tops up the ambient; a key tops up fill and ambient, the fill standing on the camera's axis
 * and so on the key's side too; rim and background stand alone.
 */
export const neededRatio = (sides: LightSides, side: LightSide, ambientRatio: number): number => {
  switch (side.role) {
    case 'fill':
      return side.target - ambientRatio;
    case 'key':
      return side.target - Math.max(ambientRatio, sides.fill?.target ?? 0);
    case 'rim':
    case 'background':
      return side.target;
  }
};
