import { fail, ok, type Result } from '../../core/units/result.ts';
import { checkedDay, type DayEvent } from '../day-event.ts';
import { localTimeText } from '../local-time-text.ts';
import { plainLine } from '../plain-lines.ts';
import { decimalText } from '../waypoints/decimal-text.ts';
import type { CalendarEntry, CalendarIssue } from './calendar-issue.ts';
import { contentLine } from './content-line.ts';
import { textValue } from './text-value.ts';
import { utcDateTime } from './utc-date-time.ts';

/**
 * An issue as an iCalendar file (RFC 5545, text/calendar, UTF-8).
 *
 * Times are UTC instants, not clock times of a zone: the light belongs to the instant, whatever a
 * law may do to the clocks until then, and of the hour that clocks show twice a clock time can name
 * only the first (3.3.5). The clock times at the place stand in the description. There is no
 * METHOD: the file tells a state, it invites nobody, and an organizer (RFC 5546) is not named.
 */
export function writeCalendar({
  shootId,
  issue,
}: {
  /** Of letters, digits, - and _: with an entry's id it is the entry's own everywhere. */
  readonly shootId: string;
  readonly issue: CalendarIssue;
}): Result<string, string> {
  if (!/^[A-Za-z0-9_-]{1,80}$/.test(shootId))
    return fail(
      `Expected a shoot's id of up to 80 letters, digits, - and _, found “${shootId.slice(0, 80)}”.`,
    );
  const told = new Map(Object.values(issue.entries).map((entry) => [entry.event.id, entry]));
  const day = checkedDay(Object.values(issue.entries).map(({ event }) => event));
  if (!day.ok) return day;
  const entries = day.value.flatMap(({ id }) => told.get(id) ?? []);
  if (entries.length === 0)
    return fail('The day has no entries: expected one at least, for a calendar to show.');
  return ok(
    [
      contentLine('BEGIN', 'VCALENDAR'),
      contentLine('VERSION', '2.0'),
      contentLine('PRODID', '-//Undersky//Day//EN'),
      ...entries.flatMap((entry) => eventLines(shootId, entry)),
      contentLine('END', 'VCALENDAR'),
    ].join(''),
  );
}

const eventLines = (
  shootId: string,
  { event, sequence, revisedAtMs, cancelled }: CalendarEntry,
): readonly string[] => [
  contentLine('BEGIN', 'VEVENT'),
  contentLine('UID', `undersky.${shootId}.${event.id}`),
  contentLine('DTSTAMP', utcDateTime(revisedAtMs)),
  contentLine('LAST-MODIFIED', utcDateTime(revisedAtMs)),
  contentLine('SEQUENCE', String(sequence)),
  contentLine('STATUS', cancelled ? 'CANCELLED' : 'CONFIRMED'),
  contentLine('TRANSP', cancelled ? 'TRANSPARENT' : 'OPAQUE'),
  ...timeLines(event),
  // Not every calendar shows the status.
  contentLine('SUMMARY', textValue(`${cancelled ? 'Cancelled: ' : ''}${plainLine(event.title)}`)),
  ...placeLines(event),
  contentLine('DESCRIPTION', textValue(described(event))),
  contentLine('END', 'VEVENT'),
];

/** An end must be later than its start; an event without one is a moment (3.6.1). */
const timeLines = ({ startMs, endMs }: DayEvent): readonly string[] => {
  const [start, end] = [utcDateTime(startMs), utcDateTime(endMs)];
  return [contentLine('DTSTART', start), ...(end === start ? [] : [contentLine('DTEND', end)])];
};

/** Six decimals, a decimetre, as 3.8.1.6 recommends. */
const placeLines = ({ place, position }: DayEvent): readonly string[] => [
  ...(plainLine(place) === '' ? [] : [contentLine('LOCATION', textValue(plainLine(place)))]),
  ...(position === null
    ? []
    : [
        contentLine(
          'GEO',
          `${decimalText(position.latitudeDeg, 6)};${decimalText(position.longitudeDeg, 6)}`,
        ),
      ]),
];

const described = (event: DayEvent): string =>
  [localTimeText(event), event.description.trim()].filter((text) => text !== '').join('\n');
