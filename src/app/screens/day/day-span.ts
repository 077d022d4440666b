import type { GeoPoint } from '../../../core/place/geo-point.ts';
import { sunEvents } from '../../../core/sun-moon/sun-events.ts';
import { dayBoundsMs } from '../../../core/units/civil-time.ts';

export type DaySpan = { readonly startMs: number; readonly endMs: number };

/** The twilight shown at least, and what has to be inside. */
export type Needed = {
  readonly least: 'civil' | 'nautical';
  readonly instantsMs: readonly number[];
};

type SpotDay = { readonly place: GeoPoint; readonly zone: string };

const ROUND_MS = 30 * 60_000;
/** Kept free beyond the twilight, so that its name stands inside. */
const MARGIN_MS = 10 * 60_000;

/**
 * The part of a date that the columns show: civil twilight to civil twilight, nautical or
 * astronomical where an instant needs it, the whole date where that is not enough or where
 * twilights lack; rounded outwards to half hours inside the date. Over spots in several places it
 * runs from the first to the last.
 */
export function daySpan(spots: readonly SpotDay[], date: string, needed: Needed): DaySpan {
  const spans = spots.map((spot) => spotSpan(spot, date, needed));
  if (spans.length === 0) return dayBoundsMs(date, 'Etc/UTC');
  return {
    startMs: Math.min(...spans.map(({ startMs }) => startMs)),
    endMs: Math.max(...spans.map(({ endMs }) => endMs)),
  };
}

function spotSpan({ place, zone }: SpotDay, date: string, needed: Needed): DaySpan {
  const day = dayBoundsMs(date, zone);
  const events = sunEvents({ date, zone, place });
  const ofDate = needed.instantsMs.filter((ms) => ms >= day.startMs && ms <= day.endMs);
  const twilights = [
    [events.civilDawnMs, events.civilDuskMs],
    [events.nauticalDawnMs, events.nauticalDuskMs],
    [events.astronomicalDawnMs, events.astronomicalDuskMs],
  ] as const;
  for (const [dawnMs, duskMs] of twilights.slice(needed.least === 'civil' ? 0 : 1)) {
    if (dawnMs === null || duskMs === null) return day;
    const span = {
      startMs: Math.max(day.startMs, Math.floor((dawnMs - MARGIN_MS) / ROUND_MS) * ROUND_MS),
      endMs: Math.min(day.endMs, Math.ceil((duskMs + MARGIN_MS) / ROUND_MS) * ROUND_MS),
    };
    if (ofDate.every((ms) => ms >= span.startMs && ms <= span.endMs)) return span;
  }
  return day;
}
