import { cosDeg } from '../units/angle.ts';

/** How the light of a modifier's face thins out off its axis. */
export type BeamShape = {
  /** A diffuser or a matt surface: every point of it sends by Lambert's law. */
  readonly diffuse: boolean;
  /** Full angle inside which it lights evenly; null: only the diffuser shapes it. */
  readonly coreDeg: number | null;
};

/** Of a standard reflector, for a modifier whose beam nobody has stated. [lightingPractice] */
export const ASSUMED_BEAM_DEG = 65;

/** Beyond the even part a reflector or a grid loses a stop per quarter of its half beam. [lightingPractice] */
const STOP_PER_HALF_BEAM = 1 / 4;

/** As dark as is told apart from no light at all. */
export const DARK_STOPS = -20;

/**
 * Light off the axis against on it, stops, 0 to −20; off the axis by 0 to 180°. A flat diffuse
 * face sends with the cosine, nothing past 90°. [iesHandbook] A reflector or a grid is even inside
 * its beam and falls evenly in stops outside it. [lightingPractice]
 */
export function offAxisStops({ diffuse, coreDeg }: BeamShape, offAxisDeg: number): number {
  const cosine = diffuse ? cosDeg(offAxisDeg) : 1;
  if (cosine <= 0) return DARK_STOPS;
  const halfDeg = (coreDeg ?? 360) / 2;
  const overDeg = Math.max(0, offAxisDeg - halfDeg);
  // A zero is not shown with a minus.
  const stops = Math.log2(cosine) - overDeg / (halfDeg * STOP_PER_HALF_BEAM) + 0;
  return Math.max(DARK_STOPS, stops);
}
