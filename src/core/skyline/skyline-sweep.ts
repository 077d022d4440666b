import { asinDeg, atan2Deg, cosDeg, sinDeg, wrapDeg180, wrapDeg360 } from '../units/angle.ts';
import type { Direction } from '../units/direction.ts';
import type { Skyline, SkylinePoint } from './skyline.ts';

/** Where the phone pointed at an instant of a sweep; azimuths from true north. */
export type SweepSample = Direction & { readonly atMs: number };

/** A sample is smoothed over so long before and after it: together one period of a hand's tremor, about 10 Hz. */
const SMOOTHED_OVER_MS = 50;
/** Neighbouring points of a trace are at least so far apart. */
export const SWEEP_STEP_DEG = 1;
/** Where two neighbours are farther apart nothing was seen between them. */
export const SWEEP_GAP_DEG = 15;

/** Runs of points from the samples of a sweep: smoothed, the highest of each degree, parted at gaps. */
export const sweptRuns = (samples: readonly SweepSample[]): readonly Skyline[] =>
  runsOf(highestApart(smoothed(samples), SWEEP_STEP_DEG), SWEEP_GAP_DEG);

/** Each sample as the mean direction of those around it in time, which must rise. */
export function smoothed(samples: readonly SweepSample[]): Skyline {
  const vectors = samples.map(({ azimuthDeg, altitudeDeg }) => [
    cosDeg(altitudeDeg) * sinDeg(azimuthDeg),
    cosDeg(altitudeDeg) * cosDeg(azimuthDeg),
    sinDeg(altitudeDeg),
  ]);
  const sum = [0, 0, 0];
  const add = (index: number, sign: number): void =>
    vectors[index]?.forEach((part, axis) => {
      sum[axis] = (sum[axis] ?? 0) + sign * part;
    });
  const atMs = (index: number): number => samples[index]?.atMs ?? Infinity;
  let from = 0;
  let to = 0;
  return samples.map((sample) => {
    for (; atMs(to) <= sample.atMs + SMOOTHED_OVER_MS; to += 1) add(to, 1);
    for (; atMs(from) < sample.atMs - SMOOTHED_OVER_MS; from += 1) add(from, -1);
    const [east = 0, north = 0, up = 0] = sum;
    return {
      azimuthDeg: wrapDeg360(atan2Deg(east, north)),
      altitudeDeg: asinDeg(up / Math.hypot(east, north, up)),
    };
  });
}

/**
 * The highest points that keep a distance in azimuth from each other, from north round: every
 * point left out has one at least as high nearer than that.
 */
export function highestApart(points: Skyline, apartDeg: number): Skyline {
  const kept: SkylinePoint[] = [];
  for (const point of points.toSorted((one, other) => other.altitudeDeg - one.altitudeDeg))
    if (kept.every((other) => turnDeg(other, point) >= apartDeg)) kept.push(point);
  return kept.toSorted((one, other) => one.azimuthDeg - other.azimuthDeg);
}

const turnDeg = (one: SkylinePoint, other: SkylinePoint): number =>
  Math.abs(wrapDeg180(one.azimuthDeg - other.azimuthDeg));

/** Points in order round the horizon, parted where a gap is wider; azimuths of a run rise, past 360 if need be. */
export function runsOf(points: Skyline, gapDeg: number): readonly Skyline[] {
  const first = points[0];
  if (first === undefined) return [];
  const runs: SkylinePoint[][] = [[]];
  points.forEach((point, index) => {
    const before = points[index - 1];
    if (before !== undefined && point.azimuthDeg - before.azimuthDeg > gapDeg) runs.push([]);
    runs.at(-1)?.push(point);
  });
  const last = points.at(-1) ?? first;
  const closesThroughNorth = first.azimuthDeg + 360 - last.azimuthDeg <= gapDeg;
  if (!closesThroughNorth || runs.length === 1) return runs;
  const [afterNorth = [], ...others] = runs;
  const beforeNorth = others.at(-1) ?? [];
  return [
    ...others.slice(0, -1),
    [
      ...beforeNorth,
      ...afterNorth.map((point) => ({ ...point, azimuthDeg: point.azimuthDeg + 360 })),
    ],
  ];
}
