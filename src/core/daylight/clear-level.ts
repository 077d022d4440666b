import { cosDeg } from '../units/angle.ts';

/**
 * Segments of log10 lux = l0 + l1 x + l2 x² + l3 x³, x = true altitude / 90, from each lower
 * bound up to the one before. [explanatorySupplement1992]
 */
const SEGMENTS = [
  { fromDeg: 20, l0: 3.74, l1: 3.97, l2: -4.07, l3: 1.47 },
  { fromDeg: 5, l0: 3.05, l1: 13.28, l2: -45.98, l3: 64.33 },
  { fromDeg: -0.8, l0: 2.88, l1: 22.26, l2: -207.64, l3: 1034.3 },
  { fromDeg: -5, l0: 2.88, l1: 21.81, l2: -258.11, l3: -858.36 },
  { fromDeg: -12, l0: 2.7, l1: 12.17, l2: -431.69, l3: -1899.83 },
  { fromDeg: -18, l0: 13.84, l1: 262.72, l2: 1447.42, l3: 2797.93 },
] as const;

type Segment = Omit<(typeof SEGMENTS)[number], 'fromDeg'>;

const segmentLux = ({ l0, l1, l2, l3 }: Segment, altitudeDeg: number): number => {
  const x = altitudeDeg / 90;
  return 10 ** (l0 + x * (l1 + x * (l2 + x * l3)));
};

/** Two joins step up by 0.3 and 1 % as the sun sinks; there the value above the join is held. */
const CAPPED_SEGMENTS = SEGMENTS.map((segment, index) => {
  const above = SEGMENTS[index - 1];
  return {
    ...segment,
    capLux: above === undefined ? Infinity : segmentLux(above, above.fromDeg),
  };
});

/** The sun's distance in the illuminance, mean 1, largest in early January. [rp21] */
export const dayFactor = (dayOfYear: number): number =>
  1 + 0.034 * cosDeg((360 * (dayOfYear - 2)) / 365);

/**
 * Global horizontal illuminance of a clear sky at sea level and the sun's mean distance, from
 * the sun's true altitude, −18 to 90; below −18 the value at −18, 0.00064 lx.
 * [explanatorySupplement1992]
 */
export const clearLevelLux = (trueAltitudeDeg: number): number => {
  const altitudeDeg = Math.max(trueAltitudeDeg, -18);
  for (const segment of CAPPED_SEGMENTS) {
    if (altitudeDeg >= segment.fromDeg) {
      return Math.min(segmentLux(segment, altitudeDeg), segment.capLux);
    }
  }
  return NaN;
};
