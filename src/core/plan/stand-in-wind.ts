import { ballastOnWindwardLegKg, type Stand as StandInWind } from '../strobe/ballast.ts';
import { faceAreaM2 } from '../strobe/head.ts';
import type { SetupSource } from './setup-source.ts';

/** How a light stands in the wind that is expected. */
export type InWind =
  | { readonly kind: 'no-stand' }
  /** No figure without a wind. */
  | { readonly kind: 'wind-not-known' }
  | { readonly kind: 'above-limit'; readonly gustMS: number; readonly maxGustMS: number }
  | {
      readonly kind: 'ballast';
      readonly gustMS: number;
      /** On the windward leg, half way out; 0: its own weight is enough. */
      readonly ballastKg: number;
      readonly sailAreaM2: number;
    };

/**
 * What keeps a light's stand from tipping: the modifier's face at the light's height is the sail,
 * stand, head and modifier the weight. Equal heads side by side stand on a stand each.
 */
export function inWind(
  { carrier, head, modifier, light }: Pick<SetupSource, 'carrier' | 'head' | 'modifier' | 'light'>,
  gustMS: number | null,
): InWind {
  if (carrier === null) return { kind: 'no-stand' };
  if (gustMS === null) return { kind: 'wind-not-known' };
  if (gustMS > carrier.maxGustMS)
    return { kind: 'above-limit', gustMS, maxGustMS: carrier.maxGustMS };
  const stand: StandInWind = {
    sailAreaM2: faceAreaM2(modifier),
    sailHeightM: light.heightM,
    legSpreadM: carrier.legSpreadM,
    legs: carrier.legs,
    massKg: carrier.massKg + head.massKg + modifier.massKg,
  };
  return {
    kind: 'ballast',
    gustMS,
    ballastKg: ballastOnWindwardLegKg(stand, gustMS),
    sailAreaM2: stand.sailAreaM2,
  };
}
