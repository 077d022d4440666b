import type { GeoPoint } from '../place/geo-point.ts';
import { localPlane } from '../place/local-plane.ts';
import { cosDeg, sinDeg, tanDeg } from '../units/angle.ts';
import { leastDistanceM } from './least-distance.ts';
import {
  footAboveGroundM,
  isSolid,
  lightPassed,
  OPEN_FROM_SHARE,
  type Obstacle,
} from './obstacle.ts';
import { edgesOf, ringsInPlane, type Ring } from './outline-rings.ts';
import type { ShadowSun } from './shadow.ts';

export type PointShade = {
  /** Less than half of the sun's light comes through. */
  readonly blocked: boolean;
  /** Share that the densest obstacle in the way lets through; 1 with none. */
  readonly passes: number;
};

/**
 * What stands between a point and the sun's centre, by the ray itself; null when the sun is not up.
 * Feet without an elevation stand on the level of the ground under the point.
 */
export function isInShadow({
  point,
  aboveGroundM,
  sun,
  date,
  obstacles,
}: {
  readonly point: GeoPoint;
  readonly aboveGroundM: number;
  readonly sun: ShadowSun;
  readonly date: string;
  readonly obstacles: readonly Obstacle[];
}): PointShade | null {
  if (!(sun.apparentAltitudeDeg > 0)) return null;
  const plane = localPlane(point);
  const slope = tanDeg(sun.apparentAltitudeDeg);
  const season = { date, latitudeDeg: point.latitudeDeg };
  let passes = 1;
  for (const obstacle of obstacles) {
    const passed = lightPassed(obstacle, season);
    if (passed >= passes) continue;
    const footM = footAboveGroundM(obstacle, point) - aboveGroundM;
    const topM = footM + obstacle.heightM;
    if (leastDistanceM(obstacle.outline, point) * slope * SURELY > topM) continue;
    const spans = spansAlong(ringsInPlane(obstacle, plane), sun.azimuthDeg, isSolid(obstacle));
    const baseM = footM + Math.min(obstacle.crownBaseM, obstacle.heightM);
    if (spans.some(({ nearM, farM }) => nearM * slope < topM && farM * slope >= baseM))
      passes = passed;
  }
  return { blocked: passes < OPEN_FROM_SHARE, passes };
}

/** The quick distance is good to a 3000th part. */
const SURELY = 0.999;

type Span = { readonly nearM: number; readonly farM: number };

/** Where the ray over the ground runs inside an outline, or crosses it when it has no inside. */
function spansAlong(
  rings: readonly Ring[],
  azimuthDeg: number,
  hasInside: boolean,
): readonly Span[] {
  const crossings = rings
    .flatMap((ring, index) => crossingsOf(ring, azimuthDeg).map((at) => ({ ...at, ring: index })))
    .toSorted((first, second) => second.distanceM - first.distanceM);
  if (!hasInside) return crossings.map(({ distanceM }) => ({ nearM: distanceM, farM: distanceM }));

  // From far outside towards the point: the outline turned round, and no hole.
  const turns = rings.map(() => 0);
  const isWithin = (): boolean => turns.every((count, ring) => (count !== 0) === (ring === 0));
  const spans: Span[] = [];
  let farM = Infinity;
  for (const { distanceM, ring, turn } of crossings) {
    if (isWithin()) spans.push({ nearM: distanceM, farM });
    turns[ring] = (turns[ring] ?? 0) + turn;
    farM = distanceM;
  }
  if (isWithin()) spans.push({ nearM: 0, farM });
  return spans;
}

type RayCrossing = { readonly distanceM: number; readonly turn: 1 | -1 };

/** Edges that the ray from the plane's origin meets, and which way they cross it. */
function crossingsOf(ring: Ring, azimuthDeg: number): readonly RayCrossing[] {
  const [east, north] = [sinDeg(azimuthDeg), cosDeg(azimuthDeg)];
  return edgesOf(ring).flatMap(({ from, to }) => {
    const fromLeftM = north * -from[0] + east * from[1];
    const toLeftM = north * -to[0] + east * to[1];
    if (fromLeftM > 0 === toLeftM > 0) return [];
    const share = fromLeftM / (fromLeftM - toLeftM);
    const fromAheadM = east * from[0] + north * from[1];
    const toAheadM = east * to[0] + north * to[1];
    const distanceM = fromAheadM + share * (toAheadM - fromAheadM);
    return distanceM < 0 ? [] : [{ distanceM, turn: toLeftM > 0 ? 1 : -1 }];
  });
}
