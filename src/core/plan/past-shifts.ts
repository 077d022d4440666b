import { SKY_CONDITIONS, type SkyCondition } from '../daylight/sky-condition.ts';
import { civilDateOf } from '../units/civil-time.ts';
import type { FadeTo } from './shifted-case.ts';
import type { ReadingShift } from './reading-shift.ts';

/** What past shoots were off by under one condition. */
export type PastShift = {
  readonly days: number;
  readonly readings: number;
  /** Mean over days. */
  readonly meanStops: number;
  /** ± round it that eight of ten days fall in; null with fewer than three. */
  readonly spreadStops: number | null;
  /** Where the next shoot starts from. */
  readonly startStops: number;
};

export type PastShifts = Readonly<
  Record<SkyCondition, { readonly sky: PastShift; readonly ambient: PastShift }>
>;

/** Of a normal distribution, from −1.28 to 1.28 standard deviations. */
const EIGHT_OF_TEN = 1.2816;
/** With fewer a day's chance would pass for the place's habit. Common practice. [lightingPractice] */
const LEAST_DAYS = 3;

/**
 * Past shifts by sky condition, several of one day counted once. The start is the mean drawn to 0
 * by one day that was right, n/(n + 1): no condition is believed after one evening.
 */
export function pastShifts(shifts: readonly ReadingShift[], zone: string): PastShifts {
  const of = (condition: SkyCondition, kind: 'sky' | 'ambient'): PastShift =>
    summedUp(
      shifts.filter((shift) => shift.of.kind === kind && shift.condition === condition),
      zone,
    );
  return Object.fromEntries(
    SKY_CONDITIONS.map((condition) => [
      condition,
      { sky: of(condition, 'sky'), ambient: of(condition, 'ambient') },
    ]),
  ) as PastShifts;
}

function summedUp(shifts: readonly ReadingShift[], zone: string): PastShift {
  const byDay = new Map<string, number[]>();
  for (const { atMs, stops } of shifts) {
    const date = civilDateOf(atMs, zone);
    byDay.set(date, [...(byDay.get(date) ?? []), stops]);
  }
  const days = [...byDay.values()].map(mean);
  const meanStops = days.length === 0 ? 0 : mean(days);
  const enough = days.length >= LEAST_DAYS;
  const variance =
    days.reduce((sum, day) => sum + (day - meanStops) ** 2, 0) / Math.max(1, days.length - 1);
  return {
    days: days.length,
    readings: shifts.length,
    meanStops,
    spreadStops: enough ? EIGHT_OF_TEN * Math.sqrt(variance) : null,
    startStops: enough ? (meanStops * days.length) / (days.length + 1) : 0,
  };
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

export const fadeToOf = (past: PastShifts, condition: SkyCondition): FadeTo => ({
  skyStops: past[condition].sky.startStops,
  ambientStops: past[condition].ambient.startStops,
});
