import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, test } from 'vitest';

import type { DayEvent } from '../../../src/exchange/day-event.ts';
import { nextIssue, type CalendarIssue } from '../../../src/exchange/icalendar/calendar-issue.ts';
import { writeCalendar } from '../../../src/exchange/icalendar/write-calendar.ts';
import { localTimeText } from '../../../src/exchange/local-time-text.ts';
import { plainLine, plainLines } from '../../../src/exchange/plain-lines.ts';
import { dayArbitrary, plainEvent } from '../../support/day-event-arbitrary.ts';
import { defined } from '../../support/defined.ts';
import { calendarEvents, type CalendarEvent } from '../../support/icalendar-checker.ts';

const ISSUED_MS = Date.UTC(2027, 4, 1, 9);

const issueOf = (
  events: readonly DayEvent[],
  previous: CalendarIssue | null = null,
  issuedAtMs = ISSUED_MS,
): CalendarIssue => {
  const issue = nextIssue({ previous, events, issuedAtMs });
  if (!issue.ok) throw new Error(issue.problem);
  return issue.value;
};

const fileOf = (issue: CalendarIssue): string => {
  const file = writeCalendar({ shootId: 'k3f', issue });
  if (!file.ok) throw new Error(file.problem);
  return file.value;
};

const written = (events: readonly DayEvent[]): readonly CalendarEvent[] =>
  calendarEvents(fileOf(issueOf(events)));

const only = (event: DayEvent): CalendarEvent => defined(written([event])[0]);

const wholeSecond = (instantMs: number): number => Math.floor(instantMs / 1000) * 1000;

describe('a day as a calendar', () => {
  test('every property of an event, line by line as RFC 5545 writes them', () => {
    expect(fileOf(issueOf([plainEvent({ description: 'Key, left' })]))).toBe(
      [
        'BEGIN:VCALENDAR',
        'VERSION:2.0',
        'PRODID:-//Undersky//Day//EN',
        'BEGIN:VEVENT',
        'UID:undersky.k3f.pier-shoot',
        'DTSTAMP:20270501T090000Z',
        'LAST-MODIFIED:20270501T090000Z',
        'SEQUENCE:0',
        'STATUS:CONFIRMED',
        'TRANSP:OPAQUE',
        'DTSTART:20270514T143000Z',
        'DTEND:20270514T151000Z',
        'SUMMARY:Quartet on the pier',
        'LOCATION:Pier',
        'GEO:45.6503;13.7571',
        'DESCRIPTION:Fri 14 May 2027\\, 16:30 to 17:10\\, Europe/Rome (UTC+2)\\nKey\\, l',
        ' eft',
        'END:VEVENT',
        'END:VCALENDAR',
        '',
      ].join('\r\n'),
    );
  });

  test('any day keeps the standard’s rules and says what the day says', () => {
    fc.assert(
      fc.property(dayArbitrary({ minLength: 1 }), (events) => {
        const read = written(events);
        expect(read.length).toBe(events.length);
        for (const event of events) {
          const found = defined(read.find(({ uid }) => uid === `undersky.k3f.${event.id}`));
          expect(found.summary).toBe(plainLine(event.title));
          expect(found.location ?? '').toBe(plainLine(event.place));
          expect(found.description).toBe(
            plainLines([localTimeText(event), event.description.trim()].filter(Boolean).join('\n')),
          );
          expect(found.startMs).toBe(wholeSecond(event.startMs));
          expect(found.endMs ?? found.startMs).toBe(wholeSecond(event.endMs));
          // 3.8.1.6: six decimals.
          expect(found.geo === null).toBe(event.position === null);
          expect(found.geo?.[0] ?? 0).toBeCloseTo(event.position?.latitudeDeg ?? 0, 6);
          expect(found.geo?.[1] ?? 0).toBeCloseTo(event.position?.longitudeDeg ?? 0, 6);
        }
      }),
    );
  });

  test('a moment has a start alone, as an end must be later than it', () => {
    const { endMs } = only(plainEvent({ endMs: plainEvent().startMs }));
    expect(endMs).toBeNull();
  });

  test('a title that would begin another event stays a title', () => {
    const title = 'Pier\r\nEND:VEVENT\r\nBEGIN:VEVENT\r\nUID:x\r\nATTACH:http://example.com/';
    expect(only(plainEvent({ title })).summary).toBe(
      'Pier END:VEVENT BEGIN:VEVENT UID:x ATTACH:http://example.com/',
    );
  });

  test('what is to stay is not in the file', () => {
    const file = fileOf(issueOf([plainEvent({ place: '', position: null, description: '' })]));
    expect(file).not.toMatch(/LOCATION|GEO/);
    expect(file).toContain('DESCRIPTION:Fri 14 May 2027');
  });

  test.each([
    ['an id that would end its line', 'a\r\nb'],
    ['no id', ''],
  ])('%s is no shoot’s', (_, shootId) => {
    const file = writeCalendar({ shootId, issue: issueOf([plainEvent()]) });
    expect(file).toEqual({
      ok: false,
      problem: `Expected a shoot's id of up to 80 letters, digits, - and _, found “${shootId}”.`,
    });
  });

  test('a day without entries is said to be one', () => {
    expect(writeCalendar({ shootId: 'k3f', issue: issueOf([]) })).toEqual({
      ok: false,
      problem: 'The day has no entries: expected one at least, for a calendar to show.',
    });
  });

  test('an issue that was kept with a broken time is refused with the time', () => {
    const { entries } = issueOf([plainEvent()]);
    const entry = defined(entries['pier-shoot']);
    const broken = { ...entry, event: { ...entry.event, startMs: Number.NaN } };
    const file = writeCalendar({ shootId: 'k3f', issue: { entries: { broken } } });
    expect(file).toMatchObject({ ok: false, problem: expect.stringContaining('found NaN ms') });
  });
});

