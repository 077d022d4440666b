import { wrapDeg360 } from '../units/angle.ts';
import { skylineAltitude, type Skyline } from './skyline.ts';

/** The altitude of an edge as a function of azimuth, apparent; −Infinity where the source knows nothing. */
export type SkylineSource = (azimuthDeg: number) => number;

export const COMBINED_STEP_DEG = 0.25;
/** A point is left out where the straight line between its neighbours passes this close to it. */
const STRAIGHT_WITHIN_DEG = 0.01;

/** Terrain known by the highest of each whole degree, the first sector centred on north. */
export const bySector =
  (altitudesDeg: ArrayLike<number>): SkylineSource =>
  (azimuthDeg) =>
    altitudesDeg[Math.round(wrapDeg360(azimuthDeg)) % altitudesDeg.length] ?? -Infinity;

/** A trace made on site; one without a point knows nothing. */
export const byTrace = (trace: Skyline): SkylineSource =>
  trace.length === 0 ? () => -Infinity : skylineAltitude(trace);

/** Which of the sources is highest at an azimuth; −1 where none knows anything. The earlier wins a tie. */
export const highestSource = (
  sources: readonly SkylineSource[],
  azimuthDeg: number,
): { readonly index: number; readonly altitudeDeg: number } =>
  sources.reduce(
    (highest, source, index) => {
      const altitudeDeg = source(azimuthDeg);
      return altitudeDeg > highest.altitudeDeg ? { index, altitudeDeg } : highest;
    },
    { index: -1, altitudeDeg: -Infinity },
  );

/** The highest of all sources per azimuth, every quarter degree, flat at 0 where none knows anything. */
export function combinedSkyline(sources: readonly SkylineSource[]): Skyline {
  const count = 360 / COMBINED_STEP_DEG;
  const points = Array.from({ length: count }, (_, index) => {
    const azimuthDeg = index * COMBINED_STEP_DEG;
    const { altitudeDeg } = highestSource(sources, azimuthDeg);
    return { azimuthDeg, altitudeDeg: altitudeDeg === -Infinity ? 0 : altitudeDeg };
  });
  return withoutStraightPoints(points);
}

/** Keeps every point that the line between the kept ones would miss. */
function withoutStraightPoints(points: Skyline): Skyline {
  const kept = points.slice(0, 1);
  let fromIndex = 0;
  for (let index = 1; index < points.length; index += 1) {
    const isLast = index === points.length - 1;
    if (!isLast && isStraight(points, fromIndex, index + 1)) continue;
    const point = points[index];
    if (point !== undefined) kept.push(point);
    fromIndex = index;
  }
  return kept;
}

function isStraight(points: Skyline, fromIndex: number, toIndex: number): boolean {
  const from = points[fromIndex];
  const to = points[toIndex];
  if (from === undefined || to === undefined) return false;
  const slope = (to.altitudeDeg - from.altitudeDeg) / (to.azimuthDeg - from.azimuthDeg);
  return points
    .slice(fromIndex + 1, toIndex)
    .every(
      ({ azimuthDeg, altitudeDeg }) =>
        Math.abs(from.altitudeDeg + slope * (azimuthDeg - from.azimuthDeg) - altitudeDeg) <=
        STRAIGHT_WITHIN_DEG,
    );
}
