import { whiteOfKelvin } from '../colour/daylight-locus.ts';
import { offSurface } from '../colour/filtered-light.ts';
import { isNeutral, neutralSetting, seenLight, type SeenLight } from '../colour/seen-light.ts';
import type { SetupSource } from './setup-source.ts';

/** What the surface's colour makes of the head's own light on skin; null where it is aimed straight or cannot be told from neutral. */
export function bounceTint({ light, head }: Pick<SetupSource, 'light' | 'head'>): SeenLight | null {
  if (light.bounce === null) return null;
  const flash = whiteOfKelvin(head.flashKelvin);
  const tint = seenLight(offSurface(flash, light.bounce.colour), neutralSetting(flash));
  return isNeutral(tint) ? null : tint;
}
