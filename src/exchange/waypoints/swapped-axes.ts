import { groundVector } from '../../core/place/geodesy.ts';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import type { Waypoint } from '../../core/plan/waypoint.ts';

const FAR_M = 1_000_000;
const NEAR_M = 200_000;

/** A sentence where places are far from the one in view, but near it with their numbers swapped; nothing is changed. */
export function swappedAxesNote(
  waypoints: readonly Waypoint[],
  near: GeoPoint | null,
): string | null {
  if (near === null) return null;
  const swapped = waypoints.filter(
    ({ latitudeDeg, longitudeDeg }) =>
      Math.abs(longitudeDeg) <= 90 &&
      groundVector(near, { latitudeDeg, longitudeDeg }).distanceM > FAR_M &&
      groundVector(near, { latitudeDeg: longitudeDeg, longitudeDeg: latitudeDeg }).distanceM <
        NEAR_M,
  );
  return swapped.length === 0
    ? null
    : `${swapped.length} of ${waypoints.length} would stand near the place in view with latitude and longitude swapped. They are left as they are: check them.`;
}
