import { getMoonIllumination, getMoonPosition } from 'suncalc';
import type { GeoPoint } from '../place/geo-point.ts';
import { asinDeg, sinDeg } from '../units/angle.ts';
import { refractionDeg } from './refraction.ts';
import type { SunPosition } from './sun-position.ts';
import { trueAltitudeFromSuncalc } from './suncalc-altitude.ts';

export type MoonPosition = SunPosition & {
  /** From the place to the moon's centre. */
  readonly distanceKm: number;
  /** Share of the disc that the sun lights, 0 new to 1 full; seen from the earth's centre. */
  readonly illuminatedFraction: number;
  /** Angle sun–moon–earth, 0 full to 180 new. */
  readonly phaseAngleDeg: number;
  /** Angle under which the earth's radius is seen from the moon, 0.90 to 1.03. */
  readonly horizontalParallaxDeg: number;
};

const EARTH_RADIUS_KM = 6378.14;

/**
 * Where the moon's centre stands, seen from the place: parallax is in the altitude. Instant in
 * epoch milliseconds (UT). [meeus1998, ch. 40, 47 and 48], good to 0.02° between 1950 and 2050.
 */
export const moonPosition = (instantMs: number, place: GeoPoint): MoonPosition => {
  const instant = new Date(instantMs);
  const lit = getMoonIllumination(instant);
  return {
    ...moonDirection(instantMs, place),
    illuminatedFraction: lit.fraction,
    phaseAngleDeg: 360 * Math.abs(lit.phase - 0.5),
  };
};

type MoonDirection = Omit<MoonPosition, 'illuminatedFraction' | 'phaseAngleDeg'>;

/** The same without the moon's phase, at half the price. */
export const moonDirection = (instantMs: number, place: GeoPoint): MoonDirection => {
  const seen = getMoonPosition(new Date(instantMs), place.latitudeDeg, place.longitudeDeg);
  const trueAltitudeDeg = trueAltitudeFromSuncalc(seen.altitude);
  const towardCentreKm = EARTH_RADIUS_KM * sinDeg(trueAltitudeDeg);
  return {
    azimuthDeg: seen.azimuth,
    trueAltitudeDeg,
    apparentAltitudeDeg: trueAltitudeDeg + refractionDeg(trueAltitudeDeg),
    distanceKm:
      Math.sqrt(seen.distance ** 2 - EARTH_RADIUS_KM ** 2 + towardCentreKm ** 2) - towardCentreKm,
    horizontalParallaxDeg: asinDeg(EARTH_RADIUS_KM / seen.distance),
  };
};
