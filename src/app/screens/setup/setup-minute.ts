import type { Setup } from '../../../core/plan/setup-schema.ts';
import type { Spot } from '../../../core/plan/shoot.ts';
import type { SunEvents } from '../../../core/sun-moon/sun-events.ts';
import { dayBoundsMs, instantAtClock } from '../../../core/units/civil-time.ts';

const MS_PER_MIN = 60_000;
const MS_PER_HOUR = 3_600_000;

export type SetupBlock = { readonly startMs: number; readonly endMs: number };

/** When a setup is shot; noon where clocks skip its start. */
export function setupBlock(
  date: string,
  spot: Pick<Spot, 'zone'>,
  setup: Pick<Setup, 'startClock' | 'durationMin'>,
): SetupBlock {
  const startMs =
    instantAtClock(date, setup.startClock, spot.zone) ??
    instantAtClock(date, '12:00', spot.zone) ??
    dayBoundsMs(date, spot.zone).startMs;
  return { startMs, endMs: startMs + setup.durationMin * MS_PER_MIN };
}

/** Whether the present lies within an hour of a setup's block. */
export const isNearBlock = (presentMs: number, { startMs, endMs }: SetupBlock): boolean =>
  presentMs >= startMs - MS_PER_HOUR && presentMs <= endMs + MS_PER_HOUR;

/** The minute a setup is looked at: the chosen one when it belongs to the day, else the present near its block, else its start. */
export function minuteOf(at: {
  readonly chosenMs: number | null;
  readonly presentMs: number;
  readonly block: SetupBlock;
  readonly range: SetupBlock;
}): { readonly minuteMs: number; readonly isPresent: boolean } {
  const { chosenMs, presentMs, block, range } = at;
  if (chosenMs !== null && chosenMs >= range.startMs && chosenMs <= range.endMs)
    return { minuteMs: chosenMs, isPresent: false };
  if (isNearBlock(presentMs, block))
    return { minuteMs: Math.floor(presentMs / MS_PER_MIN) * MS_PER_MIN, isPresent: true };
  return { minuteMs: block.startMs, isPresent: false };
}

/** First to last nautical twilight in full hours, the setup's block inside; the whole date where there is none. */
export function stripRange(
  events: SunEvents,
  day: { readonly startMs: number; readonly endMs: number },
  block: SetupBlock,
): SetupBlock {
  const startMs = Math.min(events.nauticalDawnMs ?? day.startMs, block.startMs);
  const endMs = Math.max(events.nauticalDuskMs ?? day.endMs, block.endMs);
  return {
    startMs: Math.floor(startMs / MS_PER_HOUR) * MS_PER_HOUR,
    endMs: Math.ceil(endMs / MS_PER_HOUR) * MS_PER_HOUR,
  };
}
