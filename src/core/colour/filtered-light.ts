import { adaptation } from './adaptation.ts';
import { applied, chromaticityOf, xyzOf, type Chromaticity, type Triple } from './chromaticity.ts';
import { correlatedTemperature } from './correlated-temperature.ts';
import { LOCUS_MAX_KELVIN, LOCUS_MIN_KELVIN, whiteOfMired } from './daylight-locus.ts';
import { miredFromKelvin } from './mired.ts';
import { decodeSrgb, SRGB_FROM_XYZ, XYZ_FROM_SRGB } from './srgb.ts';

/** What a gel or a colour filter does to a light beside its stops. */
export type ColourShift = {
  /** Positive is warmer. */
  readonly miredShift: number;
  /** Green passed more than red and blue, stops; negative is magenta. */
  readonly greenStops: number;
};

/** Several on one light: shifts add, and so do stops of green. [cie15] [iso5] */
export const shiftOfAll = (shifts: readonly ColourShift[]): ColourShift => ({
  miredShift: shifts.reduce((sum, { miredShift }) => sum + miredShift, 0),
  greenStops: shifts.reduce((sum, { greenStops }) => sum + greenStops, 0),
});

const LEAST_MIRED = miredFromKelvin(LOCUS_MAX_KELVIN);
const MOST_MIRED = miredFromKelvin(LOCUS_MIN_KELVIN);

/**
 * A light behind a gel or filter. On the locus its mired and the shift add; beside the locus and
 * past its ends the shift is the gains in Bradford's cone space that it has at the nearest white.
 * Green is passed in linear sRGB. [cie15] [bradford1985] [iec61966]
 */
export function throughFilter(light: Chromaticity, shift: ColourShift): Chromaticity {
  return moreGreen(shiftedOnLocus(light, shift.miredShift), shift.greenStops);
}

function shiftedOnLocus(light: Chromaticity, miredShift: number): Chromaticity {
  if (miredShift === 0) return light;
  const own = miredFromKelvin(correlatedTemperature(light).kelvin);
  const least = Math.max(LEAST_MIRED, LEAST_MIRED - miredShift);
  const most = Math.min(MOST_MIRED, MOST_MIRED - miredShift);
  const from = Math.min(most, Math.max(least, own));
  const gains = adaptation(whiteOfMired(from), whiteOfMired(from + miredShift));
  return chromaticityOf(applied(gains, xyzOf(light, 1)));
}

const moreGreen = (light: Chromaticity, greenStops: number): Chromaticity =>
  greenStops === 0 ? light : byChannel(light, [1, 2 ** greenStops, 1]);

/** A light off a matt surface, whose colour is given as six hexadecimal digits of sRGB; '' is neutral. [iec61966] */
export function offSurface(light: Chromaticity, hex: string): Chromaticity {
  if (!/^[0-9a-f]{6}$/i.test(hex)) return light;
  const channel = (place: number): number =>
    decodeSrgb(Number.parseInt(hex.slice(2 * place, 2 * place + 2), 16) / 255);
  const gains: Triple = [channel(0), channel(1), channel(2)];
  // Black sends nothing on, so it has no colour.
  return Math.max(...gains) === 0 ? light : byChannel(light, gains);
}

/** In linear sRGB with D65 as its white, as a surface's colour is stated. */
const byChannel = (light: Chromaticity, gains: Triple): Chromaticity => {
  const [red, green, blue] = applied(SRGB_FROM_XYZ, xyzOf(light, 1));
  return chromaticityOf(
    applied(XYZ_FROM_SRGB, [red * gains[0], green * gains[1], blue * gains[2]]),
  );
};
