import { addDays, civilDateOf, dayBoundsMs, dayOfYear } from '../units/civil-time.ts';
import type { TimeSpan } from './clock-spans.ts';

const LONGEST_DAY_MS = 25 * 3_600_000;

/** The day of the year on the zone's calendar, 1 to 366; looked up once a date inside the range. */
export function dayOfYearAt(
  { startMs, endMs }: TimeSpan,
  zone: string,
): (instantMs: number) => number {
  const ends: number[] = [];
  const days: number[] = [];
  let date = civilDateOf(startMs, zone);
  for (let untilMs = startMs; untilMs <= endMs; date = addDays(date, 1)) {
    untilMs = dayBoundsMs(date, zone).endMs;
    ends.push(untilMs);
    days.push(dayOfYear(date));
  }
  return (instantMs) => {
    let at = Math.max(0, Math.floor((instantMs - (ends[0] ?? NaN)) / LONGEST_DAY_MS));
    while ((ends[at] ?? Infinity) <= instantMs) at += 1;
    const known = instantMs < startMs ? undefined : days[at];
    return known ?? dayOfYear(civilDateOf(instantMs, zone));
  };
}
