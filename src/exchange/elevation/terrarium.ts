import {
  HIGHEST_HEIGHT_M,
  LOWEST_HEIGHT_M,
  VOID_HEIGHT_M,
} from '../../core/skyline/elevation-grid.ts';

const SEA_LEVEL_M = 0;

/**
 * Heights of the open RGB-encoded tiles: red · 256 + green + blue/256 − 32768 metres, from pixels
 * of red, green, blue and opacity. A see-through pixel has no height. Below the lowest land it is
 * the sea bed that is given; what is seen from the shore is the surface.
 */
export function terrariumHeights(pixels: Uint8ClampedArray | Uint8Array): Float32Array {
  const heights = new Float32Array(pixels.length / 4);
  for (let index = 0; index < heights.length; index += 1) {
    const at = index * 4;
    const heightM =
      (pixels[at] ?? 0) * 256 + (pixels[at + 1] ?? 0) + (pixels[at + 2] ?? 0) / 256 - 32768;
    if (pixels[at + 3] === 0 || heightM > HIGHEST_HEIGHT_M) heights[index] = VOID_HEIGHT_M;
    else heights[index] = heightM < LOWEST_HEIGHT_M ? SEA_LEVEL_M : heightM;
  }
  return heights;
}
