import { ratioFromStops, stopsFromRatio } from '../units/stops.ts';
import { strongestThrough, type LightSide, type LightSides } from './light-sides.ts';
import type { RecipeInput } from './recipe.ts';

/** Where full power gets a side: the brightest camera EV at which it still meets its stops. */
export type Ceiling = { readonly side: LightSide; readonly ev: number };

/**
 * The side that runs out first. Ceiling = log2((S/t + 2^ambient) / 2^stops), S = Σ GN² 2^−loss/d²;
 * for the key the fill counts only up to the level its own ratio asks, so that both land on theirs.
 * [iso1230] [iso2720]
 */
export const leastCeiling = (
  input: RecipeInput,
  sides: LightSides,
  shutter: { readonly shutterS: number; readonly flashShutterS: number },
): Ceiling | null => {
  let least: Ceiling | null = null;
  for (const side of sides.all) {
    const ev = ceilingEv(input, sides, side, shutter);
    if (least === null || ev < least.ev) least = { side, ev };
  }
  return least;
};

export const ceilingEv = (
  input: RecipeInput,
  sides: LightSides,
  side: LightSide,
  shutter: { readonly shutterS: number; readonly flashShutterS: number },
): number => {
  const { shutterS, flashShutterS } = shutter;
  const flash = strongestThrough(input, sides, side, shutterS) / flashShutterS;
  const ambient = ratioFromStops(input.ambientOnSubjectEv);
  switch (side.role) {
    case 'rim':
    case 'background':
      return stopsFromRatio(flash / side.target);
    case 'fill':
      return stopsFromRatio((flash + ambient) / side.target);
    case 'key': {
      if (sides.fill === null) return stopsFromRatio((flash + ambient) / side.target);
      const fillFlash = strongestThrough(input, sides, sides.fill, shutterS) / flashShutterS;
      return stopsFromRatio(
        keyCeiling({ key: flash, fill: fillFlash, ambient }, side.target, sides.fill.target),
      );
    }
  }
};

/**
 * 2^EV at which key + fill + ambient is just the key's target, the fill trimmed to its own. With
 * x = 2^EV the fill gives fillTarget·x − ambient while it can, nothing while ambient alone is more,
 * all it has beyond; the sum less keyTarget·x falls with x, so exactly one of the three holds.
 */
const keyCeiling = (
  light: { readonly key: number; readonly fill: number; readonly ambient: number },
  keyTarget: number,
  fillTarget: number,
): number => {
  const { key, fill, ambient } = light;
  const fillStarts = ambient / fillTarget;
  const fillAtFull = (fill + ambient) / fillTarget;
  const whileTrimmed =
    keyTarget > fillTarget ? key / (keyTarget - fillTarget) : Number.POSITIVE_INFINITY;
  if (whileTrimmed > fillAtFull) return (key + fill + ambient) / keyTarget;
  if (whileTrimmed < fillStarts) return (key + ambient) / keyTarget;
  return whileTrimmed;
};
