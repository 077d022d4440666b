import { VOID_HEIGHT_M, type ElevationGrid } from '../../core/skyline/elevation-grid.ts';
import { tileAt, type TileNumber } from '../../core/skyline/web-mercator.ts';
import { fail, ok, type Result } from '../../core/units/result.ts';

export type HeightTile = TileNumber & {
  /** Samples on a side, in the middles of the tile's pixels. */
  readonly side: number;
  readonly heights: Float32Array;
};

/** 4 bytes each. */
const MAX_SAMPLES = 24e6;

/** Tiles of one zoom and size laid edge to edge as one grid, so that no seam runs between them. */
export function tileMosaic(
  tiles: readonly HeightTile[],
  place: { readonly latitudeDeg: number; readonly longitudeDeg: number },
  name: string,
): Result<ElevationGrid, string> {
  const [first] = tiles;
  if (first === undefined) return fail(`${name}: expected at least one tile, found none.`);
  const { zoom, side } = first;
  const world = 2 ** zoom;
  const placeX = tileAt(place, zoom).x;
  // The world goes round: each tile counts from the side of the place that it is nearer to.
  const laid = tiles.map((tile) => ({
    ...tile,
    x: tile.x + world * Math.round((placeX - tile.x) / world),
  }));
  const west = Math.min(...laid.map(({ x }) => x));
  const north = Math.min(...laid.map(({ y }) => y));
  const columns = (Math.max(...laid.map(({ x }) => x)) - west + 1) * side;
  const rows = (Math.max(...laid.map(({ y }) => y)) - north + 1) * side;
  if (columns * rows > MAX_SAMPLES)
    return fail(
      `${name}: expected tiles that lie side by side, found a field of ${columns} × ${rows} heights.`,
    );
  const heights = new Float32Array(columns * rows).fill(VOID_HEIGHT_M);
  for (const tile of laid) layTile(heights, columns, tile, { west, north });
  let voidCount = 0;
  for (const heightM of heights) if (heightM === VOID_HEIGHT_M) voidCount += 1;
  const step = 1 / (world * side);
  return ok({
    name,
    lattice: 'web-mercator',
    west: west / world + step / 2,
    north: north / world + step / 2,
    columnStep: step,
    rowStep: step,
    columns,
    rows,
    rim: 0,
    heights,
    voidCount,
    absurdCount: 0,
    filled: null,
  });
}

function layTile(
  heights: Float32Array,
  columns: number,
  { x, y, side, heights: own }: HeightTile,
  corner: { readonly west: number; readonly north: number },
): void {
  const start = (y - corner.north) * side * columns + (x - corner.west) * side;
  for (let row = 0; row < side; row += 1)
    heights.set(own.subarray(row * side, (row + 1) * side), start + row * columns);
}
