import { fail, ok, type Result } from '../../core/units/result.ts';

export type PngPixels = {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Red, green, blue, opacity. */
  readonly pixels: Uint8ClampedArray | Uint8Array;
};

export type DecodePng = (png: ArrayBuffer) => Promise<Result<PngPixels, string>>;

/** A PNG's pixels as they are written, without any matching of colours, through the browser's own decoder. */
export const decodePng: DecodePng = async (png) => {
  try {
    const bitmap = await createImageBitmap(new Blob([png], { type: 'image/png' }), {
      colorSpaceConversion: 'none',
      premultiplyAlpha: 'none',
    });
    const { width, height } = bitmap;
    const context = new OffscreenCanvas(width, height).getContext('2d', {
      willReadFrequently: true,
    });
    if (context === null) return fail('this browser gives no canvas to read it with');
    context.drawImage(bitmap, 0, 0);
    bitmap.close();
    const { data } = context.getImageData(0, 0, width, height);
    return ok({ widthPx: width, heightPx: height, pixels: data });
  } catch {
    return fail('the picture is damaged or cut short');
  }
};
