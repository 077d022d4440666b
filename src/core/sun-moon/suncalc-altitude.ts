import { degFromRad, radFromDeg } from '../units/angle.ts';

/**
 * The true altitude behind an altitude that suncalc 2 returns. suncalc adds Sæmundsson's
 * refraction [meeus1998, ch. 16] at 1010 hPa and 10 °C to every altitude, and below the horizon
 * the value of the horizon itself. Its own rounding of the constants is used here, up to 0.001°
 * from the printed ones, so that taking the refraction off leaves nothing behind.
 */
export const trueAltitudeFromSuncalc = (suncalcAltitudeDeg: number): number => {
  const altitudeRad = radFromDeg(suncalcAltitudeDeg);
  let trueRad = altitudeRad - suncalcRefractionRad(0);
  if (trueRad <= 0) return degFromRad(trueRad);
  // The lift changes by less than a sixth of the altitude's change: each round gains a digit.
  for (let round = 0; round < 9; round += 1) trueRad = altitudeRad - suncalcRefractionRad(trueRad);
  return degFromRad(trueRad);
};

const suncalcRefractionRad = (trueRad: number): number =>
  0.0002967 / Math.tan(trueRad + 0.00312536 / (trueRad + 0.08901179));
