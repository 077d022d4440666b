import { tanDeg } from '../units/angle.ts';

const PRESSURE_HPA = 1013;
const TEMPERATURE_C = 15;
const AIR = (PRESSURE_HPA / 1010) * (283 / (273 + TEMPERATURE_C));

/** Sæmundsson's formula holds down to here. */
const FORMULA_END_DEG = -1;
const FADE_END_DEG = -3;

/**
 * How much the air lifts a body that stands at a true altitude, at sea level, 1013 hPa and 15 °C.
 * True altitude, −90 to 90. Sæmundsson's formula [saemundsson1986] with the usual factor for
 * pressure and temperature [meeus1998, ch. 16]; it ends at true −1°, from there the lift fades
 * linearly to none at −3°, so that the apparent altitude has no step.
 */
export const refractionDeg = (trueAltitudeDeg: number): number => {
  if (trueAltitudeDeg <= FADE_END_DEG) return 0;
  const altitudeDeg = Math.max(trueAltitudeDeg, FORMULA_END_DEG);
  const faded = Math.min(1, (trueAltitudeDeg - FADE_END_DEG) / (FORMULA_END_DEG - FADE_END_DEG));
  return (faded * AIR * saemundssonArcmin(altitudeDeg)) / 60;
};

/** Sæmundsson's formula as printed: 1010 hPa, 10 °C, true altitude −1 to 90. [saemundsson1986] */
export const saemundssonArcmin = (trueAltitudeDeg: number): number =>
  1.02 / tanDeg(trueAltitudeDeg + 10.3 / (trueAltitudeDeg + 5.11));
