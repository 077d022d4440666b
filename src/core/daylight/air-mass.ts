import { sinDeg } from '../units/angle.ts';

/**
 * Path of the sun's light through the air over the path from the zenith at sea level. Apparent
 * altitude, 0 to 90; below 0 the value at 0, 37.9. [kastenYoung1989]
 */
export const relativeAirMass = (apparentAltitudeDeg: number): number => {
  const altitudeDeg = Math.max(apparentAltitudeDeg, 0);
  return 1 / (sinDeg(altitudeDeg) + 0.50572 * (altitudeDeg + 6.07995) ** -1.6364);
};

/** Air pressure at a height over that at sea level, standard atmosphere. [iso2533] */
export const pressureRatio = (elevationM: number): number =>
  (((44331.514 - elevationM) / 11880.516) ** (1 / 0.1902632) * 100) / 101325;
