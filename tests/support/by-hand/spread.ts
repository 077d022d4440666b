import type { HandCondition } from './daylight.ts';
import type { SunThere } from './sun.ts';

/** Scatter over the directions of a sky, stops: of the whole frame, of one patch. Common practice. */
const DIRECTION: Readonly<
  Record<HandCondition, { readonly frame: number; readonly patch: number }>
> = { clear: { frame: 0.3, patch: 0.3 }, 'broken-cloud': { frame: 0.7, patch: 1.2 } };

/** ± stops of the sky in the frame: level and direction as squares, the direction's at least 0.7 near the sun, 1 when it is low. */
export function spreadsThere(
  condition: HandCondition,
  sun: SunThere,
  level: number,
  degreesFromSun: { readonly frame: number; readonly patch: number },
): { readonly frameSpread: number; readonly patchSpread: number } {
  const of = (part: 'frame' | 'patch'): number =>
    Math.hypot(
      level,
      Math.max(
        DIRECTION[condition][part],
        degreesFromSun[part] <= 20 ? 0.7 : 0,
        sun.trueAltitude <= 1 ? 1 : 0,
      ),
    );
  return { frameSpread: of('frame'), patchSpread: of('patch') };
}
