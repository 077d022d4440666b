import { uvOf, type Chromaticity } from './chromaticity.ts';
import { LOCUS_MAX_KELVIN, LOCUS_MIN_KELVIN, whiteOfMired } from './daylight-locus.ts';
import { kelvinFromMired, miredFromKelvin } from './mired.ts';

/** Narrowed until the temperature is good to a thousandth of a mired. */
const PRECISION_MIRED = 1e-3;
/** The whole locus is looked along finely first, so that the right bend is found; then only about it. */
const SECTIONS_AT_FIRST = 40;
const SECTIONS = 8;

export type CorrelatedTemperature = {
  /** 1667 to 25 000; an end stands for everything beyond it. */
  readonly kelvin: number;
  /** Distance from the locus in CIE 1960, positive above it, towards green. */
  readonly duv: number;
};

/** The nearest point of the white locus in CIE 1960 u, v. [cie15] */
export function correlatedTemperature(chromaticity: Chromaticity): CorrelatedTemperature {
  const { u, v } = uvOf(chromaticity);
  const distanceTo = (mired: number): number => {
    const white = uvOf(whiteOfMired(mired));
    return Math.hypot(u - white.u, v - white.v);
  };
  let low = miredFromKelvin(LOCUS_MAX_KELVIN);
  let high = miredFromKelvin(LOCUS_MIN_KELVIN);
  let sections = SECTIONS_AT_FIRST;
  while (high - low > PRECISION_MIRED) {
    const step = (high - low) / sections;
    let [nearest, least] = [low, Infinity];
    for (let index = 0; index <= sections; index += 1) {
      const distance = distanceTo(low + index * step);
      if (distance >= least) continue;
      nearest = low + index * step;
      least = distance;
    }
    low = Math.max(low, nearest - step);
    high = Math.min(high, nearest + step);
    sections = SECTIONS;
  }
  const mired = (low + high) / 2;
  const above = v > uvOf(whiteOfMired(mired)).v;
  return { kelvin: kelvinFromMired(mired), duv: (above ? 1 : -1) * distanceTo(mired) };
}
