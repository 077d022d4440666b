import { getPosition } from 'suncalc';
import type { GeoPoint } from '../place/geo-point.ts';
import { cosDeg } from '../units/angle.ts';
import { refractionDeg } from './refraction.ts';
import { trueAltitudeFromSuncalc } from './suncalc-altitude.ts';

export type SunPosition = {
  /** Clockwise from true north, 0 ≤ a < 360. */
  readonly azimuthDeg: number;
  /** Of the disc's centre above the level horizon, without refraction. */
  readonly trueAltitudeDeg: number;
  /** The same with refraction at sea level, 1013 hPa and 15 °C. */
  readonly apparentAltitudeDeg: number;
};

/** Horizontal parallax at one astronomical unit, 8.794″. [meeus1998, ch. 40] */
const SUN_PARALLAX_DEG = 8.794 / 3600;

/**
 * Where the sun's centre stands, seen from the place. Instant in epoch milliseconds (UT). Meeus'
 * low-precision series [meeus1998, ch. 25], good to 0.015° between 1950 and 2050.
 */
export const sunPosition = (instantMs: number, place: GeoPoint): SunPosition => {
  const seen = getPosition(new Date(instantMs), place.latitudeDeg, place.longitudeDeg);
  const fromEarthCentreDeg = trueAltitudeFromSuncalc(seen.altitude);
  const trueAltitudeDeg = fromEarthCentreDeg - SUN_PARALLAX_DEG * cosDeg(fromEarthCentreDeg);
  return {
    azimuthDeg: seen.azimuth,
    trueAltitudeDeg,
    apparentAltitudeDeg: trueAltitudeDeg + refractionDeg(trueAltitudeDeg),
  };
};
