import { SUN_RADIUS_DEG } from '../sun-moon/sun-disc.ts';
import { wrapDeg360 } from '../units/angle.ts';

export type SkylinePoint = {
  /** Clockwise from true north, any turn. */
  readonly azimuthDeg: number;
  /** Apparent altitude of the edge between ground and sky. */
  readonly altitudeDeg: number;
};

/**
 * The edge round the horizon in any order, straight in azimuth and altitude between points,
 * closed through north. Two points at one azimuth are a vertical edge. None is flat at 0.
 */
export type Skyline = readonly SkylinePoint[];

/** The skyline as a fast function of azimuth; on a vertical edge it gives the later point. */
export const skylineAltitude = (skyline: Skyline): ((azimuthDeg: number) => number) => {
  const points = skyline
    .map((point) => ({ ...point, azimuthDeg: wrapDeg360(point.azimuthDeg) }))
    .toSorted((first, second) => first.azimuthDeg - second.azimuthDeg);
  const first = points[0];
  const last = points.at(-1);
  if (first === undefined || last === undefined) return () => 0;

  const closed = [
    { ...last, azimuthDeg: last.azimuthDeg - 360 },
    ...points,
    { ...first, azimuthDeg: first.azimuthDeg + 360 },
  ];
  const azimuths = Float64Array.from(closed, (point) => point.azimuthDeg);
  const altitudes = Float64Array.from(closed, (point) => point.altitudeDeg);
  const slopes = Float64Array.from(closed, (point, index) => {
    const next = closed[index + 1] ?? point;
    const widthDeg = next.azimuthDeg - point.azimuthDeg;
    return widthDeg > 0 ? (next.altitudeDeg - point.altitudeDeg) / widthDeg : 0;
  });

  return (azimuthDeg) => {
    const azimuth = wrapDeg360(azimuthDeg);
    let low = 0;
    let high = azimuths.length - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((azimuths[middle] ?? NaN) <= azimuth) low = middle;
      else high = middle;
    }
    return (altitudes[low] ?? NaN) + (slopes[low] ?? NaN) * (azimuth - (azimuths[low] ?? NaN));
  };
};

/**
 * Share of the sun's disc above a skyline, 0 to 1: linear in the apparent altitude of the
 * centre from one radius below the edge to one above.
 */
export const discShareAbove = (
  sun: { readonly apparentAltitudeDeg: number },
  skylineAltitudeDeg: number,
): number => {
  const aboveDeg = sun.apparentAltitudeDeg - skylineAltitudeDeg;
  return Math.min(1, Math.max(0, (aboveDeg + SUN_RADIUS_DEG) / (2 * SUN_RADIUS_DEG)));
};
