import type { SkyCondition } from '../daylight/sky-condition.ts';
import { wrapDeg180 } from '../units/angle.ts';
import type { ReadingShift, ShiftOf } from './reading-shift.ts';

/** Where and when shifts are to be applied. */
export type ShiftWanted = {
  readonly of: ShiftOf;
  readonly instantMs: number;
  readonly condition: SkyCondition;
  /** Of the frame or its patch; null: any. */
  readonly bearingDeg: number | null;
  /** ± of the model where nothing was read. */
  readonly modelSpreadStops: number;
  /** What shifts fade to: 0, or what past shoots were found to be off by. */
  readonly towardsStops: number;
};

export type CombinedShift = {
  readonly stops: number;
  /** ± round the shifted figure. */
  readonly spreadStops: number;
  /** What each reading has in it. */
  readonly readings: readonly {
    readonly readingId: string;
    /** 0 to 1; together 1. */
    readonly weight: number;
    /** How much of it is left, 1 at its own minute and bearing. */
    readonly keeps: number;
  }[];
};

/**
 * Minutes in which half of a shift is gone. Under cloud, what one-minute values of the roof keep of
 * their distance from the condition's middle: 0.69 after 10 minutes, 0.54 after 20, 0.45 after 30,
 * 0.33 after 60 [roofTuebingen]. Air without cloud changes with the wind, common practice. [lightingPractice]
 */
const HALF_LIFE_MIN = {
  clear: 180,
  haze: 180,
  'broken-cloud': 30,
  'bright-overcast': 30,
  'heavy-overcast': 30,
} as const satisfies Record<SkyCondition, number>;

export const halfLifeMin = (condition: SkyCondition): number => HALF_LIFE_MIN[condition];

/** What is kept of a shift under another condition, past 40° of bearing, through another modifier. Common practice. [lightingPractice] */
const OTHERWISE_KEEPS = 0.5;
const SAME_BEARING_DEG = 40;
/** How far a head drifts in an hour as battery and tube change, common practice. [lightingPractice] */
const HEAD_DRIFT_STOPS_PER_H = 0.1;

const MS_PER_MIN = 60_000;
const MS_PER_H = 3_600_000;

/**
 * All readings of one thing as one shift, each weighted by 1 over its spread squared. What a reading
 * still says of another minute is a share k of it: the shift is k times as large, and the model's
 * own spread S comes back as S √(1 − k²). Errors of reading are independent; what the sky has done
 * since is common to all. Without readings: what shifts fade to, ± the model's.
 */
export function combinedShift(shifts: readonly ReadingShift[], wanted: ShiftWanted): CombinedShift {
  const { modelSpreadStops: model, towardsStops } = wanted;
  const own = shifts.filter(({ of }) => isSameThing(of, wanted.of));
  if (own.length === 0) return { stops: towardsStops, spreadStops: model, readings: [] };
  const parts = own.map((shift) => {
    const keeps = keepsOf(shift, wanted);
    const sinceStops = Math.hypot(model * Math.sqrt(1 - keeps ** 2), driftOf(shift, wanted));
    return {
      shift,
      keeps,
      sinceStops,
      precision: 1 / Math.max(LEAST_VARIANCE, shift.spreadStops ** 2 + sinceStops ** 2),
    };
  });
  const precision = parts.reduce((sum, part) => sum + part.precision, 0);
  let [stops, readVariance, sinceStops] = [towardsStops, 0, 0];
  const readings = parts.map((part) => {
    const weight = part.precision / precision;
    stops += weight * part.keeps * (part.shift.stops - towardsStops);
    readVariance += (weight * part.shift.spreadStops) ** 2;
    sinceStops += weight * part.sinceStops;
    return { readingId: part.shift.readingId, weight, keeps: part.keeps };
  });
  const spreadStops = Math.min(model, Math.hypot(Math.sqrt(readVariance), sinceStops));
  return { stops, spreadStops, readings };
}

const LEAST_VARIANCE = 1e-6;

const isSameThing = (first: ShiftOf, second: ShiftOf): boolean =>
  first.kind === 'head' && second.kind === 'head'
    ? first.headId === second.headId
    : first.kind === second.kind;

function keepsOf({ of, atMs, condition, bearingDeg }: ReadingShift, wanted: ShiftWanted): number {
  if (of.kind === 'head')
    return wanted.of.kind === 'head' && of.modifierId === wanted.of.modifierId
      ? 1
      : OTHERWISE_KEEPS;
  const halfLife = Math.min(halfLifeMin(condition), halfLifeMin(wanted.condition));
  const agedMin = Math.abs(wanted.instantMs - atMs) / MS_PER_MIN;
  const otherCondition = condition === wanted.condition ? 1 : OTHERWISE_KEEPS;
  const turnedDeg =
    bearingDeg === null || wanted.bearingDeg === null
      ? 0
      : Math.abs(wrapDeg180(bearingDeg - wanted.bearingDeg));
  const otherBearing = turnedDeg > SAME_BEARING_DEG + 1e-9 ? OTHERWISE_KEEPS : 1;
  return 2 ** (-agedMin / halfLife) * otherCondition * otherBearing;
}

const driftOf = ({ of, atMs }: ReadingShift, { instantMs }: ShiftWanted): number =>
  of.kind === 'head' ? (HEAD_DRIFT_STOPS_PER_H * Math.abs(instantMs - atMs)) / MS_PER_H : 0;
