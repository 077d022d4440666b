import type { ReactNode } from 'react';

import type { Spot } from '../../../../core/plan/shoot.ts';
import { traceOf } from '../../../../core/plan/setup-light.ts';
import type { Skyline } from '../../../../core/skyline/skyline.ts';
import { skylineSteps } from '../skyline-picture.ts';

const LEAST_TOP_DEG = 10;

/** The new runs over the trace that is there, north round to north. */
export function TracePreview({
  spot,
  runs,
}: {
  readonly spot: Spot;
  readonly runs: readonly Skyline[];
}): ReactNode {
  const before = skylineSteps(traceOf(spot));
  const topDeg = Math.max(
    LEAST_TOP_DEG,
    ...before.map(({ altitudeDeg }) => altitudeDeg + 2),
    ...runs.flat().map(({ altitudeDeg }) => altitudeDeg + 2),
  );
  const at = (points: Skyline, shiftDeg: number): string =>
    points
      .map(({ azimuthDeg, altitudeDeg }) => `${azimuthDeg + shiftDeg},${topDeg - altitudeDeg}`)
      .join(' ');
  return (
    <figure className="trace-preview">
      <svg
        viewBox={`0 0 360 ${topDeg + 2}`}
        preserveAspectRatio="none"
        role="img"
        aria-label="The new trace, thick, over the one that is there, thin, from north round to north"
      >
        <polyline className="before" points={at(before, 0)} />
        {runs.flatMap((run) =>
          [-360, 0, 360].map((shiftDeg) => (
            <polyline key={`${shiftDeg} ${run[0]?.azimuthDeg}`} points={at(run, shiftDeg)} />
          )),
        )}
      </svg>
      <figcaption className="quiet">
        Thick: new. Thin: the trace that is there. North, east, south, west, north; up to{' '}
        {Math.round(topDeg)}°.
      </figcaption>
    </figure>
  );
}
