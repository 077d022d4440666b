import type { Chromaticity, Triple } from './chromaticity.ts';
import { correlatedTemperature } from './correlated-temperature.ts';
import { LOCUS_MAX_KELVIN, LOCUS_MIN_KELVIN } from './daylight-locus.ts';
import { throughFilter, type ColourShift } from './filtered-light.ts';
import { kelvinFromMired, miredFromKelvin } from './mired.ts';
import { neutralOf, renderedLight, type WhiteBalance } from './white-balance.ts';

/** How a light looks against what the camera renders as neutral. */
export type SeenLight = {
  /** Positive is warmer. */
  readonly warmerMired: number;
  /** Thousandths of CIE 1960 across the locus, the unit of the tint; positive is greener. Past its ends it says nothing. */
  readonly greener: number;
  /** Past an end of the locus: at least so much. */
  readonly isBeyondKelvin: boolean;
};

/** Differences from here on are seen on skin, common practice. [lightingPractice] */
const SEEN_MIRED = 10;
const SEEN_GREEN = 4;
const REFINEMENTS = 2;
/** As near to an end of the locus as its search gets. */
const AT_END = 0.999;

/** Mired and green of a light less those of the white that the setting takes for neutral. [cie15] */
export function seenLight(light: Chromaticity, setting: WhiteBalance): SeenLight {
  const { kelvin, duv } = correlatedTemperature(light);
  const neutral = correlatedTemperature(neutralOf(setting));
  return {
    warmerMired: miredFromKelvin(kelvin) - miredFromKelvin(neutral.kelvin),
    greener: (duv - neutral.duv) * 1000,
    isBeyondKelvin: kelvin > LOCUS_MAX_KELVIN * AT_END || kelvin < LOCUS_MIN_KELVIN / AT_END,
  };
}

export const isNeutral = ({ warmerMired, greener, isBeyondKelvin }: SeenLight): boolean =>
  !isBeyondKelvin && Math.abs(warmerMired) < SEEN_MIRED && Math.abs(greener) < SEEN_GREEN;

/** The setting under which a light comes out neutral. */
export function neutralSetting(light: Chromaticity): WhiteBalance {
  const { kelvin, duv } = correlatedTemperature(light);
  let found: WhiteBalance = { kelvin, tint: duv * 1000 };
  // Where the locus bends its nearest point is not straight under the light.
  for (let step = 0; step < REFINEMENTS; step += 1) {
    const { warmerMired, greener } = seenLight(light, found);
    found = {
      kelvin: kelvinFromMired(miredFromKelvin(found.kelvin) + warmerMired),
      tint: found.tint + greener,
    };
  }
  return found;
}

/** What filters on the lens do to red, green and blue under a setting, a neutral light's green held at its luminance. */
export const filterGains = (shift: ColourShift, setting: WhiteBalance): Triple =>
  renderedLight(throughFilter(neutralOf(setting), shift), setting);
