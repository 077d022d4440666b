import type { LocalPlane } from '../../core/place/local-plane.ts';
import type { Corner } from '../../core/skyline/obstacle.ts';
import { wrapDeg180 } from '../../core/units/angle.ts';
import type { CmPath } from './gathered-rings.ts';
import { boundedPieces, type CmPolygon } from './union-in-steps.ts';

export type ShadowPolygon = {
  /** Counter-clockwise, the first corner not repeated, within ±180°. */
  readonly outer: readonly Corner[];
  /** Clockwise. */
  readonly holes: readonly (readonly Corner[])[];
};

/** Degrees are given to 1e-7°, a centimetre. */
const PER_DEGREE = 1e7;

/** Pieces of ground in degrees; those over the antimeridian are cut there, as RFC 7946 wants it. */
export async function shadowPolygons(
  pieces: readonly CmPolygon[],
  { plane, longitudeDeg }: { readonly plane: LocalPlane; readonly longitudeDeg: number },
): Promise<readonly ShadowPolygon[]> {
  const toDegrees = (path: CmPath): CmPath =>
    path.map(({ x, y }) => {
      const [eastDeg, northDeg] = plane.toDegrees(x / 100, y / 100);
      const joinedDeg = longitudeDeg + wrapDeg180(eastDeg - longitudeDeg);
      return { x: Math.round(PER_DEGREE * joinedDeg), y: Math.round(PER_DEGREE * northDeg) };
    });
  const inDegrees = pieces.map(({ outer, holes }) => ({
    outer: toDegrees(outer),
    holes: holes.map(toDegrees),
  }));
  const cut = await Promise.all(inDegrees.map(withinAntimeridian));
  return cut
    .flat()
    .map(({ outer, holes }) => ({ outer: cornersOf(outer), holes: holes.map(cornersOf) }));
}

const HALF_TURN = 180 * PER_DEGREE;
const QUARTER_TURN = 90 * PER_DEGREE;

async function withinAntimeridian(polygon: CmPolygon): Promise<readonly CmPolygon[]> {
  if (polygon.outer.every(({ x }) => Math.abs(x) <= HALF_TURN)) return [polygon];
  const turns = [-2, 0, 2].map((half) => half * HALF_TURN);
  const cut = turns.map(async (shift) => {
    const box = { west: shift - HALF_TURN, east: shift + HALF_TURN };
    const inside = await boundedPieces(polygon, {
      ...box,
      south: -QUARTER_TURN,
      north: QUARTER_TURN,
    });
    const back = (path: CmPath): CmPath => path.map(({ x, y }) => ({ x: x - shift, y }));
    return inside.map(({ outer, holes }) => ({ outer: back(outer), holes: holes.map(back) }));
  });
  return (await Promise.all(cut)).flat();
}

const cornersOf = (path: CmPath): readonly Corner[] =>
  path.map(({ x, y }): Corner => [x / PER_DEGREE, y / PER_DEGREE]);

/** Polygons as one feature of RFC 7946. */
export function shadowGeoJson(
  polygons: readonly ShadowPolygon[],
  properties: Readonly<Record<string, number>>,
): string {
  return JSON.stringify({
    type: 'FeatureCollection',
    features: [
      {
        type: 'Feature',
        properties,
        geometry: {
          type: 'MultiPolygon',
          coordinates: polygons.map(({ outer, holes }) => [closed(outer), ...holes.map(closed)]),
        },
      },
    ],
  });
}

const closed = (ring: readonly Corner[]): readonly Corner[] => [...ring, ...ring.slice(0, 1)];
