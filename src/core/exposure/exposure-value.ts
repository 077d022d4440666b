/** Reflected-light calibration constant K, cd/m² · s · ISO. [iso2720] */
export const REFLECTED_LIGHT_K = 12.5;
/** Incident-light calibration constant C for a flat receptor, lx · s · ISO. [iso2720] */
export const FLAT_RECEPTOR_C = 250;
/** Incident-light calibration constant C for a hemispherical receptor (dome), in common use. [iso2720] */
export const DOME_RECEPTOR_C = 330;

/** EV at ISO 100 that renders a luminance as mid-grey; 0 cd/m² gives −∞. [iso2720] */
export const ev100FromLuminance = (luminanceCdM2: number): number =>
  Math.log2((luminanceCdM2 * 100) / REFLECTED_LIGHT_K);

export const luminanceFromEv100 = (ev100: number): number => (2 ** ev100 * REFLECTED_LIGHT_K) / 100;

/** EV at ISO 100 for an illuminance on a flat receptor; 0 lx gives −∞. [iso2720] */
export const ev100FromIlluminance = (illuminanceLux: number): number =>
  Math.log2((illuminanceLux * 100) / FLAT_RECEPTOR_C);

/** EV at ISO 100 that a dome meter shows for an illuminance on its dome. [iso2720] */
export const ev100FromDomeIlluminance = (illuminanceLux: number): number =>
  Math.log2((illuminanceLux * 100) / DOME_RECEPTOR_C);
