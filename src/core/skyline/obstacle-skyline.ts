import type { GeoPoint } from '../place/geo-point.ts';
import { localPlane } from '../place/local-plane.ts';
import { atanDeg, wrapDeg360 } from '../units/angle.ts';
import type { SkylineSource } from './combined-skyline.ts';
import { leastDistanceM } from './least-distance.ts';
import {
  footAboveGroundM,
  isSolid,
  lightPassed,
  OPEN_FROM_SHARE,
  type Obstacle,
} from './obstacle.ts';
import { distanceToRingsM, isInside, ringsInPlane } from './outline-rings.ts';
import { noEdges, raiseSkyline, seenCorner } from './raise-skyline.ts';

const STEP_DEG = 0.25;
/** What stands farther off is left out: 30 m of height are half a degree there. */
export const OBSTACLE_LIMIT_M = 3000;
/** What stands nearer than this is taken to stand this far: no map knows it better. */
export const OBSTACLE_NEAREST_M = 0.5;

/** Why an outline round the camera is no skyline. */
export type OutlineRoundCamera = 'camera-on-top' | 'camera-inside' | 'camera-underneath';

export type ObstacleSkyline = {
  /**
   * Apparent altitude of the highest edge in the sector of each quarter degree, the first centred
   * on north; −Infinity where nothing rises over the horizontal.
   */
  readonly altitudesDeg: Float64Array;
  /** How far that edge is there; Infinity where there is none. */
  readonly distancesM: Float64Array;
  /** Which of the obstacles it belongs to; −1 where there is none. */
  readonly obstacleIndices: Int32Array;
  /** Outlines that hold the camera: left out, the position or the height of one of them is not right. */
  readonly roundCamera: readonly { readonly index: number; readonly because: OutlineRoundCamera }[];
  /** Obstacles with an edge nearer than `OBSTACLE_NEAREST_M`. */
  readonly tooNear: readonly number[];
  /** How many were left out for their distance, and how many for the light they let through. */
  readonly beyondCount: number;
  readonly openCount: number;
};

export type ObstacleView = {
  /** Ground under the camera; feet without an elevation stand on its level. */
  readonly place: GeoPoint;
  readonly eyeHeightM: number;
  readonly obstacles: readonly Obstacle[];
  /** Civil date, for the leaves. */
  readonly date: string;
};

/**
 * The skyline that outlines make: their top edges, level over their feet, straight between corners.
 * Trees that let half the light through or more are left out; under the crowns of others no sky is
 * seen. Curvature less refraction would lower an edge by 0.012° at 3 km: left out.
 */
export function obstacleSkyline({
  place,
  eyeHeightM,
  obstacles,
  date,
}: ObstacleView): ObstacleSkyline {
  const plane = localPlane(place);
  const season = { date, latitudeDeg: place.latitudeDeg };
  const edges = noEdges(STEP_DEG);
  const roundCamera: { index: number; because: OutlineRoundCamera }[] = [];
  const tooNear: number[] = [];
  let beyondCount = 0;
  let openCount = 0;

  for (const [index, obstacle] of obstacles.entries()) {
    const leastM = leastDistanceM(obstacle.outline, place);
    if (leastM > OBSTACLE_LIMIT_M) {
      beyondCount += 1;
      continue;
    }
    if (lightPassed(obstacle, season) >= OPEN_FROM_SHARE) {
      openCount += 1;
      continue;
    }
    const aboveEyeM = footAboveGroundM(obstacle, place) + obstacle.heightM - eyeHeightM;
    const rings = ringsInPlane(obstacle, plane);
    if (leastM === 0 && isSolid(obstacle) && isInside(rings, { eastM: 0, northM: 0 })) {
      const baseAboveEyeM = aboveEyeM - obstacle.heightM + obstacle.crownBaseM;
      roundCamera.push({ index, because: reasonOf({ aboveEyeM, baseAboveEyeM }) });
      continue;
    }
    const nearestM = distanceToRingsM(rings);
    if (nearestM > OBSTACLE_LIMIT_M) beyondCount += 1;
    if (nearestM > OBSTACLE_LIMIT_M || aboveEyeM <= 0) continue;
    if (nearestM < OBSTACLE_NEAREST_M) tooNear.push(index);
    for (const { points, isClosed } of rings) {
      const corners = points.map(seenCorner);
      let from = isClosed ? corners.at(-1) : undefined;
      for (const to of corners) {
        if (from !== undefined)
          raiseSkyline(edges, { from, to, aboveEyeM, index }, OBSTACLE_NEAREST_M);
        from = to;
      }
    }
  }

  return {
    altitudesDeg: edges.slopes.map((slope) => (slope > 0 ? atanDeg(slope) : -Infinity)),
    distancesM: edges.distancesM,
    obstacleIndices: edges.indices,
    roundCamera,
    tooNear,
    beyondCount,
    openCount,
  };
}

/** The skyline of the outlines as one of the sources that are combined. */
export const byObstacles =
  ({ altitudesDeg }: Pick<ObstacleSkyline, 'altitudesDeg'>): SkylineSource =>
  (azimuthDeg) =>
    altitudesDeg[Math.round(wrapDeg360(azimuthDeg) / STEP_DEG) % altitudesDeg.length] ?? -Infinity;

const reasonOf = ({
  aboveEyeM,
  baseAboveEyeM,
}: {
  readonly aboveEyeM: number;
  readonly baseAboveEyeM: number;
}): OutlineRoundCamera => {
  if (aboveEyeM <= 0) return 'camera-on-top';
  return baseAboveEyeM >= 0 ? 'camera-underneath' : 'camera-inside';
};
