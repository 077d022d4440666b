import { atanDeg } from '../units/angle.ts';

/** Mean radius of the earth, (2a + b)/3. [wgs84] */
const MEAN_RADIUS_M = 6371008.771;

/** Curvature of a ray of light over that of the earth, by day, well above the ground: 0.13 ± 0.04. [torgeMueller2012] */
export const REFRACTION_COEFFICIENT = 0.13;

/** Metres of drop per square metre of distance: what the earth takes less what refraction gives back. */
export const DROP_PER_SQUARE_M = (1 - REFRACTION_COEFFICIENT) / (2 * MEAN_RADIUS_M);

/**
 * How far a point of the same height sinks below the eye's level plane, seen over a distance:
 * (1 − k)d²/2R. The earth's radius varies by 0.35 % about its mean, 0.4 m of drop at 40 km.
 */
export const terrainDropM = (distanceM: number): number =>
  DROP_PER_SQUARE_M * distanceM * distanceM;

/**
 * Apparent altitude of a point on the terrain. The parabola in place of the circle costs under
 * 0.001° to 100 km.
 */
export const terrainAltitudeDeg = ({
  aboveEyeM,
  distanceM,
}: {
  readonly aboveEyeM: number;
  readonly distanceM: number;
}): number => atanDeg((aboveEyeM - terrainDropM(distanceM)) / distanceM);

/** Where the line of sight touches level ground: √(2Rh/(1 − k)). */
export const horizonDistanceM = (eyeAboveM: number): number =>
  Math.sqrt(Math.max(0, eyeAboveM) / DROP_PER_SQUARE_M);

/** Altitude of the horizon of level ground, at most 0: −1.797′ for each root of a metre. */
export const levelHorizonDeg = (eyeAboveM: number): number =>
  -atanDeg(2 * Math.sqrt(Math.max(0, eyeAboveM) * DROP_PER_SQUARE_M));
