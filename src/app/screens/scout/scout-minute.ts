import { setupsAt } from '../../../core/plan/setup-light.ts';
import type { Setup } from '../../../core/plan/setup-schema.ts';
import type { Shoot, Spot } from '../../../core/plan/shoot.ts';
import type { SunEvents } from '../../../core/sun-moon/sun-events.ts';
import { addDays, dayBoundsMs, instantAtClock } from '../../../core/units/civil-time.ts';

const MS_PER_HOUR = 3_600_000;
const WITHOUT_SETUP = '19:00';

/** The setup that a spot is looked at with: the chosen one when it is there, else its first. */
export function setupHere(
  shoot: Shoot,
  spotId: string,
  chosenId: string | null,
): readonly [id: string, setup: Setup] | null {
  const here = setupsAt(shoot, spotId);
  return here.find(([id]) => id === chosenId) ?? here[0] ?? null;
}

/** Until a minute is chosen: the setup's start, else 19:00; noon where clocks skip it. */
export function defaultMinuteMs(date: string, spot: Spot | null, setup: Setup | null): number {
  const zone = spot?.zone ?? 'Etc/UTC';
  const { startMs } = dayBoundsMs(date, zone);
  return (
    instantAtClock(date, setup?.startClock ?? WITHOUT_SETUP, zone) ?? startMs + 12 * MS_PER_HOUR
  );
}

/** Whether a chosen minute still belongs to the shoot's date, its nights on both sides included. */
export function isOfDate(minuteMs: number, date: string, zone: string): boolean {
  const fromMs = dayBoundsMs(addDays(date, -1), zone).startMs;
  const toMs = dayBoundsMs(addDays(date, 1), zone).endMs;
  return minuteMs >= fromMs && minuteMs < toMs;
}

/**
 * From first to last nautical twilight, to full hours; the whole date where there is none, and in
 * any case with the minute inside.
 */
export function stripRange(
  events: SunEvents,
  day: { readonly startMs: number; readonly endMs: number },
  minuteMs: number,
): { readonly startMs: number; readonly endMs: number } {
  const startMs = events.nauticalDawnMs ?? day.startMs;
  const endMs = events.nauticalDuskMs ?? day.endMs;
  return {
    startMs: Math.floor(Math.min(startMs, minuteMs) / MS_PER_HOUR) * MS_PER_HOUR,
    endMs: Math.ceil(Math.max(endMs, minuteMs) / MS_PER_HOUR) * MS_PER_HOUR,
  };
}