/** Clock times by Luxon, in the zone, at the instant that the file gives. */
const clockOf = (instantMs: number, zone: string): string =>
  DateTime.fromMillis(instantMs, { zone, locale: 'en-GB' }).toFormat("yyyy-MM-dd'T'HH:mmZZ");

describe('days on which clocks change', () => {
  test('both half past ones of New York’s 25 hours, 4 November 2007, the day of RFC 5545, 3.3.5', () => {
    // 3.3.5: the clock time 01:30 names the first, in daylight time, UTC−04:00, and never the other.
    const first = Date.UTC(2007, 10, 4, 5, 30);
    const second = Date.UTC(2007, 10, 4, 6, 30);
    const [early, late] = written([
      plainEvent({ id: 'a', zone: 'America/New_York', startMs: first, endMs: second }),
      plainEvent({ id: 'b', zone: 'America/New_York', startMs: second, endMs: second + 600_000 }),
    ]);
    expect(clockOf(defined(early).startMs, 'America/New_York')).toBe('2007-11-04T01:30-04:00');
    expect(clockOf(defined(late).startMs, 'America/New_York')).toBe('2007-11-04T01:30-05:00');
    expect(defined(early).endMs).toBe(second);
    expect(defined(early).description).toMatch(
      /^Sun 4 Nov 2007, 01:30 \(UTC−4\) to 01:30 \(UTC−5\), America\/New_York/,
    );
  });

  test.each([
    // RFC 5545, 3.6.5: New York 2007. Directive 2000/84/EC: Rome, last Sundays of March and October, 01:00 UTC.
    ['America/New_York', '2007-03-11', 23],
    ['America/New_York', '2007-11-04', 25],
    ['Europe/Rome', '2027-03-28', 23],
    ['Europe/Rome', '2027-10-31', 25],
    // Lord Howe Island moves by half an hour (tz database).
    ['Australia/Lord_Howe', '2025-04-06', 24.5],
  ])('in %s on %s every half hour of the %d hours keeps its clock time', (zone, date, hours) => {
    const day = DateTime.fromISO(date, { zone, locale: 'en-GB' });
    const slots = hours * 2;
    const events = Array.from({ length: slots }, (_, at) => {
      const start = day.plus({ minutes: 30 * at });
      return plainEvent({
        id: `slot-${at}`,
        zone,
        title: start.toFormat("yyyy-MM-dd'T'HH:mmZZ"),
        startMs: start.toMillis(),
        endMs: start.plus({ minutes: 30 }).toMillis(),
      });
    });
    const read = written(events);
    expect(read.map(({ startMs }) => clockOf(startMs, zone))).toEqual(
      read.map(({ summary }) => summary),
    );
    expect(new Set(read.map(({ startMs }) => startMs)).size).toBe(slots);
    const ends = defined(read.at(-1)).endMs ?? 0;
    expect(clockOf(ends, zone).slice(0, 16)).toBe(
      day.plus({ days: 1 }).startOf('day').toFormat("yyyy-MM-dd'T'HH:mm"),
    );
  });
});

