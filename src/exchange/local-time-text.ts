import { civilDateOf, clockTime, formatDate, utcOffsetText } from '../core/units/civil-time.ts';
import type { DayEvent } from './day-event.ts';

/**
 * 'Fri 14 May 2027, 16:30 to 17:10, Europe/Rome (UTC+2)'; where clocks change in between each time
 * has its own offset: 'Sun 31 Oct 2027, 02:30 (UTC+2) to 02:10 (UTC+1), Europe/Rome'.
 */
export function localTimeText({
  startMs,
  endMs,
  zone,
}: Pick<DayEvent, 'startMs' | 'endMs' | 'zone'>): string {
  const start = clockShown(startMs, zone);
  const end = clockShown(endMs, zone);
  if (startMs === endMs) return `${start.date}, ${start.clock}, ${zone} (${start.offset})`;
  const endDate = end.date === start.date ? '' : `${end.date}, `;
  return start.offset === end.offset
    ? `${start.date}, ${start.clock} to ${endDate}${end.clock}, ${zone} (${start.offset})`
    : `${start.date}, ${start.clock} (${start.offset}) to ${endDate}${end.clock} (${end.offset}), ${zone}`;
}

const clockShown = (
  instantMs: number,
  zone: string,
): { readonly date: string; readonly clock: string; readonly offset: string } => ({
  date: formatDate(civilDateOf(instantMs, zone), 'en-GB'),
  clock: clockTime(instantMs, zone),
  offset: utcOffsetText(instantMs, zone),
});
