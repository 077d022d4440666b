import type { ObstacleKind } from '../../core/plan/obstacle-schema.ts';
import type { Corner } from '../../core/skyline/obstacle.ts';
import type { GroundView } from './ground-canvas.ts';
import { nearestCopyDeg } from './map-place.ts';
import { mercatorX, mercatorY, WORLD_PX } from './web-mercator.ts';

/** Something that stands on the ground, as the map draws it. */
export type GroundOutline = {
  readonly key: string;
  readonly kind: ObstacleKind;
  /** A ring, or else a line. */
  readonly closed: boolean;
  /** Filled inside: a ring with its courtyards after it. */
  readonly solid: boolean;
  readonly rings: readonly (readonly Corner[])[];
};

/** Outlines put on the Mercator square once, in pixels of zoom 0; closer zooms only scale them. */
export type GroundShapes = {
  readonly outlines: readonly GroundOutline[];
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** First corner of each ring, and one past the last. */
  readonly ringStart: Uint32Array;
  /** First ring of each outline, and one past the last. */
  readonly outlineRing: Uint32Array;
  /** Of each outline: least x, least y, most x, most y. */
  readonly box: Float64Array;
};

export function groundShapes(outlines: readonly GroundOutline[]): GroundShapes {
  const rings = outlines.flatMap((outline) => outline.rings);
  const corners = rings.reduce((sum, ring) => sum + ring.length, 0);
  const shapes = {
    outlines,
    x: new Float64Array(corners),
    y: new Float64Array(corners),
    ringStart: new Uint32Array(rings.length + 1),
    outlineRing: new Uint32Array(outlines.length + 1),
    box: new Float64Array(outlines.length * 4),
  };
  let ringAt = 0;
  let cornerAt = 0;
  outlines.forEach((outline, index) => {
    const [firstDeg = 0] = outline.rings[0]?.[0] ?? [];
    let [west, north, east, south] = [Infinity, Infinity, -Infinity, -Infinity];
    outline.rings.forEach((ring, ringIndex) => {
      const turned = outline.solid && isClockwise(ring) !== (ringIndex === 0);
      for (const corner of turned ? ring.toReversed() : ring) {
        // One that crosses the antimeridian stays in one piece.
        const x = mercatorX(nearestCopyDeg(corner[0], firstDeg));
        const y = mercatorY(corner[1]);
        shapes.x[cornerAt] = x;
        shapes.y[cornerAt] = y;
        west = Math.min(west, x);
        east = Math.max(east, x);
        north = Math.min(north, y);
        south = Math.max(south, y);
        cornerAt += 1;
      }
      ringAt += 1;
      shapes.ringStart[ringAt] = cornerAt;
    });
    shapes.outlineRing[index + 1] = ringAt;
    shapes.box.set([west, north, east, south], index * 4);
  });
  return shapes;
}

/** Seen from above with north up: the first ring is turned so, its courtyards the other way. */
const isClockwise = (ring: readonly Corner[]): boolean => {
  const fromDeg = ring[0]?.[0] ?? 0;
  let twiceArea = 0;
  ring.forEach(([longitudeDeg, latitudeDeg], at) => {
    const [nextDeg, nextLatitudeDeg] = ring[(at + 1) % ring.length] ?? [fromDeg, latitudeDeg];
    twiceArea +=
      (nearestCopyDeg(nextDeg, fromDeg) - nearestCopyDeg(longitudeDeg, fromDeg)) *
      (nextLatitudeDeg + latitudeDeg);
  });
  return twiceArea > 0;
};

/** How an outline's pixels of zoom 0 become pixels of the view, in the copy of the world nearest to it. */
export type Placing = {
  readonly scale: number;
  readonly offsetX: number;
  readonly offsetY: number;
};

export function placingOf(shapes: GroundShapes, index: number, view: GroundView): Placing {
  const scale = 2 ** view.zoom;
  const middle = (view.leftPx + view.widthPx / 2) / scale;
  const own = ((shapes.box[index * 4] ?? 0) + (shapes.box[index * 4 + 2] ?? 0)) / 2;
  const copies = Math.round((middle - own) / WORLD_PX);
  return { scale, offsetX: copies * WORLD_PX * scale - view.leftPx, offsetY: -view.topPx };
}
