import { Body, Equator, Horizon, MakeTime, Observer } from 'astronomy-engine';

import { tan } from './degrees.ts';

export type SunThere = {
  readonly azimuth: number;
  /** Without refraction. */
  readonly trueAltitude: number;
  /** With refraction. */
  readonly apparentAltitude: number;
};

/** The sun's place by another library (VSOP87, equator of date, with aberration, airless). */
export function sunThere(
  instantMs: number,
  latitude: number,
  longitude: number,
  heightM: number,
): SunThere {
  const observer = new Observer(latitude, longitude, heightM);
  const time = MakeTime(new Date(instantMs));
  const { ra, dec } = Equator(Body.Sun, time, observer, true, true);
  const { azimuth, altitude } = Horizon(time, observer, ra, dec);
  return { azimuth, trueAltitude: altitude, apparentAltitude: altitude + refraction(altitude) };
}

/**
 * Sæmundsson, Sky & Telescope 72 (1986) 70, arc minutes at 1010 hPa and 10 °C, with Meeus' factor
 * for 1013 hPa and 15 °C (Astronomical Algorithms, ch. 16). Below true −1° it fades to none at −3°.
 */
export function refraction(trueAltitude: number): number {
  const lowest = Math.max(trueAltitude, -1);
  const minutes = 1.02 / tan(lowest + 10.3 / (lowest + 5.11));
  const air = (1013 / 1010) * (283 / (273 + 15));
  const fading = Math.min(1, Math.max(0, (trueAltitude + 3) / 2));
  return (minutes / 60) * air * fading;
}
