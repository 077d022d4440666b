import geodesic from 'geographiclib-geodesic';
import { wrapDeg360 } from '../units/angle.ts';
import type { GeoPoint } from './geo-point.ts';

/** A way over the ground from one place to another. */
export type GroundVector = {
  /** Along the ellipsoid; heights are left out. */
  readonly distanceM: number;
  /** At the start, clockwise from true north, 0 ≤ a < 360. */
  readonly bearingDeg: number;
};

const WGS84 = geodesic.Geodesic.WGS84;

/** Shortest way on the WGS 84 ellipsoid, to the nanometre. [karney2013] */
export const groundVector = (from: GeoPoint, to: GeoPoint): GroundVector => {
  const way = WGS84.Inverse(
    from.latitudeDeg,
    from.longitudeDeg,
    to.latitudeDeg,
    to.longitudeDeg,
    geodesic.Geodesic.DISTANCE | geodesic.Geodesic.AZIMUTH,
  );
  return { distanceM: way.s12 ?? Number.NaN, bearingDeg: wrapDeg360(way.azi1 ?? Number.NaN) };
};

/** Where one arrives on the WGS 84 ellipsoid; without elevation. [karney2013] */
export const destination = (from: GeoPoint, { distanceM, bearingDeg }: GroundVector): GeoPoint => {
  const way = WGS84.Direct(
    from.latitudeDeg,
    from.longitudeDeg,
    bearingDeg,
    distanceM,
    geodesic.Geodesic.LATITUDE | geodesic.Geodesic.LONGITUDE,
  );
  return { latitudeDeg: way.lat2 ?? Number.NaN, longitudeDeg: way.lon2 ?? Number.NaN };
};
