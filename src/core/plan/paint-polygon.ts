import type { Triple } from '../colour/chromaticity.ts';
import { coverPixel, type Encoding, type FramePixels, type RowGains } from './frame-pixels.ts';

/** Pixels from the left upper corner. */
export type PixelPoint = { readonly x: number; readonly y: number };

const LINES_PER_PIXEL = 4;

/** Fills a polygon, nonzero rule, its edges by the share of each pixel that they cover. */
export function paintPolygon(
  pixels: FramePixels,
  corners: readonly PixelPoint[],
  colour: Triple,
  gains: RowGains,
  encoding: Encoding,
): void {
  const { widthPx, heightPx } = pixels;
  const ys = corners.map(({ y }) => y);
  const xs = corners.map(({ x }) => x);
  const firstColumn = Math.max(0, Math.floor(Math.min(...xs)));
  const lastColumn = Math.min(widthPx - 1, Math.floor(Math.max(...xs)));
  const firstRow = Math.max(0, Math.floor(Math.min(...ys)));
  const lastRow = Math.min(heightPx - 1, Math.floor(Math.max(...ys)));
  const covered = new Float32Array(widthPx + 1);
  for (let y = firstRow; y <= lastRow; y += 1) {
    covered.fill(0, firstColumn, lastColumn + 2);
    for (let line = 0; line < LINES_PER_PIXEL; line += 1)
      for (const [from, to] of spansAt(corners, y + (line + 0.5) / LINES_PER_PIXEL))
        addSpan(covered, Math.max(0, from), Math.min(widthPx, to));
    const gain = gains[y] ?? 1;
    const here = colour.map((value) => value * gain) as unknown as Triple;
    for (let x = firstColumn; x <= lastColumn; x += 1) {
      const share = Math.min(1, (covered[x] ?? 0) / LINES_PER_PIXEL);
      if (share > 0) coverPixel(pixels, { x, y, share }, here, encoding);
    }
  }
}

/** Where a line across the picture lies inside. */
function spansAt(
  corners: readonly PixelPoint[],
  y: number,
): readonly (readonly [from: number, to: number])[] {
  const crossings: { readonly x: number; readonly turn: 1 | -1 }[] = [];
  for (const [index, corner] of corners.entries()) {
    const next = corners[index + 1] ?? corners[0];
    if (next === undefined || corner.y <= y === next.y <= y) continue;
    const x = corner.x + ((y - corner.y) / (next.y - corner.y)) * (next.x - corner.x);
    crossings.push({ x, turn: next.y > corner.y ? 1 : -1 });
  }
  crossings.sort((one, other) => one.x - other.x);
  const spans: [number, number][] = [];
  let winding = 0;
  let from = 0;
  for (const { x, turn } of crossings) {
    if (winding === 0) from = x;
    winding += turn;
    if (winding === 0) spans.push([from, x]);
  }
  return spans;
}

function addSpan(covered: Float32Array, from: number, to: number): void {
  if (!(to > from)) return;
  const [first, last] = [Math.floor(from), Math.min(covered.length - 1, Math.floor(to))];
  if (first === last) {
    covered[first] = (covered[first] ?? 0) + to - from;
    return;
  }
  covered[first] = (covered[first] ?? 0) + first + 1 - from;
  for (let x = first + 1; x < last; x += 1) covered[x] = (covered[x] ?? 0) + 1;
  covered[last] = (covered[last] ?? 0) + to - last;
}
