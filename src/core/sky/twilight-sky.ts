import type { SunPosition } from '../sun-moon/sun-position.ts';
import { acosDeg, cosDeg, sinDeg } from '../units/angle.ts';
import { type Direction, angleBetweenDeg } from '../units/direction.ts';

/** Extinction in the visual band, magnitudes per air mass; in use 0.2 to 0.3. [schaefer1998] */
const EXTINCTION = 0.25;
/** Magnitude of the sun, and the zero point of the formulas. [schaefer1998] */
const SUN_MAGNITUDE = -26.74;
const ZERO_MAGNITUDE = -11.05;
/** Air mass towards a sun that is down. [schaefer1998] */
const AIR_MASS_OF_SET_SUN = 40;
/** Erg-based brightness of a nanolambert, and a nanolambert in cd/m². [schaefer1998] */
const CD_M2_PER_BRIGHTNESS = 3.183e-6 / 1.11e-15;
/** The glow grows as one over the angle from the sun down to here, and stays. */
const LEAST_ANGLE_DEG = 10;

const DAY_SCATTERING = 10 ** 5.36;

/** What the formulas need of the sun, the same for every direction. */
export type TwilightSun = {
  readonly glow: number;
  readonly day: number;
  /** Share of the sun's light that its own air mass lets through. */
  readonly clearness: number;
  /** The light of day far from the sun. */
  readonly leastDay: number;
};

export const twilightSun = (sun: SunPosition): TwilightSun => {
  const airMassOfSun =
    sun.apparentAltitudeDeg < 0
      ? AIR_MASS_OF_SET_SUN
      : twilightAirMass(sinDeg(sun.apparentAltitudeDeg));
  const day = brightness(SUN_MAGNITUDE - ZERO_MAGNITUDE + 43.27);
  const clearness = brightness(EXTINCTION * airMassOfSun);
  return {
    glow: brightness(SUN_MAGNITUDE - ZERO_MAGNITUDE + 32.5 - sun.trueAltitudeDeg),
    day,
    clearness,
    leastDay: day * 440_000 * (1 - clearness),
  };
};

/** Share of light that the air towards a direction scatters. Sine of its altitude, 0 to 1. */
export const scatteredShare = (sineOfAltitude: number): number =>
  1 - brightness(EXTINCTION * twilightAirMass(sineOfAltitude));

/** How the glow falls from horizon to zenith. Altitude 0 to 90. */
export const glowTowards = (altitudeDeg: number): number =>
  brightness(-(90 - altitudeDeg) / (360 * EXTINCTION));

/**
 * Luminance in cd/m² at an angle from the sun: the smaller of the glow of twilight and the light
 * of day. Takes of the direction `scatteredShare`, and that times `glowTowards`. [schaefer1998]
 */
export const twilightLuminance = (
  sun: TwilightSun,
  cosineFromSun: number,
  scattered: number,
  glowing: number,
): number => {
  const fromSunDeg = acosDeg(cosineFromSun);
  const twilight = (sun.glow * glowing * 100) / Math.max(LEAST_ANGLE_DEG, fromSunDeg);
  const leastDay = sun.leastDay * scattered;
  if (twilight <= leastDay) return CD_M2_PER_BRIGHTNESS * twilight;
  const scattering =
    6.2e7 / (fromSunDeg * fromSunDeg) +
    powerOfTen(6.15 - fromSunDeg / 40) +
    DAY_SCATTERING * (1.06 + cosineFromSun * cosineFromSun);
  const day = leastDay + sun.day * sun.clearness * scattered * scattering;
  return CD_M2_PER_BRIGHTNESS * Math.min(twilight, day);
};

/**
 * Luminance of a clear twilight sky in cd/m², an approximation: spread at least one stop.
 * Extinction 0.25, no moon, no stars. NaN below 0°. [schaefer1998]
 */
export const twilightSkyLuminance = (sun: SunPosition, direction: Direction): number => {
  if (!(direction.altitudeDeg >= 0)) return NaN;
  const sunDirection = { azimuthDeg: sun.azimuthDeg, altitudeDeg: sun.apparentAltitudeDeg };
  const scattered = scatteredShare(sinDeg(direction.altitudeDeg));
  return twilightLuminance(
    twilightSun(sun),
    cosDeg(angleBetweenDeg(sunDirection, direction)),
    scattered,
    scattered * glowTowards(direction.altitudeDeg),
  );
};

const twilightAirMass = (sineOfAltitude: number): number =>
  1 / (sineOfAltitude + 0.025 * Math.exp(-11 * sineOfAltitude));

const brightness = (magnitude: number): number => powerOfTen(-0.4 * magnitude);

const powerOfTen = (exponent: number): number => Math.exp(Math.LN10 * exponent);
