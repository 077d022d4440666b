import { destination, groundVector } from '../../core/place/geodesy.ts';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import { nearestCopyDeg } from './map-place.ts';

/** Below this the way is straight on the map to a pixel or so. */
const STRAIGHT_BELOW_M = 20_000;
const PARTS = 64;

/** The shortest way over the ground, longitudes going on beyond ±180. */
export const groundLine = (from: GeoPoint, to: GeoPoint): readonly GeoPoint[] => {
  const { distanceM, bearingDeg } = groundVector(from, to);
  const parts = distanceM < STRAIGHT_BELOW_M ? 1 : PARTS;
  let beforeDeg = from.longitudeDeg;
  return Array.from({ length: parts + 1 }, (_, index) => {
    const along = index / parts;
    const at = along === 1 ? to : destination(from, { distanceM: distanceM * along, bearingDeg });
    beforeDeg = nearestCopyDeg(at.longitudeDeg, beforeDeg);
    return { latitudeDeg: at.latitudeDeg, longitudeDeg: beforeDeg };
  });
};
