import type { GeoPoint } from '../../core/place/geo-point.ts';
import { metresPerDegree } from '../../core/place/metres-per-degree.ts';
import { cosDeg, sinDeg, wrapDeg180 } from '../../core/units/angle.ts';

/** Farthest latitude that the Web Mercator square holds. */
export const MERCATOR_LIMIT_DEG = 85.05112878;

/** The longitude, possibly beyond ±180, of the copy of a place that lies nearest to the view. */
export const nearestCopyDeg = (longitudeDeg: number, viewLongitudeDeg: number): number =>
  longitudeDeg + 360 * Math.round((viewLongitudeDeg - longitudeDeg) / 360);

/** A place read off the map: longitude back in −180 to 180, to the centimetre. */
export const placeFromMap = (at: { readonly lat: number; readonly lng: number }): GeoPoint => ({
  latitudeDeg: toCentimetre(Math.min(MERCATOR_LIMIT_DEG, Math.max(-MERCATOR_LIMIT_DEG, at.lat))),
  longitudeDeg: toCentimetre(wrapDeg180(at.lng)),
});

/** The place some metres away, not some kilometres; bearing clockwise from true north. */
export const stepFrom = (from: GeoPoint, bearingDeg: number, distanceM: number): GeoPoint => {
  const { northM, eastM } = metresPerDegree(from.latitudeDeg);
  const latitudeDeg = from.latitudeDeg + (distanceM * cosDeg(bearingDeg)) / northM;
  const longitudeDeg = from.longitudeDeg + (distanceM * sinDeg(bearingDeg)) / eastM;
  return {
    latitudeDeg: toCentimetre(Math.min(90, Math.max(-90, latitudeDeg))),
    longitudeDeg: toCentimetre(wrapDeg180(longitudeDeg)),
  };
};

const toCentimetre = (angleDeg: number): number => Math.round(angleDeg * 1e7) / 1e7;
