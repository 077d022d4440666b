import { civilDateOf, clockTime } from '../core/units/civil-time.ts';
import { ok, type Result } from '../core/units/result.ts';
import { checkedDay, type DayEvent } from './day-event.ts';
import { plainLine, plainLines } from './plain-lines.ts';
import { textCell } from './waypoints/csv-cells.ts';
import { angleText, decimalText } from './waypoints/decimal-text.ts';

const HEADER =
  'date,start,end,zone,start_utc,end_utc,minutes,title,place,latitude,longitude,description';

const MS_PER_MIN = 60_000;

/**
 * The day as a table (RFC 4180, UTF-8 with the mark by which spreadsheets know it), one row per
 * event by time: date and clock times at the place, then the instants, which alone tell the two
 * hours apart that clocks show twice. No cell is a formula.
 */
export function writeDayCsv(events: readonly DayEvent[]): Result<string, string> {
  const day = checkedDay(events);
  if (!day.ok) return day;
  return ok(`\uFEFF${[HEADER, ...day.value.map(rowOf)].join('\r\n')}\r\n`);
}

const rowOf = (event: DayEvent): string => {
  const { startMs, endMs, zone, position } = event;
  return [
    civilDateOf(startMs, zone),
    clockTime(startMs, zone),
    clockTime(endMs, zone),
    textCell(zone),
    new Date(startMs).toISOString(),
    new Date(endMs).toISOString(),
    decimalText((endMs - startMs) / MS_PER_MIN, 2),
    textCell(plainLine(event.title)),
    textCell(plainLine(event.place)),
    position === null ? '' : angleText(position.latitudeDeg),
    position === null ? '' : angleText(position.longitudeDeg),
    textCell(plainLines(event.description).trim()),
  ].join(',');
};
