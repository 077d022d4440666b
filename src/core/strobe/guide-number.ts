import { ratioFromStops } from '../units/stops.ts';

/** A flash source at a distance; everything else it loses or gains is in `lossStops`. */
export type FlashSource = {
  /** Full power, ISO 100, metres, as found far away from the source (five diameters or more). */
  readonly guideNumberM: number;
  /** From the face of the modifier to the subject. */
  readonly distanceM: number;
  readonly lossStops: number;
  /** Diameter of a round face, or of the disc of equal area; absent or 0: a point. */
  readonly sourceDiameterM?: number | undefined;
  /** Equal heads fired together as this one source; absent: one. */
  readonly heads?: number | undefined;
};

/**
 * d² of the inverse square law; for an evenly bright disc of radius r, on its axis, exactly
 * d² + r². [iesHandbook]
 */
export const spreadSquareM2 = (source: {
  readonly distanceM: number;
  readonly sourceDiameterM?: number | undefined;
}): number => source.distanceM ** 2 + ((source.sourceDiameterM ?? 0) / 2) ** 2;

/** f-number squared that full power asks for at ISO 100: GN² · 2^−loss / (d² + r²). [iso1230] */
export const flashFNumberSquared = (source: FlashSource): number =>
  ((source.heads ?? 1) * source.guideNumberM ** 2 * ratioFromStops(-source.lossStops)) /
  spreadSquareM2(source);

/** f-number that meters a flash alone at a power (0 full, −1 half) and an ISO speed. [iso1230] */
export const flashFNumber = (
  source: FlashSource,
  setting: { readonly powerStops: number; readonly iso: number },
): number =>
  Math.sqrt((flashFNumberSquared(source) * ratioFromStops(setting.powerStops) * setting.iso) / 100);

/** Distance at which a flash asks for an f-number; NaN where a large source never gets that bright. */
export const flashDistanceM = (
  source: Omit<FlashSource, 'distanceM'>,
  setting: { readonly fNumber: number; readonly powerStops: number; readonly iso: number },
): number => {
  const atOneMetre = flashFNumber({ ...source, distanceM: 1, sourceDiameterM: undefined }, setting);
  const radiusM = (source.sourceDiameterM ?? 0) / 2;
  return Math.sqrt((atOneMetre / setting.fNumber) ** 2 - radiusM ** 2);
};

/** The guide number of the same head at another ISO speed: × √(to/from). [iso1230] */
export const guideNumberAtIso = (
  guideNumberM: number,
  speed: { readonly fromIso: number; readonly toIso: number },
): number => guideNumberM * Math.sqrt(speed.toIso / speed.fromIso);

const FOOT_M = 0.3048;
export const guideNumberMFromFeet = (guideNumberFt: number): number => guideNumberFt * FOOT_M;

/**
 * The number that makes N = GN/d hold for a reading taken close to a large face:
 * N √((d² + r²) · 100/ISO). [iso1230] [iesHandbook]
 */
export const guideNumberFromReading = (reading: {
  readonly fNumber: number;
  readonly iso: number;
  readonly distanceM: number;
  readonly sourceDiameterM?: number | undefined;
}): number => reading.fNumber * Math.sqrt((spreadSquareM2(reading) * 100) / reading.iso);
