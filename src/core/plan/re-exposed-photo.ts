import { product } from '../colour/adaptation.ts';
import type { Triple } from '../colour/chromaticity.ts';
import { inverse } from '../colour/inverse.ts';
import { cameraMatrix, type WhiteBalance } from '../colour/white-balance.ts';
import { byteOf, encodingTable, type FramePixels } from './frame-pixels.ts';

/** An ellipse of the picture in fractions of its sides from its centre. */
export type PhotoMask = {
  readonly xFraction: number;
  readonly yFraction: number;
  readonly halfWidthFraction: number;
  readonly halfHeightFraction: number;
};

export type ReExposure = {
  /** EV at ISO 100 that the photo's own settings render as mid-grey. */
  readonly photoEv: number;
  readonly photoWhiteBalance: WhiteBalance;
  /** The same of the recipe, filters in it. */
  readonly cameraEv: number;
  readonly whiteBalance: WhiteBalance;
  /** Where the figure stands, which the flash lights; null: ambient everywhere. */
  readonly figure: { readonly mask: PhotoMask; readonly keyStops: number } | null;
};

/**
 * A photo as the recipe's settings would have taken it: decoded as plain sRGB, scaled in linear light
 * by the difference of both exposures, balanced anew, clipped and encoded. What was clipped in the
 * photo stays clipped, and the camera's own tone curve is not known. Inside the mask the picture is
 * scaled so that its mean luminance is mid-grey under the key.
 */
export function reExposedPhoto(photo: FramePixels, asked: ReExposure): FramePixels {
  const { widthPx, heightPx } = photo;
  const encoding = encodingTable();
  const turned = product(
    cameraMatrix(asked.whiteBalance),
    inverse(cameraMatrix(asked.photoWhiteBalance)),
  );
  const exposure = 2 ** (asked.photoEv - asked.cameraEv);
  const figureGain =
    asked.figure === null ? exposure : (litGain(photo, asked.figure, encoding.linear) ?? exposure);
  const rgba = new Uint8ClampedArray(photo.rgba.length);
  const light = (byte: number): Triple => [
    encoding.linear[photo.rgba[byte] ?? 0] ?? 0,
    encoding.linear[photo.rgba[byte + 1] ?? 0] ?? 0,
    encoding.linear[photo.rgba[byte + 2] ?? 0] ?? 0,
  ];
  for (let y = 0; y < heightPx; y += 1)
    for (let x = 0; x < widthPx; x += 1) {
      const byte = (y * widthPx + x) * 4;
      const [r, g, b] = light(byte);
      const share = asked.figure === null ? 0 : maskShare(asked.figure.mask, photo, { x, y });
      const gain = exposure + share * (figureGain - exposure);
      turned.forEach((row, channel) => {
        rgba[byte + channel] = byteOf(encoding, gain * (row[0] * r + row[1] * g + row[2] * b));
      });
      rgba[byte + 3] = photo.rgba[byte + 3] ?? 255;
    }
  return { widthPx, heightPx, rgba };
}

/** Width of a mask's soft edge, share of its radius. */
const SOFT_EDGE = 0.15;

/** 1 inside the mask, 0 outside, smooth over its edge. */
function maskShare(
  mask: PhotoMask,
  { widthPx, heightPx }: FramePixels,
  { x, y }: { readonly x: number; readonly y: number },
): number {
  const across = ((x + 0.5) / widthPx - 0.5 - mask.xFraction) / mask.halfWidthFraction;
  const up = (0.5 - (y + 0.5) / heightPx - mask.yFraction) / mask.halfHeightFraction;
  const t = Math.min(1, Math.max(0, (1 - Math.hypot(across, up)) / SOFT_EDGE + 0.5));
  return t * t * (3 - 2 * t);
}

/** Mid-grey. [iso2720] */
const MID_GREY = 0.18;

/** Null where the mask holds no light. */
function litGain(
  photo: FramePixels,
  { mask, keyStops }: NonNullable<ReExposure['figure']>,
  linear: Float32Array,
): number | null {
  let [sum, weight] = [0, 0];
  for (let y = 0; y < photo.heightPx; y += 1)
    for (let x = 0; x < photo.widthPx; x += 1) {
      const share = maskShare(mask, photo, { x, y });
      if (share === 0) continue;
      const byte = (y * photo.widthPx + x) * 4;
      const at = (channel: number): number => linear[photo.rgba[byte + channel] ?? 0] ?? 0;
      sum += share * (0.2126 * at(0) + 0.7152 * at(1) + 0.0722 * at(2));
      weight += share;
    }
  return sum > 0 ? (MID_GREY * 2 ** keyStops * weight) / sum : null;
}
