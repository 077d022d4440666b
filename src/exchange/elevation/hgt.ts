import { markVoids, VOID_HEIGHT_M, type ElevationGrid } from '../../core/skyline/elevation-grid.ts';
import { fail, ok, type Result } from '../../core/units/result.ts';
import { boundsOf, type ElevationArea } from './elevation-area.ts';
import { hgtCorner } from './hgt-name.ts';

/** Samples on a side, edges included, of one second and three seconds of arc. */
const SIDES = [3601, 1201] as const;
const bytesOf = (side: number): number => side * side * 2;
export const MAX_HGT_BYTES = bytesOf(SIDES[0]);

/**
 * A tile of heights as the Shuttle Radar Topography Mission published them: no header, 16 bits
 * signed, high byte first, rows from the north, samples on the degree lines. Only the rows within
 * reach are read; null when none is.
 */
export async function readHgt(
  file: { readonly name: string; readonly blob: Blob },
  area: ElevationArea,
): Promise<Result<ElevationGrid | null, string>> {
  const corner = hgtCorner(file.name);
  if (!corner.ok) return corner;
  const side = SIDES.find((each) => bytesOf(each) === file.blob.size);
  if (side === undefined)
    return fail(
      `${file.name}: expected ${number(bytesOf(1201))} bytes (1201 × 1201 heights, 3″) or ${number(bytesOf(3601))} bytes (3601 × 3601, 1″), found ${number(file.blob.size)}.`,
    );
  const { southDeg, westDeg } = corner.value;
  const step = 1 / (side - 1);
  const bounds = boundsOf(area);
  if (![-360, 0, 360].some((turn) => isBeside(westDeg + turn, bounds))) return ok(null);
  const firstRow = Math.max(0, Math.floor((southDeg + 1 - bounds.northDeg) / step));
  const lastRow = Math.min(side - 1, Math.ceil((southDeg + 1 - bounds.southDeg) / step));
  if (lastRow <= firstRow) return ok(null);

  const bytes = await file.blob
    .slice(firstRow * side * 2, (lastRow + 1) * side * 2)
    .arrayBuffer()
    .catch(() => null);
  if (bytes === null)
    return fail(`${file.name}: the file could not be read; it may have been moved or locked.`);
  const heights = swapped(bytes);
  const { voidCount, absurdCount } = markVoids(heights, VOID_HEIGHT_M);
  if (voidCount === heights.length)
    return fail(
      `${file.name}: expected heights within ${Math.round(area.reachM / 1000)} km of the spot, found only voids.`,
    );
  return ok({
    name: file.name,
    lattice: 'degrees',
    west: westDeg,
    north: southDeg + 1 - firstRow * step,
    columnStep: step,
    rowStep: step,
    columns: side,
    rows: lastRow - firstRow + 1,
    rim: 0,
    heights,
    voidCount,
    absurdCount,
    filled: null,
  });
}

const isBeside = (westDeg: number, bounds: { westDeg: number; eastDeg: number }): boolean =>
  westDeg <= bounds.eastDeg && westDeg + 1 >= bounds.westDeg;

/** The bytes of each pair change places where they lie. */
function swapped(bytes: ArrayBuffer): Int16Array {
  const pairs = new Uint16Array(bytes);
  for (let index = 0; index < pairs.length; index += 1) {
    const pair = pairs[index] ?? 0;
    pairs[index] = (pair << 8) | (pair >>> 8);
  }
  return new Int16Array(bytes);
}

const number = (value: number): string => value.toLocaleString('en');
