import { cosDeg, radFromDeg, sinDeg } from '../units/angle.ts';

/** Equatorial radius and first eccentricity squared of the WGS 84 ellipsoid. [wgs84] */
const EQUATORIAL_RADIUS_M = 6378137;
const ECCENTRICITY_SQUARED = 0.00669437999014;

/**
 * Length of a degree of latitude and of longitude at a latitude, from the radii of curvature in
 * the meridian and the prime vertical: good to a millimetre over a hundred metres. [wgs84]
 */
export const metresPerDegree = (
  latitudeDeg: number,
): { readonly northM: number; readonly eastM: number } => {
  const curve = 1 - ECCENTRICITY_SQUARED * sinDeg(latitudeDeg) ** 2;
  const primeVerticalM = EQUATORIAL_RADIUS_M / Math.sqrt(curve);
  const meridianM = (primeVerticalM * (1 - ECCENTRICITY_SQUARED)) / curve;
  return {
    northM: radFromDeg(meridianM),
    eastM: radFromDeg(primeVerticalM * cosDeg(latitudeDeg)),
  };
};
