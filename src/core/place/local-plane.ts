import { atan2Deg, cosDeg, sinDeg, wrapDeg180 } from '../units/angle.ts';
import type { GeoPoint } from './geo-point.ts';

/** Equatorial radius and first eccentricity squared of the WGS 84 ellipsoid. [wgs84] */
const EQUATORIAL_RADIUS_M = 6378137;
const ECCENTRICITY_SQUARED = 0.00669437999014;

/** East and north of the plane's origin, metres. */
export type PlanePoint = readonly [eastM: number, northM: number];

export type LocalPlane = {
  readonly toPlane: (longitudeDeg: number, latitudeDeg: number) => PlanePoint;
  /** The place on the ellipsoid that stands over a point of the plane. */
  readonly toDegrees: (eastM: number, northM: number) => PlaneCorner;
};

type PlaneCorner = readonly [longitudeDeg: number, latitudeDeg: number];

/**
 * The horizontal plane through a place, points of the ellipsoid dropped on it at right angles.
 * Lengths and areas are short by a millionth at 10 km and by a 3000th at 170 km; bearings from the
 * origin are those of the vertical planes through it. Poles and antimeridian are places like others.
 */
export function localPlane({ latitudeDeg, longitudeDeg }: GeoPoint): LocalPlane {
  const sinLatitude = sinDeg(latitudeDeg);
  const cosLatitude = cosDeg(latitudeDeg);
  const origin = earthCentred(0, sinLatitude, cosLatitude);

  return {
    toPlane: (longitude, latitude) => {
      const at = earthCentred(longitude - longitudeDeg, sinDeg(latitude), cosDeg(latitude));
      const outwardM = at.outwardM - origin.outwardM;
      const northwardM = at.northwardM - origin.northwardM;
      return [at.eastwardM, northwardM * cosLatitude - outwardM * sinLatitude];
    },
    toDegrees: (eastM, northM) => {
      const upM = heightOverPlane({ eastM, northM, sinLatitude, cosLatitude, origin });
      const outwardM = origin.outwardM - northM * sinLatitude + upM * cosLatitude;
      const northwardM = origin.northwardM + northM * cosLatitude + upM * sinLatitude;
      const fromAxisM = Math.hypot(outwardM, eastM);
      return [
        wrapDeg180(longitudeDeg + atan2Deg(eastM, outwardM)),
        atan2Deg(northwardM, (1 - ECCENTRICITY_SQUARED) * fromAxisM),
      ];
    },
  };
}

/** From the middle of the earth, seen along the origin's meridian. */
type EarthCentred = {
  readonly outwardM: number;
  readonly eastwardM: number;
  readonly northwardM: number;
};

function earthCentred(
  eastOfOriginDeg: number,
  sinLatitude: number,
  cosLatitude: number,
): EarthCentred {
  const curveM = EQUATORIAL_RADIUS_M / Math.sqrt(1 - ECCENTRICITY_SQUARED * sinLatitude ** 2);
  return {
    outwardM: curveM * cosLatitude * cosDeg(eastOfOriginDeg),
    eastwardM: curveM * cosLatitude * sinDeg(eastOfOriginDeg),
    northwardM: curveM * (1 - ECCENTRICITY_SQUARED) * sinLatitude,
  };
}

/** The nearer of the two crossings of the plumb line with the ellipsoid; 0 beyond its rim. */
function heightOverPlane({
  eastM,
  northM,
  sinLatitude,
  cosLatitude,
  origin,
}: {
  readonly eastM: number;
  readonly northM: number;
  readonly sinLatitude: number;
  readonly cosLatitude: number;
  readonly origin: EarthCentred;
}): number {
  const stretch = 1 / (1 - ECCENTRICITY_SQUARED);
  const outwardM = origin.outwardM - northM * sinLatitude;
  const northwardM = origin.northwardM + northM * cosLatitude;
  const square = cosLatitude ** 2 + stretch * sinLatitude ** 2;
  const half = outwardM * cosLatitude + stretch * northwardM * sinLatitude;
  const rest = outwardM ** 2 + eastM ** 2 + stretch * northwardM ** 2 - EQUATORIAL_RADIUS_M ** 2;
  const under = half ** 2 - square * rest;
  // The other form of the root: no difference of two large numbers.
  return under < 0 ? 0 : -rest / (half + Math.sqrt(under));
}
