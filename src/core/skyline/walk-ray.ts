import { isFilled, VOID_HEIGHT_M } from './elevation-grid.ts';
import { gridHeightM, type PlacedGrid } from './placed-grid.ts';
import { DROP_PER_SQUARE_M } from './terrain-drop.ts';

/** What a ray has met so far. */
export type RaySight = {
  /** Of the apparent altitude. */
  tangent: number;
  /** Where that was. */
  distanceM: number;
  /** Heights read, and how many of them rest on a filled void. */
  read: number;
  readFilled: number;
};

/** A stretch of a ray, straight in the columns and rows of a grid; `from` and `to` are shares of it. */
export type Leg = {
  x: number;
  y: number;
  xRun: number;
  yRun: number;
  startM: number;
  lengthM: number;
  from: number;
  to: number;
};

/**
 * Into how many parts a cell is cut, by its distance from the eye in samples. Farther out its
 * sides are enough; near, where it is wider than a degree, what lies inside counts as well.
 */
const CELL_PARTS = [
  { withinSamples: 4, parts: 32 },
  { withinSamples: 100, parts: 4 },
] as const;

/**
 * Follows a leg over a grid from line to line of its lattice, columns and rows alike, and keeps
 * the highest line of sight. Between two lines a ray is inside one cell, which has no summit of
 * its own: no ridge lies between the heights read. [franklinRay1994] Stretches over voids are
 * added to `gaps` as pairs of shares of the leg.
 */
export function walkLeg(
  placed: PlacedGrid,
  leg: Leg,
  eyeM: number,
  sight: RaySight,
  gaps: number[],
): void {
  const samples = leg.startM / placed.spacingM;
  const parts = CELL_PARTS.find(({ withinSamples }) => samples < withinSamples)?.parts ?? 1;
  const mostlyAcross = Math.abs(leg.xRun) >= Math.abs(leg.yRun);
  // Where another grid's data end, the way goes on inside a cell.
  if (leg.from > 0) lookAt(placed, leg, leg.from, eyeM, sight);
  if (leg.to < 1) lookAt(placed, leg, leg.to, eyeM, sight);
  crossLines(placed, leg, { ofColumns: true, parts }, eyeM, sight, mostlyAcross ? gaps : null);
  crossLines(placed, leg, { ofColumns: false, parts }, eyeM, sight, mostlyAcross ? null : gaps);
}

function lookAt(
  { grid }: PlacedGrid,
  leg: Leg,
  share: number,
  eyeM: number,
  sight: RaySight,
): void {
  const at = { x: leg.x + leg.xRun * share, y: leg.y + leg.yRun * share };
  const { heightM } = gridHeightM(grid, at);
  const distanceM = leg.startM + leg.lengthM * share;
  const aboveM = heightM - eyeM - DROP_PER_SQUARE_M * distanceM * distanceM;
  if (heightM === VOID_HEIGHT_M || aboveM <= sight.tangent * distanceM) return;
  sight.tangent = aboveM / distanceM;
  sight.distanceM = distanceM;
}

function crossLines(
  { grid }: PlacedGrid,
  leg: Leg,
  lines: { readonly ofColumns: boolean; readonly parts: number },
  eyeM: number,
  sight: RaySight,
  gaps: number[] | null,
): void {
  const { heights, columns, rows, filled } = grid;
  const voidM = VOID_HEIGHT_M;
  const dropPerSquareM = DROP_PER_SQUARE_M;
  const { ofColumns, parts } = lines;
  const run = ofColumns ? leg.xRun : leg.yRun;
  if (run === 0) return;
  const start = ofColumns ? leg.x : leg.y;
  const onwards = run > 0;
  const from = (start + run * leg.from) * parts;
  const to = (start + run * leg.to) * parts;
  const first = onwards ? Math.ceil(from) : Math.floor(from);
  const last = onwards ? Math.floor(to) : Math.ceil(to);
  const crossings = onwards ? last - first : first - last;
  const step = (onwards ? 1 : -1) / parts;
  const shareStep = step / run;
  let share = (first / parts - start) / run;
  let line = first / parts;
  let along = (ofColumns ? leg.y : leg.x) + (ofColumns ? leg.yRun : leg.xRun) * share;
  const alongStep = (ofColumns ? leg.yRun : leg.xRun) * shareStep;
  let distanceM = leg.startM + leg.lengthM * share;
  const distanceStepM = leg.lengthM * shareStep;
  const lineStride = ofColumns ? 1 : columns;
  const alongStride = ofColumns ? columns : 1;
  const lastLine = (ofColumns ? columns : rows) - 2;
  const lastAlong = (ofColumns ? rows : columns) - 2;
  let tangent = sight.tangent;
  let ridgeM = sight.distanceM;

  for (let crossing = 0; crossing <= crossings; crossing += 1) {
    // The bilinear height, the corners read in order of the strides.
    const lineAt = Math.min(line | 0, lastLine);
    const alongAt = Math.min(along | 0, lastAlong);
    const lineShare = line - lineAt;
    const alongShare = along - alongAt;
    const corner = lineAt * lineStride + alongAt * alongStride;
    const here = heights[corner] as number;
    const beside = heights[corner + alongStride] as number;
    const next = heights[corner + lineStride] as number;
    const nextBeside = heights[corner + lineStride + alongStride] as number;
    const near = here + (beside - here) * alongShare;
    const far = next + (nextBeside - next) * alongShare;
    let heightM = near + (far - near) * lineShare;
    if (
      here === voidM ||
      beside === voidM ||
      next === voidM ||
      nextBeside === voidM ||
      (filled !== null &&
        (isFilled(filled, corner) ||
          isFilled(filled, corner + alongStride) ||
          isFilled(filled, corner + lineStride) ||
          isFilled(filled, corner + lineStride + alongStride)))
    ) {
      const known = gridHeightM(grid, ofColumns ? { x: line, y: along } : { x: along, y: line });
      heightM = known.heightM;
      if (known.isFilled) sight.readFilled += 1;
    }
    if (heightM === voidM) {
      if (gaps !== null) addGap(gaps, leg, share, Math.abs(shareStep) / 2);
    } else {
      sight.read += 1;
      const aboveM = heightM - eyeM - dropPerSquareM * distanceM * distanceM;
      if (aboveM > tangent * distanceM) {
        tangent = aboveM / distanceM;
        ridgeM = distanceM;
      }
    }
    line += step;
    along += alongStep;
    distanceM += distanceStepM;
    share += shareStep;
  }
  sight.tangent = tangent;
  sight.distanceM = ridgeM;
}

/** Half a step to either side of a void; gaps that touch become one. */
function addGap(gaps: number[], { from, to }: Leg, share: number, halfStep: number): void {
  const start = Math.max(from, share - halfStep);
  const end = Math.min(to, share + halfStep);
  const lastEnd = gaps.at(-1);
  if (lastEnd !== undefined && gaps.length > 0 && start <= lastEnd + halfStep / 2)
    gaps[gaps.length - 1] = Math.max(lastEnd, end);
  else if (end > start) gaps.push(start, end);
}
