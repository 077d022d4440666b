import type { LocalPlane, PlanePoint } from '../place/local-plane.ts';
import type { Corner, Obstacle } from './obstacle.ts';

export type Ring = {
  readonly points: readonly PlanePoint[];
  /** The last corner is joined to the first. */
  readonly isClosed: boolean;
};

export type Edge = { readonly from: PlanePoint; readonly to: PlanePoint };

/** The outline and behind it its holes, in a plane. */
export function ringsInPlane(obstacle: Obstacle, plane: LocalPlane): readonly Ring[] {
  const { outline, closed, holes = [] } = obstacle;
  const inPlane = (corners: readonly Corner[]): readonly PlanePoint[] =>
    corners.map(([longitudeDeg, latitudeDeg]) => plane.toPlane(longitudeDeg, latitudeDeg));
  return [
    { points: inPlane(outline), isClosed: closed && outline.length > 2 },
    ...holes.map((hole) => ({ points: inPlane(hole), isClosed: true })),
  ];
}

export const edgesOf = ({ points, isClosed }: Ring): readonly Edge[] =>
  points.flatMap((to, index) => {
    const from = index === 0 ? (isClosed ? points.at(-1) : undefined) : points[index - 1];
    return from === undefined ? [] : [{ from, to }];
  });

/** From the plane's origin to the nearest point of all edges. */
export function distanceToRingsM(rings: readonly Ring[]): number {
  let leastM2 = Infinity;
  for (const { points, isClosed } of rings) {
    let from = isClosed ? points.at(-1) : undefined;
    for (const to of points) {
      if (from !== undefined) leastM2 = Math.min(leastM2, squareToEdgeM2(from, to));
      from = to;
    }
  }
  return Math.sqrt(leastM2);
}

function squareToEdgeM2([fromEastM, fromNorthM]: PlanePoint, to: PlanePoint): number {
  const eastM = to[0] - fromEastM;
  const northM = to[1] - fromNorthM;
  const lengthM2 = eastM * eastM + northM * northM;
  const share = lengthM2 > 0 ? -(fromEastM * eastM + fromNorthM * northM) / lengthM2 : 0;
  const along = Math.min(1, Math.max(0, share));
  return (fromEastM + along * eastM) ** 2 + (fromNorthM + along * northM) ** 2;
}

/** How often a ring runs round a point, counter-clockwise positive; 0 outside. */
export function turnsRound(
  ring: readonly PlanePoint[],
  { eastM, northM }: { readonly eastM: number; readonly northM: number },
): number {
  let turns = 0;
  for (const [index, [toEastM, toNorthM]] of ring.entries()) {
    const from = ring[index === 0 ? ring.length - 1 : index - 1];
    if (from === undefined) continue;
    const [fromEastM, fromNorthM] = from;
    const rises = fromNorthM <= northM && toNorthM > northM;
    const falls = fromNorthM > northM && toNorthM <= northM;
    if (!rises && !falls) continue;
    const side =
      (toEastM - fromEastM) * (northM - fromNorthM) - (eastM - fromEastM) * (toNorthM - fromNorthM);
    if (rises && side > 0) turns += 1;
    if (falls && side < 0) turns -= 1;
  }
  return turns;
}

/** Inside the first of the rings and in none of the others, which are its holes. */
export const isInside = (
  [outer, ...holes]: readonly Ring[],
  at: { readonly eastM: number; readonly northM: number },
): boolean =>
  outer !== undefined &&
  turnsRound(outer.points, at) !== 0 &&
  holes.every((hole) => turnsRound(hole.points, at) === 0);
