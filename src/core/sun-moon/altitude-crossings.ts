/** Altitude of a body above any level, in degrees, at an instant in epoch milliseconds. */
export type AltitudeAt = (instantMs: number) => number;

type TrackPoint = { readonly instantMs: number; readonly altitudeDeg: number };

export type AltitudeTrack = {
  readonly altitudeAt: AltitudeAt;
  readonly points: readonly TrackPoint[];
};

export type Crossing = { readonly instantMs: number; readonly direction: 'rising' | 'falling' };

type Span = { readonly startMs: number; readonly endMs: number; readonly stepMs: number };

/**
 * A body's altitude over a span of time: samples at every step, and at each turning point between
 * them, so that between neighbours it only rises or only falls. Steps up to an hour follow sun
 * and moon. A turning point within one step of either end is not looked for.
 */
export const altitudeTrack = (altitudeAt: AltitudeAt, span: Span): AltitudeTrack => {
  const at = (instantMs: number): TrackPoint => ({ instantMs, altitudeDeg: altitudeAt(instantMs) });
  const steps = Math.ceil((span.endMs - span.startMs) / span.stepMs);
  const samples = Array.from({ length: steps + 1 }, (_, step) =>
    at(span.startMs + step * span.stepMs),
  );
  const points = samples.flatMap((middle, index) => {
    const before = samples[index - 1];
    const after = samples[index + 1];
    if (!before || !after || !turns(before, middle, after)) return [middle];
    const turning = at(turningInstantMs(altitudeAt, middle.instantMs, span.stepMs));
    return turning.instantMs < middle.instantMs ? [turning, middle] : [middle, turning];
  });
  return { altitudeAt, points };
};

/** Every instant at which the track passes the level, in order, to the millisecond. */
export const crossingsOf = (track: AltitudeTrack, levelDeg: number): readonly Crossing[] =>
  track.points.flatMap((after, index): readonly Crossing[] => {
    const before = track.points[index - 1];
    if (!before) return [];
    const wasAbove = before.altitudeDeg >= levelDeg;
    if (wasAbove === after.altitudeDeg >= levelDeg) return [];
    return [
      {
        instantMs: passesAtMs((ms) => track.altitudeAt(ms) - levelDeg, {
          startMs: before.instantMs,
          endMs: after.instantMs,
          startDeg: before.altitudeDeg - levelDeg,
          endDeg: after.altitudeDeg - levelDeg,
        }),
        direction: wasAbove ? 'falling' : 'rising',
      },
    ];
  });

const turns = (before: TrackPoint, middle: TrackPoint, after: TrackPoint): boolean =>
  middle.altitudeDeg > before.altitudeDeg !== after.altitudeDeg > middle.altitudeDeg;

/** Vertex of the parabola through three samples, drawn once more round that vertex. */
const turningInstantMs = (altitudeAt: AltitudeAt, nearMs: number, stepMs: number): number => {
  const coarseMs = nearMs + vertexOffsetMs(altitudeAt, nearMs, stepMs);
  return coarseMs + vertexOffsetMs(altitudeAt, coarseMs, stepMs);
};

const vertexOffsetMs = (altitudeAt: AltitudeAt, middleMs: number, stepMs: number): number => {
  const before = altitudeAt(middleMs - stepMs);
  const after = altitudeAt(middleMs + stepMs);
  const bend = before - 2 * altitudeAt(middleMs) + after;
  if (bend === 0) return 0;
  return stepMs * Math.min(1, Math.max(-1, (before - after) / (2 * bend)));
};

type Bracket = {
  readonly startMs: number;
  readonly endMs: number;
  readonly startDeg: number;
  readonly endDeg: number;
};

/** Root inside a bracket with a change of sign: false position, the stale end halved. */
const passesAtMs = (aboveDeg: AltitudeAt, bracket: Bracket): number => {
  let { startMs, endMs, startDeg, endDeg } = bracket;
  for (let round = 0; round < 40; round += 1) {
    const middleMs = (startMs * endDeg - endMs * startDeg) / (endDeg - startDeg);
    const middleDeg = aboveDeg(middleMs);
    if (Math.abs(middleDeg) < 1e-7 || endMs - startMs < 1) return Math.round(middleMs);
    if (middleDeg > 0 === startDeg > 0) {
      startMs = middleMs;
      startDeg = middleDeg;
      endDeg /= 2;
    } else {
      endMs = middleMs;
      endDeg = middleDeg;
      startDeg /= 2;
    }
  }
  return Math.round((startMs + endMs) / 2);
};
