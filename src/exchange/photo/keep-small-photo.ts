import { fail, ok, type Result } from '../../core/units/result.ts';
import type { PhotoFacts } from './photo-facts.ts';

export type SmallPhoto = {
  /** JPEG in sRGB, upright, without any camera data. */
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly widthPx: number;
  readonly heightPx: number;
};

export const SMALL_LONG_SIDE_PX = 1600;
export const SMALL_TYPE = 'image/jpeg';
const SMALL_BYTES = 300e3;
const QUALITIES = [0.85, 0.75, 0.65, 0.55, 0.45, 0.35];
const SHRINK = 0.75;
const SMALLEST_SIDE_PX = 200;
/** Decoded, four bytes each. */
const MOST_PIXELS = 150e6;

/**
 * A copy to keep beside the spot: upright, long side at most 1600 px, under 300 kB. A refusal says
 * why there is no picture; what the camera wrote can be kept all the same.
 */
export async function keepSmallPhoto(
  file: Blob,
  facts: Pick<PhotoFacts, 'name' | 'kind' | 'widthPx' | 'heightPx'>,
): Promise<Result<SmallPhoto, string>> {
  const pixels = (facts.widthPx ?? 0) * (facts.heightPx ?? 0);
  if (pixels > MOST_PIXELS)
    return fail(
      `${facts.name}: found ${Math.round(pixels / 1e6)} million pixels, expected at most ${MOST_PIXELS / 1e6} million; kept without its picture.`,
    );
  const whole = await createImageBitmap(file, { imageOrientation: 'from-image' }).catch(() => null);
  if (whole === null)
    return fail(`${facts.name}: ${noPictureWords(facts.kind)}; kept without its picture.`);
  try {
    const small = await smallEnough(whole);
    return small === null
      ? fail(`${facts.name}: the browser could not make a smaller copy; kept without its picture.`)
      : ok(small);
  } finally {
    whole.close();
  }
}

const noPictureWords = (kind: PhotoFacts['kind']): string =>
  kind === 'HEIC' || kind === 'TIFF' || kind === 'AVIF'
    ? `this browser shows no ${kind} pictures`
    : `the ${kind} is damaged or was cut short`;

async function smallEnough(whole: ImageBitmap): Promise<SmallPhoto | null> {
  const longSidePx = Math.max(whole.width, whole.height);
  let scale = Math.min(1, SMALL_LONG_SIDE_PX / longSidePx);
  for (; ; scale *= SHRINK) {
    const canvas = drawn(whole, scale);
    if (canvas === null) return null;
    const last = longSidePx * scale * SHRINK < SMALLEST_SIDE_PX;
    for (const quality of QUALITIES) {
      const blob = await canvas.convertToBlob({ type: SMALL_TYPE, quality }).catch(() => null);
      if (blob === null || blob.type !== SMALL_TYPE) return null;
      if (blob.size <= SMALL_BYTES || (last && quality === QUALITIES.at(-1)))
        return {
          bytes: new Uint8Array(await blob.arrayBuffer()),
          widthPx: canvas.width,
          heightPx: canvas.height,
        };
    }
  }
}

function drawn(whole: ImageBitmap, scale: number): OffscreenCanvas | null {
  const canvas = new OffscreenCanvas(
    Math.max(1, Math.round(whole.width * scale)),
    Math.max(1, Math.round(whole.height * scale)),
  );
  const context = canvas.getContext('2d');
  if (context === null) return null;
  // JPEG knows no transparency: what shows through is white, as paper.
  context.fillStyle = '#fff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.imageSmoothingQuality = 'high';
  context.drawImage(whole, 0, 0, canvas.width, canvas.height);
  return canvas;
}
