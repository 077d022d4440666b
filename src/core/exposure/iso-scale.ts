import { nearestClick } from './dial-scale.ts';

/** ISO speed names in third stops; the first is exactly 100 · 2^−5. [iso12232] */
const THIRD_STOP_NAMES = [
  3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50, 64, 80, 100, 125, 160, 200, 250, 320, 400, 500,
  640, 800, 1000, 1250, 1600, 2000, 2500, 3200, 4000, 5000, 6400, 8000, 10000, 12800, 16000, 20000,
  25600, 32000, 40000, 51200, 64000, 80000, 102400,
] as const; // prettier-ignore

const FIRST_NAME_STOPS = -5;

/** Stops above ISO 100. [iso12232] */
export const stopsFromIso = (iso: number): number => Math.log2(iso / 100);

export const isoFromStops = (isoStops: number): number => 100 * 2 ** isoStops;

/** The name on the dial nearest to a speed: 252 is 'ISO 250'. */
export const formatIso = (iso: number): string =>
  `ISO ${THIRD_STOP_NAMES[nearestClick(stopsFromIso(iso) - FIRST_NAME_STOPS, 'third')] ?? Math.round(iso)}`;
