import { VOID_HEIGHT_M, type ElevationGrid } from './elevation-grid.ts';

/** How far a void looks for heights, in samples: half a kilometre at one second of arc. */
export const FILL_REACH = 16;

const ROWS_PER_STEP = 64;

type Known = { sum: number; weight: number; count: number };

/**
 * Voids filled from the nearest heights to the west, east, north and south, each weighted by one
 * over its distance, so that an even slope is continued exactly. A void with fewer than two of
 * the four within 16 samples stays one. Writes into the heights it is handed.
 */
export function* fillVoids(grid: ElevationGrid): Generator<number, ElevationGrid> {
  if (grid.voidCount === 0) return grid;
  const { columns, rows, heights } = grid;
  const filled = new Uint8Array(Math.ceil(heights.length / 8));
  const rowsSinceKnown = new Uint16Array(columns).fill(FILL_REACH);
  for (let row = 0; row < rows; row += 1) {
    fillRow({ grid, filled, rowsSinceKnown, row });
    if (row % ROWS_PER_STEP === ROWS_PER_STEP - 1) yield (row + 1) / rows;
  }
  return { ...grid, filled };
}

type RowToFill = {
  readonly grid: ElevationGrid;
  readonly filled: Uint8Array;
  /** Of each column: how far above its last known height lies, at most the reach. */
  readonly rowsSinceKnown: Uint16Array;
  readonly row: number;
};

function fillRow({
  grid: { columns, rows, heights },
  filled,
  rowsSinceKnown,
  row,
}: RowToFill): void {
  const start = row * columns;
  let column = 0;
  while (column < columns) {
    if (heights[start + column] !== VOID_HEIGHT_M) {
      rowsSinceKnown[column] = 0;
      column += 1;
      continue;
    }
    let end = column + 1;
    while (end < columns && heights[start + end] === VOID_HEIGHT_M) end += 1;
    const westM = column > 0 ? heights[start + column - 1] : undefined;
    const eastM = end < columns ? heights[start + end] : undefined;
    for (let at = column; at < end; at += 1) {
      const sinceKnown = Math.min(FILL_REACH, (rowsSinceKnown[at] ?? FILL_REACH - 1) + 1);
      rowsSinceKnown[at] = sinceKnown;
      const known: Known = { sum: 0, weight: 0, count: 0 };
      consider(known, westM, at - column + 1);
      consider(known, eastM, end - at);
      if (sinceKnown < FILL_REACH)
        consider(known, heights[start + at - sinceKnown * columns], sinceKnown);
      for (let below = 1; below < FILL_REACH && row + below < rows; below += 1) {
        const heightM = heights[start + at + below * columns];
        if (heightM === VOID_HEIGHT_M) continue;
        consider(known, heightM, below);
        break;
      }
      if (known.count < 2) continue;
      const index = start + at;
      const heightM = known.sum / known.weight;
      heights[index] = heights instanceof Int16Array ? Math.round(heightM) : heightM;
      filled[index >> 3] = (filled[index >> 3] ?? 0) | (1 << (index & 7));
    }
    column = end;
  }
}

const consider = (known: Known, heightM: number | undefined, distance: number): void => {
  if (heightM === undefined || distance >= FILL_REACH) return;
  known.sum += heightM / distance;
  known.weight += 1 / distance;
  known.count += 1;
};
