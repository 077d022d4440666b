import type { Chromaticity } from './chromaticity.ts';
import { kelvinFromMired, miredFromKelvin } from './mired.ts';

/** Both ends are those of the published fits. */
export const LOCUS_MIN_KELVIN = 1667;
export const LOCUS_MAX_KELVIN = 25_000;

/** Phases of daylight, 4000 to 25 000 K. [cie15] */
export const daylightChromaticity = (kelvin: number): Chromaticity => {
  const t = 1e3 / kelvin;
  const x =
    kelvin <= 7000
      ? -4.607 * t ** 3 + 2.9678 * t ** 2 + 0.09911 * t + 0.244063
      : -2.0064 * t ** 3 + 1.9018 * t ** 2 + 0.24748 * t + 0.23704;
  return { x, y: -3 * x * x + 2.87 * x - 0.275 };
};

/** Black body, 1667 to 25 000 K. [kim2002] */
export const blackBodyChromaticity = (kelvin: number): Chromaticity => {
  const t = 1e3 / kelvin;
  const x =
    kelvin <= 4000
      ? -0.2661239 * t ** 3 - 0.2343589 * t ** 2 + 0.8776956 * t + 0.17991
      : -3.0258469 * t ** 3 + 2.1070379 * t ** 2 + 0.2226347 * t + 0.24039;
  return { x, y: blackBodyY(kelvin, x) };
};

const blackBodyY = (kelvin: number, x: number): number => {
  if (kelvin <= 2222) return -1.1063814 * x ** 3 - 1.3481102 * x ** 2 + 2.18555832 * x - 0.20219683;
  if (kelvin <= 4000)
    return -0.9549476 * x ** 3 - 1.37418593 * x ** 2 + 2.09137015 * x - 0.16748867;
  return 3.081758 * x ** 3 - 5.8733867 * x ** 2 + 3.75112997 * x - 0.37001483;
};

/** Between these the two loci are joined, linearly in mired; where one ends is our choice. */
const JOIN_FROM_KELVIN = 4000;
const JOIN_TO_KELVIN = 5000;

/**
 * The white of a colour temperature: black body up to 4000 K, daylight from 5000 K, joined between.
 * Outside 1667 to 25 000 K the nearer end. [cie15] [kim2002]
 */
export const whiteOfKelvin = (kelvin: number): Chromaticity => {
  const held = Math.min(LOCUS_MAX_KELVIN, Math.max(LOCUS_MIN_KELVIN, kelvin));
  if (held <= JOIN_FROM_KELVIN) return blackBodyChromaticity(held);
  if (held >= JOIN_TO_KELVIN) return daylightChromaticity(held);
  const warm = miredFromKelvin(JOIN_FROM_KELVIN);
  const share = (warm - miredFromKelvin(held)) / (warm - miredFromKelvin(JOIN_TO_KELVIN));
  const one = blackBodyChromaticity(held);
  const other = daylightChromaticity(held);
  return { x: one.x + share * (other.x - one.x), y: one.y + share * (other.y - one.y) };
};

/** The white of so many mired; a gelled head is its own mired plus the gel's shift. */
export const whiteOfMired = (mired: number): Chromaticity =>
  whiteOfKelvin(mired > 0 ? kelvinFromMired(mired) : LOCUS_MAX_KELVIN);
