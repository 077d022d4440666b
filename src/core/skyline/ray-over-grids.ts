import type { PlacedGrid } from './placed-grid.ts';
import { walkLeg, type Leg, type RaySight } from './walk-ray.ts';

/** Where a ray passes: its distances, and there latitude, longitude and share of the Mercator square. */
export type RayKnots = {
  readonly distancesM: Float64Array;
  readonly latitudesDeg: Float64Array;
  readonly longitudesDeg: Float64Array;
  readonly mercatorY: Float64Array;
};

export type RayCoverage = {
  /** Length of the ray that no grid knows a height for. */
  readonly uncoveredM: number;
  /** Where the first knot-to-knot stretch lies of which less than half is known. */
  readonly coveredM: number;
};

/** A share of a leg shorter than this is rounding. */
const NO_LENGTH = 1e-7;

/** Walks a ray from knot to knot; of each piece the first grid that knows it is read, and no other. */
export function rayOverGrids(
  placedGrids: readonly PlacedGrid[],
  knots: RayKnots,
  eyeM: number,
  sight: RaySight,
): RayCoverage {
  const lastKnot = knots.distancesM.length - 1;
  let uncoveredM = 0;
  let coveredM = knots.distancesM[lastKnot] ?? 0;
  let isWhole = true;
  for (let knot = 0; knot < lastKnot; knot += 1) {
    let open: readonly number[] = WHOLE;
    for (const placed of placedGrids) {
      open = walkOpen(placed, legAt(placed, knots, knot), open, eyeM, sight);
      if (open.length === 0) break;
    }
    if (open.length === 0) continue;
    const openShare = lengthOf(open);
    const startM = knots.distancesM[knot] ?? 0;
    uncoveredM += openShare * ((knots.distancesM[knot + 1] ?? 0) - startM);
    if (isWhole && openShare > 0.5) {
      isWhole = false;
      coveredM = startM;
    }
  }
  return { uncoveredM, coveredM };
}

const WHOLE: readonly number[] = [0, 1];
const NOTHING: readonly number[] = [];

function legAt(placed: PlacedGrid, knots: RayKnots, knot: number): Leg {
  const v = placed.isMercator ? knots.mercatorY : knots.latitudesDeg;
  const x = (knots.longitudesDeg[knot] ?? 0) * placed.xScale + placed.xOrigin;
  const y = (v[knot] ?? 0) * placed.yScale + placed.yOrigin;
  const startM = knots.distancesM[knot] ?? 0;
  return {
    x,
    y,
    xRun: (knots.longitudesDeg[knot + 1] ?? 0) * placed.xScale + placed.xOrigin - x,
    yRun: (v[knot + 1] ?? 0) * placed.yScale + placed.yOrigin - y,
    startM,
    lengthM: (knots.distancesM[knot + 1] ?? 0) - startM,
    from: 0,
    to: 1,
  };
}

/** Walks the pieces still open that lie on the grid, and gives those it leaves open. */
function walkOpen(
  placed: PlacedGrid,
  leg: Leg,
  open: readonly number[],
  eyeM: number,
  sight: RaySight,
): readonly number[] {
  const { rim, columns, rows } = placed.grid;
  const across = within(leg.x, leg.xRun, rim, columns - 1 - rim);
  const down = within(leg.y, leg.yRun, rim, rows - 1 - rim);
  const onFrom = Math.max(across.from, down.from);
  const onTo = Math.min(across.to, down.to);
  if (onTo - onFrom < NO_LENGTH) return open;
  const left: number[] = [];
  for (let at = 0; at < open.length; at += 2) {
    const start = open[at] ?? 0;
    const end = open[at + 1] ?? 0;
    leg.from = Math.max(start, onFrom);
    leg.to = Math.min(end, onTo);
    if (leg.to - leg.from < NO_LENGTH) {
      left.push(start, end);
      continue;
    }
    if (leg.from - start > NO_LENGTH) left.push(start, leg.from);
    walkLeg(placed, leg, eyeM, sight, left);
    if (end - leg.to > NO_LENGTH) left.push(leg.to, end);
  }
  return left.length === 0 ? NOTHING : left;
}

/** The share of a leg during which one of its coordinates lies between two bounds. */
function within(
  start: number,
  run: number,
  low: number,
  high: number,
): { readonly from: number; readonly to: number } {
  if (run === 0) return start >= low && start <= high ? { from: 0, to: 1 } : { from: 1, to: 0 };
  const one = (low - start) / run;
  const other = (high - start) / run;
  return { from: Math.max(0, Math.min(one, other)), to: Math.min(1, Math.max(one, other)) };
}

const lengthOf = (open: readonly number[]): number => {
  let length = 0;
  for (let at = 0; at < open.length; at += 2) length += (open[at + 1] ?? 0) - (open[at] ?? 0);
  return length;
};
