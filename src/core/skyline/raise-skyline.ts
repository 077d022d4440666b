import type { PlanePoint } from '../place/local-plane.ts';
import { atan2Deg, cosDeg, sinDeg, wrapDeg360 } from '../units/angle.ts';

/** A corner as it is seen from the eye. */
export type SeenCorner = {
  /** East and north of the eye. */
  readonly eastM: number;
  readonly northM: number;
  /** 0 ≤ a < 360. */
  readonly azimuthDeg: number;
  readonly distanceM: number;
};

export const seenCorner = ([eastM, northM]: PlanePoint): SeenCorner => ({
  eastM,
  northM,
  azimuthDeg: wrapDeg360(atan2Deg(eastM, northM)),
  distanceM: Math.sqrt(eastM * eastM + northM * northM),
});

/** What stands highest in each sector; sector i reaches half a step to both sides of i steps. */
export type HighestEdges = {
  /** Height over distance; 0 where nothing rises over the eye. */
  readonly slopes: Float64Array;
  readonly distancesM: Float64Array;
  readonly indices: Int32Array;
  readonly stepDeg: number;
  /** Directions of the borders between sectors, the first that between the last and sector 0. */
  readonly bordersEast: Float64Array;
  readonly bordersNorth: Float64Array;
};

export function noEdges(stepDeg: number): HighestEdges {
  const count = Math.round(360 / stepDeg);
  const borderDeg = (_: unknown, border: number): number => (border - 0.5) * stepDeg;
  const bordersDeg = Array.from({ length: count }, borderDeg);
  return {
    slopes: new Float64Array(count),
    distancesM: new Float64Array(count).fill(Infinity),
    indices: new Int32Array(count).fill(-1),
    stepDeg,
    bordersEast: Float64Array.from(bordersDeg, sinDeg),
    bordersNorth: Float64Array.from(bordersDeg, cosDeg),
  };
}

export type LevelEdge = {
  readonly from: SeenCorner;
  readonly to: SeenCorner;
  /** Of the edge above the eye, more than 0. */
  readonly aboveEyeM: number;
  readonly index: number;
};

/** Sine of the angle under which an edge seen end on may appear. */
const ON_THE_LINE = 1e-12;

/**
 * Enters a level edge wherever it stands higher than what is there: in each sector at its nearest
 * point inside it, which need not be a corner. Distances under `leastM` are taken as that.
 */
export function raiseSkyline(
  edges: HighestEdges,
  { from, to, aboveEyeM, index }: LevelEdge,
  leastM: number,
): void {
  // Counter-clockwise in the plane is backwards in azimuth.
  const turnM2 = from.eastM * to.northM - from.northM * to.eastM;
  const [first, last] = turnM2 > 0 ? [to, from] : [from, to];
  const { stepDeg, bordersEast, bordersNorth } = edges;
  const count = edges.slopes.length;
  const firstSector = Math.round(first.azimuthDeg / stepDeg);
  const alongEastM = last.eastM - first.eastM;
  const alongNorthM = last.northM - first.northM;
  const firstAheadM2 = first.eastM * alongEastM + first.northM * alongNorthM;
  const lastAheadM2 = last.eastM * alongEastM + last.northM * alongNorthM;
  const isSquareBetween = firstAheadM2 < 0 && lastAheadM2 > 0;

  if (Math.abs(turnM2) <= ON_THE_LINE * first.distanceM * last.distanceM) {
    // The eye looks along the edge, or stands on its line.
    const nearM = isSquareBetween ? 0 : Math.min(first.distanceM, last.distanceM);
    enter(edges, { sector: firstSector, distanceM: nearM, aboveEyeM, index, leastM });
    if (!isSquareBetween) return;
    const behind = Math.round(last.azimuthDeg / stepDeg);
    enter(edges, { sector: behind, distanceM: nearM, aboveEyeM, index, leastM });
    return;
  }

  const turnsOver = last.azimuthDeg < first.azimuthDeg;
  const lastSector = Math.round((last.azimuthDeg + (turnsOver ? 360 : 0)) / stepDeg);
  const areaM2 = Math.abs(turnM2);
  const farM = Math.max(first.distanceM, last.distanceM);
  const squareSector = isSquareBetween
    ? squareSectorOf({ first, alongEastM, alongNorthM, firstSector, stepDeg, count })
    : -1;
  const squareM = areaM2 / Math.sqrt(alongEastM * alongEastM + alongNorthM * alongNorthM);

  // Up to the square foot the edge comes nearer, behind it it goes away.
  let lowM = first.distanceM;
  for (let sector = firstSector; sector <= lastSector; sector += 1) {
    let highM = last.distanceM;
    if (sector < lastSector) {
      const border = (sector + 1) % count;
      const acrossM =
        (bordersEast[border] ?? NaN) * alongNorthM - (bordersNorth[border] ?? NaN) * alongEastM;
      highM = Math.min(farM, Math.max(squareM, areaM2 / Math.abs(acrossM)));
    }
    const distanceM = sector === squareSector ? squareM : Math.min(lowM, highM);
    enter(edges, { sector, distanceM, aboveEyeM, index, leastM });
    lowM = highM;
  }
}

/** The sector of the point at which an edge is nearest, counted on from that of its first corner. */
function squareSectorOf({
  first,
  alongEastM,
  alongNorthM,
  firstSector,
  stepDeg,
  count,
}: {
  readonly first: SeenCorner;
  readonly alongEastM: number;
  readonly alongNorthM: number;
  readonly firstSector: number;
  readonly stepDeg: number;
  readonly count: number;
}): number {
  // Azimuth runs on along the edge, so that its foot lies a quarter turn back from its direction.
  const footDeg = wrapDeg360(atan2Deg(alongEastM, alongNorthM) - 90);
  const sector = Math.round((footDeg < first.azimuthDeg ? footDeg + 360 : footDeg) / stepDeg);
  return sector < firstSector ? sector + count : sector;
}

function enter(
  edges: HighestEdges,
  {
    sector,
    distanceM,
    aboveEyeM,
    index,
    leastM,
  }: {
    readonly sector: number;
    readonly distanceM: number;
    readonly aboveEyeM: number;
    readonly index: number;
    readonly leastM: number;
  },
): void {
  const at = sector % edges.slopes.length;
  const slope = aboveEyeM / Math.max(distanceM, leastM);
  if (slope <= (edges.slopes[at] ?? Infinity)) return;
  edges.slopes[at] = slope;
  edges.distancesM[at] = distanceM;
  edges.indices[at] = index;
}
