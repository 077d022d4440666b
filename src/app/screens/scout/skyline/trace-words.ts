import type { PhotoProblem, PhotoSight } from '../../../../core/skyline/photo-sight.ts';
import { LEAST_APART_DEG, LEAST_APART_SHARE } from '../../../../core/skyline/photo-sight.ts';
import type { TraceLineFault } from '../../../../core/skyline/trace-text.ts';
import type { Skyline } from '../../../../core/skyline/skyline.ts';
import { wrapDeg360 } from '../../../../core/units/angle.ts';
import { bearingText, tenths } from '../../../ui/figure-text.ts';

const whole = (azimuthDeg: number): string => `${Math.round(wrapDeg360(azimuthDeg)) % 360}°`;

/** '34 points from 212° to 338°, highest 7.3° at 310°'. */
export function runsText(runs: readonly Skyline[]): string {
  const points = runs.flat();
  const [first, ...others] = points;
  if (first === undefined) return 'no point yet';
  const highest = others.reduce(
    (one, other) => (other.altitudeDeg > one.altitudeDeg ? other : one),
    first,
  );
  const arcs = runs.map((run) => {
    const from = run[0]?.azimuthDeg ?? 0;
    const to = run.at(-1)?.azimuthDeg ?? 0;
    if (run.length === 1) return `at ${whole(from)}`;
    return to - from >= 359 ? 'all round' : `from ${whole(from)} to ${whole(to)}`;
  });
  const counted = points.length === 1 ? '1 point' : `${points.length} points`;
  return `${counted} ${arcs.join(' and ')}, highest ${tenths(highest.altitudeDeg)}° at ${whole(highest.azimuthDeg)}`;
}

export const lineFaultText = ({ line, sentence }: TraceLineFault): string =>
  sentence.startsWith('and ') ? sentence : `line ${line}: ${sentence}`;

/** Where a photo looks, and how far that can be trusted. */
export function sightText({ middle, horizontalFieldDeg, rollDeg, missDeg }: PhotoSight): string {
  const tilt =
    Math.abs(middle.altitudeDeg) < 0.05
      ? 'level'
      : `${tenths(Math.abs(middle.altitudeDeg))}° ${middle.altitudeDeg > 0 ? 'up' : 'down'}`;
  const roll =
    Math.abs(rollDeg) < 0.05
      ? ''
      : `, turned ${tenths(Math.abs(rollDeg))}° ${rollDeg > 0 ? 'clockwise' : 'anticlockwise'}`;
  return `${horizontalFieldDeg.toFixed(0)}° wide, its middle at ${bearingText(middle.azimuthDeg)}, ${tilt}${roll}; it misses the two points by ${missDeg.toFixed(2)}°`;
}

export const stretchText = ({ stretchPerDegree }: PhotoSight): string =>
  `One degree wrong in either bearing stretches it by ${Math.max(1, Math.round(stretchPerDegree * 100))} %.`;

/** Photos are held level within this, or one of the altitudes is wrong. */
const MUCH_ROLL_DEG = 8;
/** More than the points themselves are known. */
const MUCH_MISS_DEG = 1;

export function sightDoubts(sight: PhotoSight, photoFieldDeg: number | null): readonly string[] {
  const { rollDeg, missDeg, horizontalFieldDeg } = sight;
  return [
    Math.abs(rollDeg) > MUCH_ROLL_DEG
      ? `By the two altitudes the camera was turned by ${tenths(Math.abs(rollDeg))}°. If it was not, one of them is wrong.`
      : '',
    missDeg > MUCH_MISS_DEG
      ? `The two altitudes do not go together: they are missed by ${tenths(missDeg)}°.`
      : '',
    photoFieldDeg !== null && Math.abs(horizontalFieldDeg / photoFieldDeg - 1) > 0.1
      ? `By its focal length the photo is ${photoFieldDeg.toFixed(0)}° wide, by the two points ${horizontalFieldDeg.toFixed(0)}°: it was cropped, or a point is wrong.`
      : '',
  ].filter((doubt) => doubt !== '');
}

export function photoProblemText(problem: PhotoProblem): string {
  switch (problem.kind) {
    case 'too-close':
      return `The two points are too close to fix the scale: found ${tenths(problem.apartDeg)}° and ${Math.round(problem.apartShare * 100)} % of the width between them, expected at least ${LEAST_APART_DEG}° and ${Math.round(LEAST_APART_SHARE * 100)} %.`;
    case 'no-such-picture':
      return `No such picture shows these two points where they are marked: found ${tenths(problem.apartDeg)}° between them. Check the bearings, or choose the other kind of picture.`;
  }
}
