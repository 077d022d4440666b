import type { GroundVector } from '../../core/place/geodesy.ts';
import { bearingFine } from './bearing-text.ts';

/** '412 m, bearing 300.4° WNW'; no bearing where both ends are one place. */
export const measuredText = ({ distanceM, bearingDeg }: GroundVector): string =>
  distanceM < 0.5 ? '0 m' : `${lengthText(distanceM)}, bearing ${bearingFine(bearingDeg)}`;

const lengthText = (lengthM: number): string => {
  if (lengthM < 1000) return `${Math.round(lengthM)} m`;
  const kilometres = lengthM / 1000;
  return `${kilometres < 99.5 ? kilometres.toPrecision(3) : Math.round(kilometres).toLocaleString('en-GB')} km`;
};
