import { FLAT_RECEPTOR_C } from '../exposure/exposure-value.ts';
import { fail, ok, type Result } from '../units/result.ts';
import { ratioFromStops } from '../units/stops.ts';
import { guideNumberFromReading } from './guide-number.ts';

export type FigureOrigin = 'metered' | 'guide-number' | 'watt-seconds';

/** What a head with its modifier gives, ready for a light of a recipe. */
export type HeadFigure = {
  /** Full power, ISO 100, metres, for use with the disc formula. */
  readonly guideNumberM: number;
  readonly lossStops: number;
  readonly sourceDiameterM: number;
  /** Eight of ten lie within ± this. */
  readonly spreadStops: number;
  readonly origin: FigureOrigin;
};

type Refusal = { readonly sentence: string };

/** Diameter of the disc that has a face's area. [iesHandbook] */
export const discDiameterM = (faceAreaM2: number): number => 2 * Math.sqrt(faceAreaM2 / Math.PI);

export const faceAreaM2 = (face: {
  readonly widthM: number;
  readonly heightM: number;
  readonly round: boolean;
}): number => face.widthM * face.heightM * (face.round ? Math.PI / 4 : 1);

/** A meter's tenth, its dome's aim and the head's own scatter, common practice. [lightingPractice] */
const METERED_SPREAD_STOPS = 0.2;
/** A rated number proved 0.86 stop high when metered (B17). [practitionerPages] */
const GUIDE_NUMBER_SPREAD_STOPS = 0.9;
/** Equal watt-seconds gave figures 1.1 stops apart (B13 to B16). [practitionerPages] */
const WATT_SECONDS_SPREAD_STOPS = 1;

/**
 * The head's figure from one reading at a known distance, modifier on: ambient comes off first
 * (light adds as f-number squared), N √((d² + r²) · 100/ISO), raised to full power; loss 0.
 * [iso1230] [iesHandbook]
 */
export const headFromReading = (reading: {
  readonly fNumber: number;
  readonly iso: number;
  /** From the modifier's face to the dome. */
  readonly distanceM: number;
  readonly faceAreaM2: number;
  readonly powerStops: number;
  /** The ambient alone at the same shutter and ISO; null: it did not register. */
  readonly ambientFNumber: number | null;
}): Result<HeadFigure, Refusal> => {
  const sentence = readingSentence(reading);
  if (sentence !== null) return fail({ sentence });
  const flashSquared = reading.fNumber ** 2 - (reading.ambientFNumber ?? 0) ** 2;
  const sourceDiameterM = discDiameterM(reading.faceAreaM2);
  return ok({
    guideNumberM:
      guideNumberFromReading({
        fNumber: Math.sqrt(flashSquared),
        iso: reading.iso,
        distanceM: reading.distanceM,
        sourceDiameterM,
      }) / Math.sqrt(ratioFromStops(reading.powerStops)),
    lossStops: 0,
    sourceDiameterM,
    spreadStops: METERED_SPREAD_STOPS,
    origin: 'metered',
  });
};

const readingSentence = (reading: Parameters<typeof headFromReading>[0]): string | null => {
  const { ambientFNumber, faceAreaM2: area, powerStops } = reading;
  for (const [name, value] of [
    ['f-number', reading.fNumber],
    ['ISO', reading.iso],
    ['distance', reading.distanceM],
  ] as const) {
    if (!(value > 0 && value < Number.POSITIVE_INFINITY))
      return `The reading’s ${name}: expected more than 0, found ${value}.`;
  }
  if (!(area >= 0)) return `The modifier’s area: expected 0 or more, found ${area}.`;
  if (!(powerStops <= 0))
    return `The reading’s power: expected 0 (full) or less, found ${powerStops}.`;
  if (ambientFNumber !== null && !(ambientFNumber >= 0 && ambientFNumber < reading.fNumber))
    return `Ambient alone read f/${ambientFNumber}; with the flash it must read more than that, found f/${reading.fNumber}.`;
  return null;
};

type ModifierLoss = {
  readonly lossStops: number;
  readonly lossSpreadStops: number;
  readonly faceAreaM2: number;
};

/** The head's figure from its rated guide number with the reflector it was rated with. [iso1230] */
export const headFromGuideNumber = (
  rated: { readonly guideNumberM: number; readonly iso: number },
  modifier: ModifierLoss,
): Result<HeadFigure, Refusal> =>
  rated.guideNumberM > 0 && rated.iso > 0
    ? ok({
        guideNumberM: rated.guideNumberM * Math.sqrt(100 / rated.iso),
        lossStops: modifier.lossStops,
        sourceDiameterM: discDiameterM(modifier.faceAreaM2),
        spreadStops: Math.hypot(GUIDE_NUMBER_SPREAD_STOPS, modifier.lossSpreadStops),
        origin: 'guide-number',
      })
    : fail({
        sentence: `Guide number and ISO: expected more than 0, found ${rated.guideNumberM} at ISO ${rated.iso}.`,
      });

/** Light of a xenon tube per stored energy, lm/W: 30 to 50. [lightingPractice] */
const XENON_LUMENS_PER_WATT = 40;
/** Gain of a standard reflector over a bare tube that shines all round: 3 to 5. [lightingPractice] */
export const STANDARD_REFLECTOR_GAIN = 4;

/**
 * Guide number from stored energy: I_s = Ws · η · G/(4π) candela seconds, GN² = I_s · 100/C. A
 * guess: reflector and tube alone spread it by a stop. [iso2827] [lightingPractice]
 */
export const guideNumberFromWattSeconds = (
  energyWs: number,
  reflectorGain: number = STANDARD_REFLECTOR_GAIN,
): number =>
  Math.sqrt(
    (energyWs * XENON_LUMENS_PER_WATT * reflectorGain * 100) / (4 * Math.PI * FLAT_RECEPTOR_C),
  );

export const headFromWattSeconds = (
  energyWs: number,
  modifier: ModifierLoss,
): Result<HeadFigure, Refusal> =>
  energyWs > 0
    ? ok({
        guideNumberM: guideNumberFromWattSeconds(energyWs),
        lossStops: modifier.lossStops,
        sourceDiameterM: discDiameterM(modifier.faceAreaM2),
        spreadStops: Math.hypot(WATT_SECONDS_SPREAD_STOPS, modifier.lossSpreadStops),
        origin: 'watt-seconds',
      })
    : fail({ sentence: `Energy in watt-seconds: expected more than 0, found ${energyWs}.` });

const RANK = { metered: 0, 'guide-number': 1, 'watt-seconds': 2 } as const satisfies Record<
  FigureOrigin,
  number
>;

/** The figure to trust: a metered shot before a guide number before watt-seconds. */
export const bestHeadFigure = (figures: readonly HeadFigure[]): HeadFigure | null =>
  figures.toSorted((first, second) => RANK[first.origin] - RANK[second.origin])[0] ?? null;
