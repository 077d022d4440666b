import type { Shoot, Spot } from '../../../../core/plan/shoot.ts';
import { traceOf } from '../../../../core/plan/setup-light.ts';
import {
  bySector,
  byTrace,
  type SkylineSource,
} from '../../../../core/skyline/combined-skyline.ts';
import { skylineAltitude } from '../../../../core/skyline/skyline.ts';
import {
  skylineMakers,
  skylineShares,
  type MadeBy,
} from '../../../../core/skyline/skyline-shares.ts';

/** In the order in which a tie is decided. */
export const SOURCE_NAMES = ['terrain', 'obstacles', 'trace'] as const;
export type SourceName = (typeof SOURCE_NAMES)[number];

const KNOWS_NOTHING: SkylineSource = () => -Infinity;
/** A combined skyline leaves out points that lie this close to a straight line, with room. */
const THE_SAME_DEG = 0.03;

/** What the skyline of a spot is made of, in the order of the names. */
export function sourcesOf(spot: Spot): readonly SkylineSource[] {
  const terrain = spot.terrain === null ? KNOWS_NOTHING : bySector(spot.terrain.altitudesDeg);
  const trace = byTrace(traceOf(spot));
  return [terrain, obstaclesIn(spot, terrain, trace), trace];
}

/** What the combined skyline holds above terrain and trace is made by obstacles. */
function obstaclesIn(spot: Spot, terrain: SkylineSource, trace: SkylineSource): SkylineSource {
  if (spot.skylineNow === undefined) return KNOWS_NOTHING;
  const combined = skylineAltitude(spot.skylineNow);
  return (azimuthDeg) => {
    const altitudeDeg = combined(azimuthDeg);
    const others = Math.max(terrain(azimuthDeg), trace(azimuthDeg));
    const isMore = others === -Infinity ? altitudeDeg > 0 : altitudeDeg > others + THE_SAME_DEG;
    return isMore ? altitudeDeg : -Infinity;
  };
}

export const makersOf = (
  spot: Spot,
): readonly (Omit<MadeBy, 'index'> & { readonly by: SourceName | null })[] =>
  skylineMakers(sourcesOf(spot)).map(({ index, ...stretch }) => ({
    ...stretch,
    by: SOURCE_NAMES[index] ?? null,
  }));

export type SourceShares = Readonly<Record<SourceName, number>>;

export function sharesOf(spot: Spot): SourceShares {
  const [terrain = 0, obstacles = 0, trace = 0] = skylineShares(sourcesOf(spot));
  return { terrain, obstacles, trace };
}

export type ObstacleCounts = {
  readonly drawn: number;
  readonly imported: number;
  readonly sets: number;
};

export function obstacleCounts({ obstacles, outlineSets }: Shoot): ObstacleCounts {
  const sets = Object.values(outlineSets);
  return {
    drawn: Object.keys(obstacles).length,
    imported: sets.reduce(
      (sum, { outlineCount, hidden }) => sum + outlineCount - Object.keys(hidden).length,
      0,
    ),
    sets: sets.length,
  };
}
