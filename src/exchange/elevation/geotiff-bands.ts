import type { GeoTIFFImage } from 'geotiff';
import { fail, ok, type Result } from '../../core/units/result.ts';
import { samplesAsHeights, type SampleKind } from './geotiff-samples.ts';
import type { SampleWindow } from './geotiff-window.ts';

/** Unpacked at a time, and on the whole. */
const MAX_BAND_BYTES = 64e6;
const MAX_WHOLE_BYTES = 2e9;

/**
 * The samples of a window as heights, read in bands of whole strips or tiles so that no more than
 * one band is unpacked at a time. Samples outside the image are 0. Yields the share read.
 */
export async function* readBands(
  image: GeoTIFFImage,
  kind: SampleKind,
  { left, top, right, bottom }: SampleWindow,
): AsyncGenerator<number, Result<Int16Array | Float32Array, string>> {
  const blockWidth = image.getTileWidth();
  const blockHeight = image.getTileHeight();
  const blocksAcross = Math.ceil(right / blockWidth) - Math.floor(Math.max(0, left) / blockWidth);
  const rowBytes = blocksAcross * blockWidth * (image.getBitsPerSample() / 8);
  const bandBytes = rowBytes * blockHeight;
  const wholeBytes = rowBytes * (bottom - top + 2 * blockHeight);
  if (bandBytes > MAX_BAND_BYTES || wholeBytes > MAX_WHOLE_BYTES)
    return fail(
      `expected strips or tiles of which those near the spot unpack to at most ${MAX_WHOLE_BYTES / 1e9} GB, ${MAX_BAND_BYTES / 1e6} MB side by side, found ${(wholeBytes / 1e9).toFixed(1)} GB, ${Math.round(bandBytes / 1e6)} MB`,
    );
  const bandRows = blockHeight * Math.max(1, Math.floor(MAX_BAND_BYTES / 8 / bandBytes));
  const columns = right - left;
  const isWhole = kind === 'int16' || kind === 'uint16';
  const heights = new (isWhole ? Int16Array : Float32Array)(columns * (bottom - top));
  for (let from = top; from < bottom;) {
    const to = Math.min(bottom, (Math.floor(from / bandRows) + 1) * bandRows);
    const samples = await image.readRasters({
      window: [left, from, right, to],
      samples: [0],
      interleave: true,
    });
    heights.set(samplesAsHeights(samples, kind), (from - top) * columns);
    from = to;
    yield (to - top) / (bottom - top);
  }
  return ok(heights);
}
