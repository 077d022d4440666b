import { wrapDeg360 } from '../units/angle.ts';
import { skylineAltitude, type Skyline, type SkylinePoint } from './skyline.ts';

/** An edge beside a run, where the trace falls back to what it was. */
const BESIDE_DEG = 0.1;
/** A run that leaves less open than this goes all round. */
const ALL_ROUND_LEAVES_DEG = 1;

export const LEAST_TRACE_ALTITUDE_DEG = -10;
export const MOST_TRACE_ALTITUDE_DEG = 89;

/**
 * A trace with runs of newly traced points in it. A run's azimuths rise, past 360 if need be. Within
 * a run its points stand alone; beside it the trace is what it was, flat at 0 where it had no point.
 */
export const withRuns = (before: Skyline, runs: readonly Skyline[]): Skyline =>
  runs.reduce(withRun, before);

function withRun(before: Skyline, run: Skyline): Skyline {
  const first = run[0];
  const last = run.at(-1);
  if (first === undefined || last === undefined) return before;
  const wideDeg = last.azimuthDeg - first.azimuthDeg;
  const traced = run.map(tracePoint);
  if (wideDeg >= 360 - ALL_ROUND_LEAVES_DEG) return traced;

  const altitudeBefore = skylineAltitude(before);
  const beside = [first.azimuthDeg - BESIDE_DEG, last.azimuthDeg + BESIDE_DEG].map((azimuthDeg) =>
    tracePoint({ azimuthDeg, altitudeDeg: altitudeBefore(azimuthDeg) }),
  );
  const left = before.filter(
    ({ azimuthDeg }) =>
      wrapDeg360(azimuthDeg - first.azimuthDeg + BESIDE_DEG) > wideDeg + 2 * BESIDE_DEG,
  );
  return [...left, ...beside.slice(0, 1), ...traced, ...beside.slice(1)];
}

const tracePoint = ({ azimuthDeg, altitudeDeg }: SkylinePoint): SkylinePoint => ({
  azimuthDeg: wrapDeg360(hundredths(azimuthDeg)),
  altitudeDeg: hundredths(
    Math.min(MOST_TRACE_ALTITUDE_DEG, Math.max(LEAST_TRACE_ALTITUDE_DEG, altitudeDeg)),
  ),
});

const hundredths = (value: number): number => Number(value.toFixed(2));
