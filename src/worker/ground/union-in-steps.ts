import type { PolyPath64, PolyTree64 } from 'clipper2-ts';

import type { CmPath } from './gathered-rings.ts';

/** One piece of ground; islands in its holes are pieces of their own. */
export type CmPolygon = {
  readonly outer: CmPath;
  readonly holes: readonly CmPath[];
};

export type Box = {
  readonly west: number;
  readonly east: number;
  readonly south: number;
  readonly north: number;
};

type Piece = CmPolygon & Box;

/** Joins rings by the nonzero rule: each bundle by itself, then two and two; tells how far it is. */
export async function* unionInSteps(
  bundles: readonly CmPath[][],
): AsyncGenerator<number, readonly CmPolygon[]> {
  const { Clipper64, ClipType, FillRule, PolyTree64: Tree } = await import('clipper2-ts');
  const joined = (paths: CmPath[]): readonly Piece[] => {
    const clipper = new Clipper64();
    clipper.addSubject(paths);
    const tree = new Tree();
    clipper.execute(ClipType.Union, FillRule.NonZero, tree);
    return piecesOf(tree);
  };

  const steps = 2 * bundles.length;
  let done = 0;
  let parts: (readonly Piece[])[] = [];
  for (const bundle of bundles) {
    parts.push(joined(bundle));
    done += 1;
    yield done / steps;
  }
  while (parts.length > 1) {
    const pairs: (readonly Piece[])[] = [];
    for (let at = 0; at < parts.length; at += 2) {
      const [first = [], second] = parts.slice(at, at + 2);
      if (second === undefined) {
        pairs.push(first);
        continue;
      }
      const near = [...piecesNear(first, second), ...piecesNear(second, first)];
      const isNear = new Set(near);
      const apart = [...first, ...second].filter((piece) => !isNear.has(piece));
      const paths = near.flatMap(({ outer, holes }) => [outer, ...holes]);
      pairs.push(paths.length === 0 ? apart : [...apart, ...joined(paths)]);
      done += 1;
      yield done / steps;
    }
    parts = pairs;
  }
  return parts[0] ?? [];
}

/** What of a piece lies in a box. */
export async function boundedPieces(
  { outer, holes }: CmPolygon,
  { west, east, south, north }: Box,
): Promise<readonly CmPolygon[]> {
  const { Clipper64, ClipType, FillRule, PolyTree64: Tree } = await import('clipper2-ts');
  const clipper = new Clipper64();
  clipper.addSubject([outer, ...holes]);
  clipper.addClip([
    [
      { x: west, y: south },
      { x: east, y: south },
      { x: east, y: north },
      { x: west, y: north },
    ],
  ]);
  const tree = new Tree();
  clipper.execute(ClipType.Intersection, FillRule.NonZero, tree);
  return piecesOf(tree);
}

/** Twice the signed area is summed, so that holes count against their outline. */
export const areaCm2 = (pieces: readonly CmPolygon[]): number =>
  pieces
    .flatMap(({ outer, holes }) => [outer, ...holes])
    .reduce((sum, path) => sum + signedDoubleAreaCm2(path), 0) / 2;

function signedDoubleAreaCm2(path: CmPath): number {
  const [origin = { x: 0, y: 0 }] = path;
  return path.reduce((sum, { x, y }, index) => {
    const before = path.at(index - 1) ?? origin;
    return sum + (before.x - origin.x) * (y - origin.y) - (x - origin.x) * (before.y - origin.y);
  }, 0);
}

function piecesOf(tree: PolyTree64): readonly Piece[] {
  const pieces: Piece[] = [];
  const open: PolyPath64[] = [tree];
  for (let node = open.pop(); node !== undefined; node = open.pop())
    for (const piece of childrenOf(node)) {
      const holes = childrenOf(piece);
      const outer = piece.poly ?? [];
      pieces.push({ outer, holes: holes.map((hole) => hole.poly ?? []), ...boxOf(outer) });
      open.push(...holes);
    }
  return pieces;
}

const childrenOf = (node: PolyPath64): readonly PolyPath64[] =>
  Array.from({ length: node.count }, (_, index) => node.child(index));

function boxOf(path: CmPath): Box {
  const box = { west: Infinity, east: -Infinity, south: Infinity, north: -Infinity };
  for (const { x, y } of path) {
    box.west = Math.min(box.west, x);
    box.east = Math.max(box.east, x);
    box.south = Math.min(box.south, y);
    box.north = Math.max(box.north, y);
  }
  return box;
}

/** Those that can touch one of the others: the rest need not be looked at again. */
function piecesNear(pieces: readonly Piece[], others: readonly Piece[]): readonly Piece[] {
  const round = {
    west: Math.min(...others.map(({ west }) => west)),
    east: Math.max(...others.map(({ east }) => east)),
    south: Math.min(...others.map(({ south }) => south)),
    north: Math.max(...others.map(({ north }) => north)),
  };
  return pieces.filter(
    (piece) => meets(piece, round) && others.some((other) => meets(piece, other)),
  );
}

const meets = (first: Box, second: Box): boolean =>
  first.west <= second.east &&
  second.west <= first.east &&
  first.south <= second.north &&
  second.south <= first.north;
