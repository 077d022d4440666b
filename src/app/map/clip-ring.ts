import { sidesOf } from './box-sides.ts';
import type { PixelBox } from './free-boxes.ts';

/** A closed line as x, y, x, y …; the last point joins the first. */
export type FlatRing = ArrayLike<number>;

/**
 * What of a filled ring lies in the box. Where the ring leaves the box, the answer runs along the
 * edge of the box (Sutherland and Hodgman, 1974, after dropping points that cannot matter).
 */
export const clipRing = (ring: FlatRing, box: PixelBox): readonly number[] => {
  let points = withoutFarPoints(ring, box);
  points = clipSide(points, 0, (x) => x - box.left);
  points = clipSide(points, 0, (x) => box.right - x);
  points = clipSide(points, 1, (y) => y - box.top);
  return clipSide(points, 1, (y) => box.bottom - y);
};

/** Drops a point that, with the kept one before and the one after it, lies beyond one same side. */
const withoutFarPoints = (ring: FlatRing, box: PixelBox): number[] => {
  const kept: number[] = [];
  let keptSides = 0;
  let sides = sidesOf(ring[0] ?? 0, ring[1] ?? 0, box);
  for (let index = 0; index < ring.length; index += 2) {
    const next = (index + 2) % ring.length;
    const nextSides = sidesOf(ring[next] ?? 0, ring[next + 1] ?? 0, box);
    if ((keptSides & sides & nextSides) === 0) {
      kept.push(ring[index] ?? 0, ring[index + 1] ?? 0);
      keptSides = sides;
    }
    sides = nextSides;
  }
  return kept;
};

const clipSide = (
  points: readonly number[],
  axis: 0 | 1,
  inside: (coordinate: number) => number,
): number[] => {
  const clipped: number[] = [];
  for (let index = 0; index < points.length; index += 2) {
    const next = (index + 2) % points.length;
    const [x, y, nextX, nextY] = [points[index], points[index + 1], points[next], points[next + 1]];
    if (x === undefined || y === undefined || nextX === undefined || nextY === undefined) break;
    const here = inside(axis === 0 ? x : y);
    const there = inside(axis === 0 ? nextX : nextY);
    if (here >= 0) clipped.push(x, y);
    if (here >= 0 !== there >= 0) {
      const share = here / (here - there);
      clipped.push(x + (nextX - x) * share, y + (nextY - y) * share);
    }
  }
  return clipped;
};
