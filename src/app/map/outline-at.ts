import type { GeoPoint } from '../../core/place/geo-point.ts';
import type { GroundShapes } from './ground-shapes.ts';
import { mercatorX, mercatorY, WORLD_PX } from './web-mercator.ts';

const REACH_PX = 8;

type Spot = { readonly x: number; readonly y: number };

/** The key of the outline at a place, the smallest where they overlap; null where there is none. */
export function outlineAt(shapes: GroundShapes, place: GeoPoint, zoom: number): string | null {
  const reach = REACH_PX / 2 ** zoom;
  const y = mercatorY(place.latitudeDeg);
  let found: { readonly key: string; readonly size: number } | null = null;
  shapes.outlines.forEach(({ key, solid, closed }, index) => {
    const [west = 0, north = 0, east = 0, south = 0] = shapes.box.subarray(
      index * 4,
      index * 4 + 4,
    );
    const ownX = mercatorX(place.longitudeDeg);
    const x = ownX + WORLD_PX * Math.round(((west + east) / 2 - ownX) / WORLD_PX);
    if (x < west - reach || x > east + reach || y < north - reach || y > south + reach) return;
    const size = Math.max(east - west, south - north);
    if (found !== null && found.size <= size) return;
    const within = solid
      ? isInside(shapes, index, { x, y })
      : isNear(shapes, index, { x, y }, { reach, closed });
    if (within) found = { key, size };
  });
  return (found as { readonly key: string } | null)?.key ?? null;
}

type Edge = { readonly from: Spot; readonly to: Spot; readonly closing: boolean };

function edgesOf(shapes: GroundShapes, index: number): readonly Edge[] {
  const edges: Edge[] = [];
  const spot = (corner: number): Spot => ({ x: shapes.x[corner] ?? 0, y: shapes.y[corner] ?? 0 });
  const lastRing = shapes.outlineRing[index + 1] ?? 0;
  for (let ring = shapes.outlineRing[index] ?? 0; ring < lastRing; ring += 1) {
    const start = shapes.ringStart[ring] ?? 0;
    const end = shapes.ringStart[ring + 1] ?? 0;
    for (let corner = start; corner < end; corner += 1) {
      const closing = corner + 1 === end;
      edges.push({ from: spot(corner), to: spot(closing ? start : corner + 1), closing });
    }
  }
  return edges;
}

/** Inside a ring and outside its courtyards, which wind the other way. */
function isInside(shapes: GroundShapes, index: number, at: Spot): boolean {
  let winding = 0;
  for (const { from, to } of edgesOf(shapes, index)) {
    if (from.y <= at.y === to.y <= at.y) continue;
    const crossing = from.x + ((at.y - from.y) / (to.y - from.y)) * (to.x - from.x);
    if (crossing > at.x) winding += to.y > from.y ? 1 : -1;
  }
  return winding !== 0;
}

const isNear = (
  shapes: GroundShapes,
  index: number,
  at: Spot,
  { reach, closed }: { readonly reach: number; readonly closed: boolean },
): boolean =>
  edgesOf(shapes, index).some(
    ({ from, to, closing }) => (closed || !closing) && distance(at, from, to) <= reach,
  );

const distance = (at: Spot, from: Spot, to: Spot): number => {
  const alongX = to.x - from.x;
  const alongY = to.y - from.y;
  const length = alongX ** 2 + alongY ** 2;
  const share = length === 0 ? 0 : ((at.x - from.x) * alongX + (at.y - from.y) * alongY) / length;
  const within = Math.min(1, Math.max(0, share));
  return Math.hypot(at.x - from.x - within * alongX, at.y - from.y - within * alongY);
};
