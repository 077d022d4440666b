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
  bytes[linear >= 1 ? TABLE_STEPS : linear <= 0 ? 0 : (linear * TABLE_STEPS + 0.5) | 0] ?? 0;

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
  const row = new Float32Array(columns * 3);
  for (let y = 0; y < heightPx; y += 1) {
    const down = ((y + 0.5) / heightPx) * (rows - 1);
    const upper = Math.min(rows - 2, Math.floor(down));
    const gain = gains[y] ?? 1;
    for (let at = 0; at < row.length; at += 1) {
      const above = linearRgb[upper * columns * 3 + at] ?? 0;
      const below = linearRgb[(upper + 1) * columns * 3 + at] ?? 0;
      row[at] = (above + (down - upper) * (below - above)) * gain;
    }
    let byte = y * widthPx * 4;
    for (let x = 0; x < widthPx; x += 1) {
      const along = ((x + 0.5) / widthPx) * (columns - 1);
      const left = Math.min(columns - 2, along | 0);
      const share = along - left;
      const from = left * 3;
      for (let channel = 0; channel < 3; channel += 1) {
        const one = row[from + channel] ?? 0;
        rgba[byte + channel] = byteOf(
          encoding,
          one + share * ((row[from + 3 + channel] ?? 0) - one),
        );
      }
      rgba[byte + 3] = 255;
      byte += 4;
    }
  }
}

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
