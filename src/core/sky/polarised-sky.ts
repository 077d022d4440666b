import type { SkyCondition } from '../daylight/sky-condition.ts';
import { angleBetweenDeg, type Direction } from '../units/direction.ts';
import { cosDeg } from '../units/angle.ts';

/**
 * Greatest share of polarised light, 90° from the sun: about three quarters in clear air, less in
 * haze; of broken cloud half is cloud, and cloud has none. [lightingPractice]
 */
const GREATEST_SHARE: Readonly<Record<SkyCondition, number>> = {
  clear: 0.75,
  haze: 0.45,
  'broken-cloud': 0.375,
  'bright-overcast': 0,
  'heavy-overcast': 0,
};

/** With the sun lower than the first it fades, at the second nothing is counted on. [lightingPractice] */
const FADES_FROM_DEG = -6;
const GONE_AT_DEG = -12;

/** Of single scattering: sin² / (1 + cos²) of the angle from the sun, 0 to 1. [rayleighScattering] */
export const scatteredShare = (fromSunDeg: number): number => {
  const squared = cosDeg(fromSunDeg) ** 2;
  return (1 - squared) / (1 + squared);
};

/** Share of polarised light by the angle from the sun, 0 to 1. [rayleighScattering] */
export function polarisedShare(
  condition: SkyCondition,
  sun: { readonly azimuthDeg: number; readonly apparentAltitudeDeg: number },
): (direction: Direction) => number {
  const fading = (sun.apparentAltitudeDeg - GONE_AT_DEG) / (FADES_FROM_DEG - GONE_AT_DEG);
  const greatest = GREATEST_SHARE[condition] * Math.min(1, Math.max(0, fading));
  const sunAt = { azimuthDeg: sun.azimuthDeg, altitudeDeg: sun.apparentAltitudeDeg };
  return (direction) => greatest * scatteredShare(angleBetweenDeg(direction, sunAt));
}

/** What turning a polariser takes from a sky beyond its even loss, stops; negative passes more. */
export type PolariserRange = {
  readonly leastStops: number;
  readonly mostStops: number;
  /** Half way: what recipes count on until it is turned. */
  readonly middleStops: number;
};

/**
 * Of light with a share p polarised an ideal one passes (1 + p)/2 to (1 − p)/2, of unpolarised
 * light a half: −log2(1 + p) to −log2(1 − p) against that. [rayleighScattering]
 */
export function polariserRange(share: number): PolariserRange {
  const leastStops = -Math.log2(1 + share) + 0;
  const mostStops = -Math.log2(1 - share) + 0;
  return { leastStops, mostStops, middleStops: (leastStops + mostStops) / 2 };
}
