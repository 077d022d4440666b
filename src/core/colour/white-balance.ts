import { adaptation, product } from './adaptation.ts';
import {
  applied,
  fromUv,
  uvOf,
  xyzOf,
  type Chromaticity,
  type Matrix3,
  type Triple,
} from './chromaticity.ts';
import { whiteOfMired } from './daylight-locus.ts';
import { miredFromKelvin } from './mired.ts';
import { D65, SRGB_FROM_XYZ } from './srgb.ts';

/** What a camera is set to. */
export type WhiteBalance = {
  readonly kelvin: number;
  /** Thousandths of CIE 1960 across the locus; positive takes green for white and so turns the picture to magenta. */
  readonly tint: number;
};

/** The light that a setting renders as neutral. */
export const neutralOf = ({ kelvin, tint }: WhiteBalance): Chromaticity => {
  const mired = miredFromKelvin(kelvin);
  const white = uvOf(whiteOfMired(mired));
  if (tint === 0) return fromUv(white);
  const [warmer, cooler] = [uvOf(whiteOfMired(mired + 1)), uvOf(whiteOfMired(mired - 1))];
  const along = { u: warmer.u - cooler.u, v: warmer.v - cooler.v };
  const length = Math.hypot(along.u, along.v);
  // At the locus' end both neighbours are one; there only v counts.
  const across = length === 0 ? { u: 0, v: 1 } : { u: -along.v / length, v: along.u / length };
  const up = across.v >= 0 ? 1 : -1;
  const by = (tint / 1000) * up;
  return fromUv({ u: white.u + across.u * by, v: white.v + across.v * by });
};

/** Linear sRGB of XYZ as a camera with that setting writes it: its neutral comes out grey. [bradford1985] [iec61966] */
export const cameraMatrix = (setting: WhiteBalance): Matrix3 =>
  product(SRGB_FROM_XYZ, adaptation(neutralOf(setting), D65));

/** Linear sRGB of a light of unit luminance under a setting; below 0 and above 1 are kept. */
export const renderedLight = (light: Chromaticity, setting: WhiteBalance): Triple =>
  applied(cameraMatrix(setting), xyzOf(light, 1));
