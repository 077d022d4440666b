import type { GeoPoint } from '../../../core/place/geo-point.ts';
import { metresPerDegree } from '../../../core/place/metres-per-degree.ts';
import { wrapDeg180 } from '../../../core/units/angle.ts';
import type { Surroundings } from '../../state/atlas.ts';

/** What was looked up for a spot, and where it stood then. */
export type PlaceFindings = {
  readonly point: GeoPoint;
  /** Null: the names on this device could not be read. */
  readonly found: Surroundings | null;
};

/** Farther away a place says nothing about the height of a spot. */
const NEAR_M = 15_000;
/** Over this way the clocks may change. */
const FAR_M = 10_000;

/** Elevation to begin with and where it comes from. */
export function elevationFinding(found: Surroundings | null): {
  readonly elevationM: number;
  readonly origin: string;
} {
  const near = found?.near ?? null;
  if (near === null || near.distanceM > NEAR_M)
    return {
      elevationM: 0,
      origin: 'no place is known within 15 km: taken as sea level, check it',
    };
  const { name, point } = near.place;
  return {
    elevationM: point.elevationM,
    origin: `${point.elevationM} m is that of ${name}, ${distanceText(near.distanceM)} away; a hill or quay between differs`,
  };
}

/** Whether a spot has gone so far that its zone and elevation should be looked up again. */
export const movedFar = (from: GeoPoint, to: GeoPoint): boolean => {
  const { northM, eastM } = metresPerDegree(from.latitudeDeg);
  return (
    Math.hypot(
      (to.latitudeDeg - from.latitudeDeg) * northM,
      wrapDeg180(to.longitudeDeg - from.longitudeDeg) * eastM,
    ) > FAR_M
  );
};

const distanceText = (distanceM: number): string =>
  distanceM < 1000 ? `${Math.round(distanceM / 10) * 10} m` : `${(distanceM / 1000).toFixed(1)} km`;
