import { bySector, byTrace, combinedSkyline } from '../skyline/combined-skyline.ts';
import type { Obstacle } from '../skyline/obstacle.ts';
import { byObstacles, obstacleSkyline } from '../skyline/obstacle-skyline.ts';
import { traceOf } from './setup-light.ts';
import type { Spot } from './shoot.ts';

/**
 * A spot with its skyline worked out: terrain, obstacles, trace, the highest per azimuth. One of
 * which only a trace is known stays as it is: its points are exact.
 */
export function groundedSpot(spot: Spot, obstacles: readonly Obstacle[], date: string): Spot {
  const seen = obstacleSkyline({
    place: spot,
    eyeHeightM: spot.framing.cameraHeightM,
    obstacles,
    date,
  });
  const hides = seen.altitudesDeg.some((altitudeDeg) => altitudeDeg > -Infinity);
  if (spot.terrain === null && !hides) return spot;
  return {
    ...spot,
    skylineNow: combinedSkyline([
      ...(spot.terrain === null ? [] : [bySector(spot.terrain.altitudesDeg)]),
      byObstacles(seen),
      byTrace(traceOf(spot)),
    ]),
  };
}
