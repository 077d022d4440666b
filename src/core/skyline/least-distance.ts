import type { GeoPoint } from '../place/geo-point.ts';
import { cosDeg, wrapDeg180 } from '../units/angle.ts';
import type { Corner } from './obstacle.ts';

/** The shortest degree of latitude, at the equator, and a degree of longitude there. [wgs84] */
const LEAST_NORTH_M = 110_574;
const EQUATOR_EAST_M = 111_319;
/** Nearer the poles an edge may pass far from the box of its ends: only far latitudes say something. */
const POLAR_DEG = 85;
const FAR_LATITUDE_M = LEAST_NORTH_M;

/**
 * A distance that no part of an outline can come nearer than, by the box of its degrees: quick, and
 * never above the true distance by more than its 3000th part within 100 km.
 */
export function leastDistanceM(
  outline: readonly Corner[],
  { latitudeDeg, longitudeDeg }: GeoPoint,
): number {
  let south = Infinity;
  let north = -Infinity;
  let west = Infinity;
  let east = -Infinity;
  for (const [cornerLongitudeDeg, cornerLatitudeDeg] of outline) {
    const eastDeg = wrapDeg180(cornerLongitudeDeg - longitudeDeg);
    const northDeg = cornerLatitudeDeg - latitudeDeg;
    if (northDeg < south) south = northDeg;
    if (northDeg > north) north = northDeg;
    if (eastDeg < west) west = eastDeg;
    if (eastDeg > east) east = eastDeg;
  }
  const farthestDeg = Math.max(Math.abs(latitudeDeg + south), Math.abs(latitudeDeg + north));
  const polewardDeg = Math.max(farthestDeg, Math.abs(latitudeDeg));
  const northM = gap(south, north) * LEAST_NORTH_M;
  if (polewardDeg > POLAR_DEG) return northM > FAR_LATITUDE_M ? northM : 0;
  return Math.hypot(northM, gap(west, east) * EQUATOR_EAST_M * cosDeg(polewardDeg));
}

/** From 0 to the nearest end of a span that leaves it out. */
const gap = (low: number, high: number): number => Math.max(0, low, -high);
