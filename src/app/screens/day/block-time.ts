import type { Setup } from '../../../core/plan/setup-schema.ts';
import { clockTime, dayBoundsMs, instantAtClock } from '../../../core/units/civil-time.ts';

/** A setup's time on a column. */
export type BlockTime = { readonly startMs: number; readonly durationMin: number };

export const MS_PER_MIN = 60_000;
const SHORTEST_MIN = 5;
const LONGEST_MIN = 720;

/**
 * When a setup's clock says it starts on the date in its zone. A clock time that the zone skips
 * counts on from the start of the date.
 */
export function blockTime(
  { startClock, durationMin }: Pick<Setup, 'startClock' | 'durationMin'>,
  date: string,
  zone: string,
): BlockTime {
  const [hours = 0, minutes = 0] = startClock.split(':').map(Number);
  const startMs =
    instantAtClock(date, startClock, zone) ??
    dayBoundsMs(date, zone).startMs + (hours * 60 + minutes) * MS_PER_MIN;
  return { startMs, durationMin };
}

export const blockEndMs = ({ startMs, durationMin }: BlockTime): number =>
  startMs + durationMin * MS_PER_MIN;

/** Earlier or later by some minutes, held inside the date. */
export function movedBlock(
  block: BlockTime,
  byMin: number,
  day: { readonly startMs: number; readonly endMs: number },
): BlockTime {
  const latestMs = day.endMs - SHORTEST_MIN * MS_PER_MIN;
  const startMs = block.startMs + byMin * MS_PER_MIN;
  return { ...block, startMs: Math.min(latestMs, Math.max(day.startMs, startMs)) };
}

/** Longer or shorter by some minutes. */
export const stretchedBlock = (block: BlockTime, byMin: number): BlockTime => ({
  ...block,
  durationMin: Math.min(LONGEST_MIN, Math.max(SHORTEST_MIN, block.durationMin + byMin)),
});

/** To the nearest multiple of so many minutes on the clock. */
export const snapped = (instantMs: number, everyMin: number): number =>
  Math.round(instantMs / (everyMin * MS_PER_MIN)) * everyMin * MS_PER_MIN;

/** What is written into the setup. */
export const blockFields = (
  { startMs, durationMin }: BlockTime,
  zone: string,
): Pick<Setup, 'startClock' | 'durationMin'> => ({
  startClock: clockTime(startMs, zone),
  durationMin,
});

/** '20:00 to 20:40' */
export const blockSpanText = (block: BlockTime, zone: string): string =>
  `${clockTime(block.startMs, zone)} to ${clockTime(blockEndMs(block), zone)}`;
