import type { Chromaticity, Matrix3 } from './chromaticity.ts';

/** White of sRGB. [iec61966] */
export const D65: Chromaticity = { x: 0.3127, y: 0.329 };

/** From the primaries and D65; the standard prints four digits of these. [iec61966] */
export const XYZ_FROM_SRGB: Matrix3 = [
  [0.41239079926595934, 0.357584339383878, 0.1804807884018343],
  [0.21263900587151027, 0.715168678767756, 0.07219231536073371],
  [0.01933081871559182, 0.11919477979462598, 0.9505321522496607],
];
export const SRGB_FROM_XYZ: Matrix3 = [
  [3.2409699419045226, -1.537383177570094, -0.4986107602930034],
  [-0.9692436362808796, 1.8759675015077202, 0.04155505740717559],
  [0.05563007969699366, -0.20397695888897652, 1.0569715142428786],
];

/** Linear light 0 to 1 as the encoded value 0 to 1; what lies outside is clipped hard. [iec61966] */
export const encodeSrgb = (linear: number): number => {
  const held = Math.min(1, Math.max(0, linear));
  return held <= 0.0031308 ? 12.92 * held : 1.055 * held ** (1 / 2.4) - 0.055;
};

export const decodeSrgb = (encoded: number): number =>
  encoded <= 0.04045 ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4;
