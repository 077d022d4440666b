import { metresPerDegree } from '../../core/place/metres-per-degree.ts';
import type { Corner } from '../../core/skyline/obstacle.ts';
import { signedDoubleArea, simpleRings } from '../../core/skyline/simple-rings.ts';
import { wrapDeg180 } from '../../core/units/angle.ts';
import { cutLine, cutRing } from './cut-at-antimeridian.ts';
import { withFewerCorners } from './fewer-corners.ts';

export const MOST_CORNERS = 2000;
const MOST_WRITTEN_CORNERS = 50_000;
const LEAST_AREA_M2 = 0.1;
/** Degrees are kept to 11 cm. */
const PER_DEGREE = 1e6;

export type CleanOutline = {
  /** More than one where it crosses the antimeridian. */
  readonly pieces: readonly (readonly Corner[])[];
  readonly crossesItself: boolean;
  readonly wasThinned: boolean;
};

/**
 * Corners as they are kept: rounded, none twice in a row, the first not repeated, at most 2,000, cut
 * at the antimeridian. A string says what is wrong with them.
 */
export function cleanOutline(
  written: readonly unknown[],
  { isRing }: { readonly isRing: boolean },
): CleanOutline | string {
  if (written.length > MOST_WRITTEN_CORNERS) return 'with more than 50,000 corners';
  const corners: Corner[] = [];
  for (const position of written) {
    const corner = cornerFrom(position);
    if (typeof corner === 'string') return corner;
    const before = corners.at(-1);
    if (before === undefined || before[0] !== corner[0] || before[1] !== corner[1])
      corners.push(corner);
  }
  const joined = joinedOver(corners);
  if (joined === null) return 'running round a pole';
  return isRing ? cleanRing(joined) : cleanLine(joined);
}

function cleanLine(line: readonly Corner[]): CleanOutline | string {
  if (line.length < 2) return 'without length';
  const thin = withFewerCorners(line, MOST_CORNERS);
  return { pieces: cutLine(thin), crossesItself: false, wasThinned: thin !== line };
}

function cleanRing(closed: readonly Corner[]): CleanOutline | string {
  const [first, last] = [closed[0], closed.at(-1)];
  const isRepeated = closed.length > 1 && first?.[0] === last?.[0] && first?.[1] === last?.[1];
  const ring = isRepeated ? closed.slice(0, -1) : closed;
  if (ring.length < 3) return 'without area';
  const thin = withFewerCorners(ring, MOST_CORNERS);
  const loops = simpleRings(thin);
  const { eastM, northM } = metresPerDegree(first?.[1] ?? 0);
  const areaM2 =
    (eastM * northM * loops.reduce((sum, loop) => sum + Math.abs(signedDoubleArea(loop)), 0)) / 2;
  if (areaM2 < LEAST_AREA_M2) return 'without area';
  return { pieces: cutRing(thin), crossesItself: loops.length > 1, wasThinned: thin !== ring };
}

export const METRES_INSTEAD = 'with coordinates that look like metres, not degrees';
export const LATITUDE_FIRST = 'with a latitude beyond 90°, as when latitude comes first';

function cornerFrom(position: unknown): Corner | string {
  const [longitudeDeg, latitudeDeg] = Array.isArray(position) ? (position as unknown[]) : [];
  if (typeof longitudeDeg !== 'number' || typeof latitudeDeg !== 'number')
    return 'with a corner that is no pair of numbers';
  if (Math.abs(longitudeDeg) > 180 || Math.abs(latitudeDeg) > 90)
    return Math.abs(latitudeDeg) <= 180 && Math.abs(longitudeDeg) <= 90
      ? LATITUDE_FIRST
      : METRES_INSTEAD;
  return [rounded(longitudeDeg), rounded(latitudeDeg)];
}

/** Zero without its sign. */
const rounded = (angleDeg: number): number => Math.round(angleDeg * PER_DEGREE) / PER_DEGREE + 0;

/** Longitudes that run on over the antimeridian; null where they do not come back. */
function joinedOver(corners: readonly Corner[]): readonly Corner[] | null {
  const joined: Corner[] = [];
  for (const [longitudeDeg, latitudeDeg] of corners) {
    const beforeDeg = joined.at(-1)?.[0] ?? longitudeDeg;
    const stepDeg = longitudeDeg - beforeDeg;
    joined.push([
      Math.abs(stepDeg) <= 180 ? longitudeDeg : rounded(beforeDeg + wrapDeg180(stepDeg)),
      latitudeDeg,
    ]);
  }
  const runsRound = joined.some(([longitudeDeg]) => Math.abs(longitudeDeg) > 360);
  const endsAway = Math.abs((joined.at(-1)?.[0] ?? 0) - (joined[0]?.[0] ?? 0)) > 180;
  return runsRound || endsAway ? null : joined;
}
