import { wrapDeg360 } from '../units/angle.ts';
import { skylineAltitude, type Skyline } from './skyline.ts';

export type SkylineBand = { readonly lowestDeg: number; readonly highestDeg: number };

const BINS = 360;

/**
 * Between which altitudes the edge of the sky lies over a range of azimuths, the level horizon
 * where it is lower: taken over whole degrees, so at least as wide as it is. Azimuths clockwise,
 * any turn, the second no less than the first.
 */
export const skylineBand = (
  skyline: Skyline,
): ((fromAzimuthDeg: number, toAzimuthDeg: number) => SkylineBand) => {
  const altitude = skylineAltitude(skyline);
  const lowest = new Float64Array(BINS).fill(Infinity);
  const highest = new Float64Array(BINS).fill(-Infinity);
  const take = (bin: number, altitudeDeg: number): void => {
    const at = (bin + BINS) % BINS;
    const shownDeg = Math.max(0, altitudeDeg);
    lowest[at] = Math.min(lowest[at] ?? NaN, shownDeg);
    highest[at] = Math.max(highest[at] ?? NaN, shownDeg);
  };
  for (let bin = 0; bin < BINS; bin += 1) {
    take(bin, altitude(bin));
    take(bin - 1, altitude(bin));
  }
  for (const point of skyline) {
    const azimuthDeg = wrapDeg360(point.azimuthDeg);
    take(Math.floor(azimuthDeg), point.altitudeDeg);
    if (Number.isInteger(azimuthDeg)) take(azimuthDeg - 1, point.altitudeDeg);
  }
  return (fromAzimuthDeg, toAzimuthDeg) => {
    let lowestDeg = Infinity;
    let highestDeg = -Infinity;
    for (let bin = Math.floor(fromAzimuthDeg); bin <= toAzimuthDeg; bin += 1) {
      const at = wrapDeg360(bin);
      lowestDeg = Math.min(lowestDeg, lowest[at] ?? NaN);
      highestDeg = Math.max(highestDeg, highest[at] ?? NaN);
    }
    return { lowestDeg, highestDeg };
  };
};
