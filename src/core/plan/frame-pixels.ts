import type { Triple } from '../colour/chromaticity.ts';
import { decodeSrgb, encodeSrgb } from '../colour/srgb.ts';
import type { SkyLattice } from '../sky/sky-lattice.ts';

/** A picture, encoded; four bytes a pixel, row by row from the left upper corner. */
export type FramePixels = {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly rgba: Uint8ClampedArray<ArrayBuffer>;
};

const TABLE_STEPS = 16_384;

export type Encoding = {
  /** Linear 0 to 1 in steps of the table, as a byte. */
  readonly bytes: Uint8Array;
  /** What a byte stands for. */
  readonly linear: Float32Array;
};

/** sRGB once for every tone; the table is fine enough for a tenth of a level. [iec61966] */
export const encodingTable = (): Encoding => ({
  bytes: Uint8Array.from({ length: TABLE_STEPS + 1 }, (_, step) =>
    Math.round(255 * encodeSrgb(step / TABLE_STEPS)),
  ),
  linear: Float32Array.from({ length: 256 }, (_, byte) => decodeSrgb(byte / 255)),
});

export const byteOf = ({ bytes }: Encoding, linear: number): number =>
  bytes[stepOf(linear * TABLE_STEPS)] ?? 0;

/** Light that each row of pixels keeps behind a graduated filter, 0 to 1. */
export type RowGains = Float32Array;

/** Fills every pixel with the sky, straight between the nodes in linear light. */
export function paintSky(
  pixels: FramePixels,
  lattice: SkyLattice,
  gains: RowGains,
  encoding: Encoding,
): void {
  const { widthPx, heightPx, rgba } = pixels;
  const { columns, rows, linearRgb } = lattice;
  const { bytes } = encoding;
  const row = new Float32Array((columns + 1) * 3);
  // Where each column of pixels lies between its nodes is the same in every row.
  const nodes = Int32Array.from({ length: widthPx }, (_, x) =>
    Math.min(columns - 2, Math.floor(alongOf(x, widthPx, columns))),
  );
  const shares = Float32Array.from(nodes, (node, x) => alongOf(x, widthPx, columns) - node);
  for (let y = 0; y < heightPx; y += 1) {
    const down = alongOf(y, heightPx, rows);
    const upper = Math.min(rows - 2, Math.floor(down));
    const gain = (gains[y] ?? 1) * TABLE_STEPS;
    const first = upper * columns * 3;
    const second = first + columns * 3;
    for (let at = 0; at < columns * 3; at += 1) {
      const above = linearRgb[first + at] as number;
      row[at] = (above + (down - upper) * ((linearRgb[second + at] as number) - above)) * gain;
    }
    let byte = y * widthPx * 4;
    for (let x = 0; x < widthPx; x += 1) {
      const from = (nodes[x] as number) * 3;
      const share = shares[x] as number;
      const red = row[from] as number;
      const green = row[from + 1] as number;
      const blue = row[from + 2] as number;
      rgba[byte] = bytes[stepOf(red + share * ((row[from + 3] as number) - red))] as number;
      rgba[byte + 1] = bytes[stepOf(green + share * ((row[from + 4] as number) - green))] as number;
      rgba[byte + 2] = bytes[stepOf(blue + share * ((row[from + 5] as number) - blue))] as number;
      rgba[byte + 3] = 255;
      byte += 4;
    }
  }
}

/** Middle of a pixel counted in cells between nodes. */
const alongOf = (pixel: number, pixels: number, nodes: number): number =>
  ((pixel + 0.5) / pixels) * (nodes - 1);

/** Place in the table of a value in steps of it. */
const stepOf = (steps: number): number =>
  steps >= TABLE_STEPS ? TABLE_STEPS : steps <= 0 ? 0 : (steps + 0.5) | 0;

/** Puts a colour over part of a pixel: mixed as light, encoded again. */
export function coverPixel(
  { rgba, widthPx }: FramePixels,
  place: { readonly x: number; readonly y: number; readonly share: number },
  colour: Triple,
  encoding: Encoding,
): void {
  const byte = (place.y * widthPx + place.x) * 4;
  for (const channel of [0, 1, 2] as const) {
    const under = encoding.linear[rgba[byte + channel] ?? 0] ?? 0;
    // What clips is clipped before it is mixed: the sensor's well is full.
    const over = Math.min(1, Math.max(0, colour[channel]));
    rgba[byte + channel] = byteOf(encoding, under + place.share * (over - under));
  }
}

/** Puts the ground's colour below its edge. */
export function paintGround(
  pixels: FramePixels,
  ground: { readonly edgePx: Float32Array; readonly colour: Triple },
  gains: RowGains,
  encoding: Encoding,
): void {
  const { widthPx, heightPx, rgba } = pixels;
  const rowColours = Uint8Array.from({ length: heightPx * 3 }, (_, at) =>
    byteOf(
      encoding,
      (ground.colour[(at % 3) as 0 | 1 | 2] ?? 0) * (gains[Math.floor(at / 3)] ?? 1),
    ),
  );
  for (let x = 0; x < widthPx; x += 1) {
    const edge = Math.max(0, ground.edgePx[x] ?? heightPx);
    const first = Math.floor(edge);
    if (first >= heightPx) continue;
    const gain = gains[first] ?? 1;
    const colour = ground.colour.map((value) => value * gain) as unknown as Triple;
    coverPixel(pixels, { x, y: first, share: 1 - (edge - first) }, colour, encoding);
    for (let y = first + 1; y < heightPx; y += 1) {
      const byte = (y * widthPx + x) * 4;
      rgba[byte] = rowColours[3 * y] ?? 0;
      rgba[byte + 1] = rowColours[3 * y + 1] ?? 0;
      rgba[byte + 2] = rowColours[3 * y + 2] ?? 0;
    }
  }
}
