import type { GeoPoint } from '../../../../core/place/geo-point.ts';
import { leastDistanceM } from '../../../../core/skyline/least-distance.ts';
import { footAboveGroundM, type Corner } from '../../../../core/skyline/obstacle.ts';
import { atan2Deg, cosDeg, tanDeg, wrapDeg180 } from '../../../../core/units/angle.ts';
import type { Standing } from '../../../state/standing.ts';

/** Something that may come between a spot and the sun, with what tells quickly that it does not. */
export type NearStanding = {
  readonly standing: Standing;
  /** How far its top rises over the ground of the spot, and what no part of it is nearer than. */
  readonly riseM: number;
  readonly leastM: number;
  /** The bearings it stands under: their middle, and how far they reach to each side. */
  readonly middleDeg: number;
  readonly halfWidthDeg: number;
};

/** Obstacles that rise less than this over the ground of the spot take no minute of sun from it. */
const LEAST_RISE_DEG = 0.2;
/** For the flat map by which bearings are taken, and for the quick distance. */
const SLACK_DEG = 0.5;
const SURELY = 0.999;
/** Nearer than this an outline may come round the place. */
const AROUND_M = 1;
const ALL_ROUND = { middleDeg: 0, halfWidthDeg: 180 };

export const nearStanding = (all: readonly Standing[], place: GeoPoint): readonly NearStanding[] =>
  all.flatMap((standing) => {
    const { outline, heightM } = standing.obstacle;
    const riseM = heightM + footAboveGroundM(standing.obstacle, place);
    const leastM = leastDistanceM(outline, place);
    if (riseM <= leastM * tanDeg(LEAST_RISE_DEG)) return [];
    const bearings = leastM < AROUND_M ? ALL_ROUND : bearingsOf(outline, place);
    return [{ standing, riseM, leastM, ...bearings }];
  });

/** Whether it has to be looked at for the sun at a place of the sky. */
export const mayHide = (
  { riseM, leastM, middleDeg, halfWidthDeg }: NearStanding,
  sun: { readonly azimuthDeg: number; readonly apparentAltitudeDeg: number },
): boolean =>
  leastM * tanDeg(sun.apparentAltitudeDeg) * SURELY <= riseM &&
  Math.abs(wrapDeg180(sun.azimuthDeg - middleDeg)) <= halfWidthDeg + SLACK_DEG;

function bearingsOf(
  outline: readonly Corner[],
  { latitudeDeg, longitudeDeg }: GeoPoint,
): Pick<NearStanding, 'middleDeg' | 'halfWidthDeg'> {
  const bearings = outline.map(([east, north]) =>
    atan2Deg(wrapDeg180(east - longitudeDeg) * cosDeg(latitudeDeg), north - latitudeDeg),
  );
  const [firstDeg = 0] = bearings;
  // Followed from corner to corner, so that a span over north stays one.
  let [atDeg, leastDeg, mostDeg] = [firstDeg, firstDeg, firstDeg];
  for (const bearingDeg of [...bearings.slice(1), firstDeg]) {
    const turnDeg = wrapDeg180(bearingDeg - atDeg);
    if (Math.abs(turnDeg) > 90) return ALL_ROUND;
    atDeg += turnDeg;
    leastDeg = Math.min(leastDeg, atDeg);
    mostDeg = Math.max(mostDeg, atDeg);
  }
  return { middleDeg: (leastDeg + mostDeg) / 2, halfWidthDeg: (mostDeg - leastDeg) / 2 };
}
