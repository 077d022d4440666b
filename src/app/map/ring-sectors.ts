import { cosDeg, sinDeg } from '../../core/units/angle.ts';

/** Hole of the ring as a share of its radius. */
export const RING_HOLE = 0.73;

/** Sectors run a little under the next one, or a light hairline shows between two equal tones. */
const OVERLAP_DEG = 0.6;

/** SVG paths of a ring of radius 1 round the origin, north up, the first sector centred on north. */
export const ringSectorPaths = (count: number): readonly string[] => {
  const stepDeg = 360 / count;
  return Array.from({ length: count }, (_, index) => {
    const fromDeg = (index - 0.5) * stepDeg;
    return sectorPath(fromDeg, fromDeg + stepDeg + OVERLAP_DEG);
  });
};

const sectorPath = (fromDeg: number, toDeg: number): string => {
  const large = toDeg - fromDeg > 180 ? 1 : 0;
  return (
    `M${at(fromDeg, 1)}A1,1 0 ${large} 1 ${at(toDeg, 1)}` +
    `L${at(toDeg, RING_HOLE)}A${RING_HOLE},${RING_HOLE} 0 ${large} 0 ${at(fromDeg, RING_HOLE)}Z`
  );
};

const at = (azimuthDeg: number, radius: number): string =>
  `${(radius * sinDeg(azimuthDeg)).toFixed(4)},${(-radius * cosDeg(azimuthDeg)).toFixed(4)}`;
