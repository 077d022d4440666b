import type { Spot } from '../../../../core/plan/shoot.ts';
import type { ObstacleCounts } from './skyline-sources.ts';

/** What the skyline is made of, in a few words. */
export function madeOf(spot: Spot, counts: ObstacleCounts): string {
  const points = Object.keys(spot.skyline).length;
  const parts = [
    spot.terrain === null ? '' : 'terrain',
    counts.drawn + counts.imported === 0 ? '' : 'obstacles',
    points === 0 ? '' : `trace of ${points === 1 ? '1 point' : `${points} points`}`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'flat' : parts.join(', ');
}

/** Where the skyline comes from, every source that stands in it. */
export function originsOf(spot: Spot, obstacleShare: number): string {
  const trace =
    Object.keys(spot.skyline).length === 0
      ? ''
      : spot.skylineOrigin === ''
        ? 'a trace, origin not noted'
        : spot.skylineOrigin;
  const others = [
    // What was found on the way follows the names.
    spot.terrain === null ? '' : `terrain by ${spot.terrain.origin.split(';')[0]}`,
    obstacleShare > 0 ? 'obstacles on the map' : '',
  ].filter((part) => part !== '');
  if (others.length === 0) return trace;
  return [...others, ...(trace === '' ? [] : [`trace: ${trace}`])].join('; ');
}
