/** East and north, or longitude and latitude: crossings and turns are the same in both. */
export type RingPoint = readonly [x: number, y: number];
export type PointRing = readonly RingPoint[];

/** Twice the area, counter-clockwise positive. */
export function signedDoubleArea(ring: PointRing): number {
  const [originX = 0, originY = 0] = ring[0] ?? [];
  return ring.reduce((sum, [x, y], index) => {
    const [beforeX, beforeY] = ring.at(index - 1) ?? [originX, originY];
    return sum + (beforeX - originX) * (y - originY) - (x - originX) * (beforeY - originY);
  }, 0);
}

export const counterClockwise = (ring: PointRing): PointRing =>
  signedDoubleArea(ring) < 0 ? ring.toReversed() : ring;

export const clockwise = (ring: PointRing): PointRing =>
  signedDoubleArea(ring) > 0 ? ring.toReversed() : ring;

/** Corners looked at again and again: enough for a hundred loops of an ordinary outline. */
const MOST_LOOKS = 20_000;

/**
 * A ring that crosses or touches itself, taken apart there into loops that do not; each loop is an
 * outline of its own, whichever way round it ran. Of a tangle without end the rest stays together.
 */
export function simpleRings(ring: PointRing): readonly PointRing[] {
  const loops: PointRing[] = [];
  const open: PointRing[] = [withoutRepeats(ring)];
  let looks = 0;
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (next.length < 3) continue;
    const crossing = looks <= MOST_LOOKS ? firstCrossing(next) : null;
    looks += next.length;
    if (crossing === null) {
      if (signedDoubleArea(next) !== 0) loops.push(next);
      continue;
    }
    const { first, second, at } = crossing;
    open.push(
      withoutRepeats([at, ...next.slice(first + 1, second + 1)]),
      withoutRepeats([at, ...next.slice(second + 1), ...next.slice(0, first + 1)]),
    );
  }
  return loops;
}

const samePoint = (first: RingPoint | undefined, second: RingPoint | undefined): boolean =>
  first !== undefined && second !== undefined && first[0] === second[0] && first[1] === second[1];

const withoutRepeats = (ring: PointRing): PointRing =>
  ring.filter((point, index) => ring.length > 1 && !samePoint(point, ring.at(index - 1)));

type Crossing = { readonly first: number; readonly second: number; readonly at: RingPoint };

/** Two edges, not neighbours, with a point in common; edge i leads from corner i to the next. */
function firstCrossing(ring: PointRing): Crossing | null {
  const count = ring.length;
  if (count < 4) return null;
  const lows = ring.map(([x], edge) => Math.min(x, ring[(edge + 1) % count]?.[0] ?? x));
  const highs = ring.map(([x], edge) => Math.max(x, ring[(edge + 1) % count]?.[0] ?? x));
  const byLow = lows.map((_, edge) => edge).toSorted((a, b) => (lows[a] ?? 0) - (lows[b] ?? 0));
  for (const [rank, edge] of byLow.entries())
    for (let later = rank + 1; later < count; later += 1) {
      const other = byLow[later] ?? 0;
      if ((lows[other] ?? 0) > (highs[edge] ?? 0)) break;
      const first = Math.min(edge, other);
      const second = Math.max(edge, other);
      if (second - first < 2 || second - first === count - 1) continue;
      const at = commonPoint(
        [ring[first], ring[first + 1]],
        [ring[second], ring[(second + 1) % count]],
      );
      if (at !== null) return { first, second, at };
    }
  return null;
}

type Ends = readonly [RingPoint | undefined, RingPoint | undefined];

/** Where two edges meet; null where they do not, or run along one another. */
function commonPoint([a, b]: Ends, [c, d]: Ends): RingPoint | null {
  if (a === undefined || b === undefined || c === undefined || d === undefined) return null;
  const fromA = sideOf(c, d, a);
  const fromB = sideOf(c, d, b);
  const fromC = sideOf(a, b, c);
  const fromD = sideOf(a, b, d);
  if (fromA * fromB > 0 || fromC * fromD > 0 || fromA === fromB) return null;
  if (fromA === 0) return a;
  if (fromB === 0) return b;
  if (fromC === 0) return c;
  if (fromD === 0) return d;
  const share = fromA / (fromA - fromB);
  return [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
}

/** Above 0 where the point lies left of the way from one to the other. */
const sideOf = (from: RingPoint, to: RingPoint, [x, y]: RingPoint): number =>
  (to[0] - from[0]) * (y - from[1]) - (x - from[0]) * (to[1] - from[1]);

/** Whether an edge of one ring truly crosses one of the other; a touch is no crossing. */
export const ringsCross = (first: PointRing, second: PointRing): boolean =>
  first.some((b, index) => {
    const a = first.at(index - 1) ?? b;
    return second.some((d, other) => {
      const c = second.at(other - 1) ?? d;
      return sideOf(c, d, a) * sideOf(c, d, b) < 0 && sideOf(a, b, c) * sideOf(a, b, d) < 0;
    });
  });
