import { metresPerDegree } from '../place/metres-per-degree.ts';
import { wrapDeg180 } from '../units/angle.ts';
import { isSolid, type Corner, type Obstacle } from './obstacle.ts';
import { turnsRound } from './outline-rings.ts';
import {
  clockwise,
  counterClockwise,
  ringsCross,
  simpleRings,
  type PointRing,
} from './simple-rings.ts';

/** Nearer the poles a degree of longitude changes too fast for a shadow to be drawn in degrees. */
const POLEWARD_DEG = 89;

export type ShadowOutline = {
  readonly obstacle: Obstacle;
  /** Counter-clockwise with clockwise holes; or a line, a ring of wall with its first corner again. */
  readonly rings: readonly Float64Array[];
  readonly isSolid: boolean;
  readonly latitudeDeg: number;
  readonly northM: number;
  readonly eastM: number;
};

/** Outlines made ready once, for the shadows of every minute. */
export type ShadowOutlines = {
  readonly outlines: readonly ShadowOutline[];
  /** Corners of all. */
  readonly cornerCount: number;
  /** Left out: beyond 89° of latitude, or without two corners that differ. */
  readonly leftOutCount: number;
  /** Holes that cross their outline or one another: filled. */
  readonly filledHoleCount: number;
};

/** Longitudes run on over the antimeridian, so that a ring holds together; they may pass ±180. */
export function shadowOutlines(obstacles: readonly Obstacle[]): ShadowOutlines {
  const outlines: ShadowOutline[] = [];
  let cornerCount = 0;
  let leftOutCount = 0;
  let filledHoleCount = 0;
  for (const obstacle of obstacles) {
    const { rings, filled } = ringsOf(obstacle);
    filledHoleCount += filled;
    const [, latitudeDeg] = obstacle.outline[0] ?? [0, 90];
    const isPolar = obstacle.outline.some(([, latitude]) => !(Math.abs(latitude) <= POLEWARD_DEG));
    if (rings.length === 0 || isPolar) {
      leftOutCount += 1;
      continue;
    }
    const solid = isSolid(obstacle);
    outlines.push({
      obstacle,
      rings: rings.map((ring) => Float64Array.from(ring.flat())),
      isSolid: solid,
      latitudeDeg,
      ...metresPerDegree(latitudeDeg),
    });
    cornerCount += rings.reduce((sum, ring) => sum + ring.length, 0);
  }
  return { outlines, cornerCount, leftOutCount, filledHoleCount };
}

type Rings = { readonly rings: readonly PointRing[]; readonly filled: number };

function ringsOf(obstacle: Obstacle): Rings {
  const outline = joined(obstacle.outline);
  const [first] = outline;
  if (first === undefined || outline.every((at) => at[0] === first[0] && at[1] === first[1]))
    return { rings: [], filled: 0 };
  if (!isSolid(obstacle)) {
    const isRing = obstacle.closed && outline.length > 2;
    return { rings: [isRing ? [...outline, first] : outline], filled: 0 };
  }
  const holes = (obstacle.holes ?? []).map((hole) => joined(hole, first[0]));
  const loops = simpleRings(outline).map(counterClockwise);
  const [only] = loops;
  if (only === undefined || loops.length > 1) return { rings: loops, filled: holes.length };
  const kept = holes.reduce<readonly PointRing[]>(
    (others, hole) => (isHoleOf(only, hole, others) ? [...others, clockwise(hole)] : others),
    [],
  );
  return { rings: [only, ...kept], filled: holes.length - kept.length };
}

/** Longitudes within half a turn of a reference, at first the first corner's. */
function joined(corners: readonly Corner[], nearDeg = corners[0]?.[0] ?? 0): PointRing {
  return corners.map(([longitudeDeg, latitudeDeg]) => [
    nearDeg + wrapDeg180(longitudeDeg - nearDeg),
    latitudeDeg,
  ]);
}

/** With the rings' turns added up nothing may come below none: shadows would cancel one another. */
function isHoleOf(outer: PointRing, hole: PointRing, others: readonly PointRing[]): boolean {
  if (hole.length < 3 || simpleRings(hole).length !== 1) return false;
  if (ringsCross(outer, hole) || !hole.every((corner) => isIn(outer, corner))) return false;
  return others.every(
    (other) =>
      !ringsCross(other, hole) &&
      !hole.some((corner) => isIn(other, corner)) &&
      !other.some((corner) => isIn(hole, corner)),
  );
}

const isIn = (ring: PointRing, [eastM, northM]: readonly [number, number]): boolean =>
  turnsRound(ring, { eastM, northM }) !== 0;