describe('an issue that replaces another', () => {
  const LATER_MS = ISSUED_MS + 86_400_000;
  const first = issueOf([plainEvent(), plainEvent({ id: 'mole', title: 'Solo on the mole' })]);

  const reissued = (events: readonly DayEvent[], before = first, atMs = LATER_MS) => {
    const issue = issueOf(events, before, atMs);
    const read = calendarEvents(fileOf(issue));
    const named = (id: string): CalendarEvent =>
      defined(read.find(({ uid }) => uid === `undersky.k3f.${id}`));
    return { issue, read, named };
  };

  test('what is unchanged is told again word for word', () => {
    const again = issueOf(
      Object.values(first.entries).map(({ event }) => ({ ...event })),
      first,
      LATER_MS,
    );
    expect(fileOf(again)).toBe(fileOf(first));
  });

  test.each<[string, Partial<DayEvent>]>([
    ['title', { title: 'Quartet, all four' }],
    ['start', { startMs: plainEvent().startMs - 60_000 }],
    ['end', { endMs: plainEvent().endMs + 60_000 }],
    ['zone', { zone: 'Europe/London' }],
    ['place', { place: 'Old pier' }],
    ['position', { position: { latitudeDeg: 45.66, longitudeDeg: 13.7571 } }],
    ['longitude', { position: { latitudeDeg: 45.6503, longitudeDeg: 13.76 } }],
    ['no position', { position: null }],
    ['description', { description: 'Key at the right' }],
  ])('a changed %s counts one up under the same UID, the rest stays', (_, changes) => {
    const { named, read } = reissued([
      plainEvent(changes),
      plainEvent({ id: 'mole', title: 'Solo on the mole' }),
    ]);
    expect(read.length).toBe(2);
    expect(named('pier-shoot')).toMatchObject({
      sequence: 1,
      stampMs: LATER_MS,
      modifiedMs: LATER_MS,
      status: 'CONFIRMED',
    });
    expect(named('mole')).toMatchObject({ sequence: 0, stampMs: ISSUED_MS, modifiedMs: ISSUED_MS });
  });

  test('what left the day is cancelled at its old time, no longer busy, and stays cancelled', () => {
    const { named, issue } = reissued([plainEvent()]);
    const cancelled = {
      sequence: 1,
      status: 'CANCELLED',
      transparency: 'TRANSPARENT',
      summary: 'Cancelled: Solo on the mole',
      startMs: plainEvent().startMs,
      modifiedMs: LATER_MS,
    };
    expect(named('mole')).toMatchObject(cancelled);
    expect(named('pier-shoot')).toMatchObject({ sequence: 0, transparency: 'OPAQUE' });
    expect(reissued([plainEvent()], issue, LATER_MS * 2).named('mole')).toMatchObject(cancelled);
  });

  test('what comes back is the same entry, confirmed and counted on', () => {
    const { issue } = reissued([plainEvent()]);
    const back = reissued(
      [plainEvent(), plainEvent({ id: 'mole', title: 'Solo on the mole' })],
      issue,
      LATER_MS + 1000,
    );
    expect(back.named('mole')).toMatchObject({
      sequence: 2,
      status: 'CONFIRMED',
      summary: 'Solo on the mole',
    });
  });

  test('a device whose clock was put back makes no change look older than what it changes', () => {
    const { named } = reissued([plainEvent({ title: 'Other' })], first, ISSUED_MS - 3_600_000);
    expect(named('pier-shoot')).toMatchObject({ sequence: 1, modifiedMs: ISSUED_MS });
  });

  test('over any issues no sequence and no time of change ever goes down, and no UID is lost', () => {
    fc.assert(
      fc.property(fc.array(dayArbitrary(), { minLength: 1, maxLength: 5 }), (days) => {
        let issue: CalendarIssue | null = null;
        for (const [at, events] of days.entries()) {
          const next = issueOf(events, issue, ISSUED_MS + at * 60_000);
          for (const [id, before] of Object.entries(issue?.entries ?? {})) {
            const after = defined(next.entries[id]);
            expect(after.sequence).toBeGreaterThanOrEqual(before.sequence);
            expect(after.revisedAtMs).toBeGreaterThanOrEqual(before.revisedAtMs);
            expect(after.cancelled).toBe(!events.some((event) => event.id === id));
          }
          issue = structuredClone(next);
        }
      }),
    );
  });
});
