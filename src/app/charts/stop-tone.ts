import { ratioFromStops } from '../../core/units/stops.ts';

/** A grey card reflects 18 %. */
const CARD_LINEAR = 0.18;

/** sRGB level, 0 to 255, of a tone in stops from the grey card; clips at +2.47. IEC 61966-2-1. */
export function stopLevel(stops: number): number {
  const linear = Math.min(1, CARD_LINEAR * ratioFromStops(stops));
  const encoded = linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055;
  return Math.round(255 * encoded);
}

export function stopTone(stops: number): string {
  const level = stopLevel(stops);
  return `rgb(${level} ${level} ${level})`;
}
