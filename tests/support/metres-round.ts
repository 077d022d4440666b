import type { GeoPoint } from '../../src/core/place/geo-point.ts';
import { destination } from '../../src/core/place/geodesy.ts';
import type { Corner, Obstacle } from '../../src/core/skyline/obstacle.ts';

/** Corners so many metres east and north of a place, set out on the ellipsoid by the geodesic library. */
export const metresRound =
  (place: GeoPoint) =>
  (eastM: number, northM: number): Corner => {
    const to = destination(place, {
      distanceM: Math.hypot(eastM, northM),
      bearingDeg: (Math.atan2(eastM, northM) * 180) / Math.PI,
    });
    return [to.longitudeDeg, to.latitudeDeg];
  };

/** A solid block on level ground. */
export const plainBuilding: Omit<Obstacle, 'outline'> = {
  kind: 'building',
  closed: true,
  heightM: 10,
  crownBaseM: 0,
  passesInLeaf: 0,
  passesBare: 0,
  footElevationM: null,
};

/** The same as a wall along a line. */
export const plainWall: Omit<Obstacle, 'outline'> = {
  ...plainBuilding,
  kind: 'wall',
  closed: false,
};

/** A tall hedge that lets nothing through and stands clear of the ground. */
export const plainTrees: Omit<Obstacle, 'outline'> = {
  ...plainBuilding,
  kind: 'trees',
  crownBaseM: 4,
};
