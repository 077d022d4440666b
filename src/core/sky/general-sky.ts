import type { SunPosition } from '../sun-moon/sun-position.ts';
import { acosDeg, radFromDeg } from '../units/angle.ts';
import type { Direction } from '../units/direction.ts';
import { unitVector } from './framing.ts';
import { GENERAL_SKIES, type GeneralSky, type GeneralSkyType } from './general-sky.data.ts';

/**
 * Luminance towards a direction over the luminance of the zenith under a standard sky. The sun's
 * apparent altitude counts. NaN below 0°. [iso15469]
 */
export const generalSkyRelativeLuminance = (
  type: GeneralSkyType,
  sun: SunPosition,
  direction: Direction,
): number => generalSky(type, sun)(direction);

/** The same as a function of direction. */
export const generalSky = (
  type: GeneralSkyType,
  sun: SunPosition,
): ((direction: Direction) => number) => {
  const sky = GENERAL_SKIES[type];
  const indicatrix = indicatrixOf(sky);
  const toSun = unitVector({ azimuthDeg: sun.azimuthDeg, altitudeDeg: sun.apparentAltitudeDeg });
  const atZenith = gradation(sky, 1) * indicatrix(toSun.up);
  return (direction) => {
    if (!(direction.altitudeDeg >= 0)) return NaN;
    const { east, north, up } = unitVector(direction);
    const cosineFromSun = east * toSun.east + north * toSun.north + up * toSun.up;
    return (gradation(sky, up) * indicatrix(cosineFromSun)) / atZenith;
  };
};

/** The change from horizon, where it is 1, to zenith. Takes the sine of an altitude, 0 to 1. */
export const gradation = (sky: GeneralSky, sineOfAltitude: number): number =>
  1 + sky.a * Math.exp(sky.b / Math.max(0, sineOfAltitude));

/** The change with the angle from the sun, 1 at 90°. Its function takes the angle's cosine. */
export const indicatrixOf = (sky: GeneralSky): ((cosineFromSun: number) => number) => {
  const { c, d, e } = sky;
  if (c === 0 && e === 0) return () => 1;
  const base = 1 - c * Math.exp(d * radFromDeg(90));
  return (cosineFromSun) =>
    base + c * Math.exp(d * radFromDeg(acosDeg(cosineFromSun))) + e * cosineFromSun * cosineFromSun;
};
