import { metresPerDegree } from '../../core/place/metres-per-degree.ts';
import type { Corner } from '../../core/skyline/obstacle.ts';

const FIRST_DISTANCE_M = 0.1;

/**
 * Leaves out corners that lie near the one kept before, nearer and nearer ones staying fewer, until
 * so many are left; the same list if they are few enough. The ends stay.
 */
export function withFewerCorners(corners: readonly Corner[], most: number): readonly Corner[] {
  let kept = corners;
  for (let distanceM = FIRST_DISTANCE_M; kept.length > most; distanceM *= 2)
    kept = spacedOut(corners, distanceM);
  return kept;
}

function spacedOut(corners: readonly Corner[], distanceM: number): readonly Corner[] {
  const { eastM, northM } = metresPerDegree(corners[0]?.[1] ?? 0);
  let last: Corner | undefined;
  return corners.filter((corner, index) => {
    const isKept =
      last === undefined ||
      index === corners.length - 1 ||
      Math.hypot((corner[0] - last[0]) * eastM, (corner[1] - last[1]) * northM) >= distanceM;
    if (isKept) last = corner;
    return isKept;
  });
}
