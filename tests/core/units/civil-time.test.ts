import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addDays,
  civilDateOf,
  clockTime,
  dayBoundsMs,
  dayOfYear,
  formatDate,
  instantAtClock,
  isCivilDate,
  isZone,
  utcOffsetText,
} from '../../../src/core/units/civil-time.ts';

const HOUR_MS = 3_600_000;

test.each(['2024-02-29', '2000-01-01', '1999-12-31'])('%s is a date', (text) => {
  expect(isCivilDate(text)).toBe(true);
});
test.each([
  '2025-02-29',
  '2025-13-01',
  '2025-04-31',
  '2025-4-1',
  '14.5.2027',
  '',
  'NaN',
  '2025-01-01T00:00',
])('“%s” is no date', (text) => {
  expect(isCivilDate(text)).toBe(false);
});

test('zones are those of the IANA database; the machine’s own zone is never meant', () => {
  expect(['Europe/Rome', 'Pacific/Kiritimati', 'UTC', 'Etc/GMT-14'].every(isZone)).toBe(true);
  expect(['', 'local', 'system', 'Europe/Nowhere', 'Rome', '45'].some(isZone)).toBe(false);
});

describe('a day is as long as the clocks make it', () => {
  // Clock changes as announced: EU last Sunday of March and October, 01:00 UTC; US second Sunday
  // of March, first of November, 2 h local; Brazil 2018 and Azores, Cuba at midnight; Lord Howe
  // by half an hour; Samoa left out 30 December 2011.
  test.each([
    { date: '2025-03-30', zone: 'Europe/Rome', hours: 23 },
    { date: '2025-10-26', zone: 'Europe/Rome', hours: 25 },
    { date: '2025-10-25', zone: 'Europe/Rome', hours: 24 },
    { date: '2025-03-09', zone: 'America/New_York', hours: 23 },
    { date: '2025-11-02', zone: 'America/New_York', hours: 25 },
    { date: '2025-10-05', zone: 'Australia/Sydney', hours: 23 },
    { date: '2025-04-06', zone: 'Australia/Lord_Howe', hours: 24.5 },
    { date: '2018-11-04', zone: 'America/Sao_Paulo', hours: 23 },
    { date: '2018-02-17', zone: 'America/Sao_Paulo', hours: 25 },
    { date: '2025-10-26', zone: 'Atlantic/Azores', hours: 25 },
    { date: '2023-11-05', zone: 'America/Havana', hours: 25 },
    { date: '2011-12-30', zone: 'Pacific/Apia', hours: 0 },
  ])('$date in $zone has $hours h', ({ date, zone, hours }) => {
    const { startMs, endMs } = dayBoundsMs(date, zone);
    expect((endMs - startMs) / HOUR_MS).toBe(hours);
  });

  test('it starts and ends where the date does, in every zone', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...Intl.supportedValuesOf('timeZone')),
        fc.integer({ min: 0, max: 25_000 }),
        (zone, day) => {
          const date = addDays('1980-01-01', day);
          const { startMs, endMs } = dayBoundsMs(date, zone);
          if (startMs === endMs) return;
          expect(civilDateOf(startMs, zone)).toBe(date);
          expect(civilDateOf(startMs - 1, zone) < date).toBe(true);
          expect(civilDateOf(endMs - 1, zone)).toBe(date);
          expect(civilDateOf(endMs, zone) > date).toBe(true);
        },
      ),
      { numRuns: 500 },
    );
  });

  test('nonsense has no bounds', () => {
    expect(dayBoundsMs('2025-02-30', 'UTC').startMs).toBeNaN();
    expect(dayBoundsMs('2025-02-20', 'Europe/Nowhere').endMs).toBeNaN();
  });
});

describe('the instant at a clock time', () => {
  test('14:30 in Trieste on a summer day is 12:30 UTC', () => {
    expect(instantAtClock('2027-05-14', '14:30', 'Europe/Rome')).toBe(
      Date.parse('2027-05-14T12:30Z'),
    );
  });

  test('a time that the clocks jump over does not exist', () => {
    expect(instantAtClock('2025-03-30', '02:30', 'Europe/Rome')).toBeNull();
    expect(instantAtClock('2018-11-04', '00:30', 'America/Sao_Paulo')).toBeNull();
    expect(instantAtClock('2011-12-30', '12:00', 'Pacific/Apia')).toBeNull();
    expect(instantAtClock('2025-03-30', '03:00', 'Europe/Rome')).toBe(
      Date.parse('2025-03-30T01:00Z'),
    );
  });

  test('of a time that the clocks show twice the first is meant', () => {
    expect(instantAtClock('2025-10-26', '02:30', 'Europe/Rome')).toBe(
      Date.parse('2025-10-26T00:30Z'),
    );
    expect(instantAtClock('2025-11-02', '01:30', 'America/New_York')).toBe(
      Date.parse('2025-11-02T05:30Z'),
    );
  });

  test.each([
    ['2025-02-30', '12:00', 'UTC'],
    ['2025-02-20', '24:00', 'UTC'],
    ['2025-02-20', '7:00', 'UTC'],
    ['2025-02-20', '07:60', 'UTC'],
    ['2025-02-20', '07:00', 'Europe/Nowhere'],
  ])('%s %s in %s is no instant', (date, clock, zone) => {
    expect(instantAtClock(date, clock, zone)).toBeNull();
  });

  test('clock and date of an instant lead back to it', () => {
    const zones = Intl.supportedValuesOf('timeZone');
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        fc.integer({ min: Date.UTC(1980, 0, 1) / 60_000, max: Date.UTC(2040, 0, 1) / 60_000 }),
        (zone, minute) => {
          const instantMs = minute * 60_000;
          const [date, clock] = [civilDateOf(instantMs, zone), clockTime(instantMs, zone)];
          const back = instantAtClock(date, clock, zone) ?? Number.NaN;
          expect(civilDateOf(back, zone)).toBe(date);
          expect(clockTime(back, zone)).toBe(clock);
          // The second of two equal clock times leads to the first, up to two hours earlier.
          expect(instantMs - back).toBeGreaterThanOrEqual(0);
          expect(instantMs - back).toBeLessThanOrEqual(2 * HOUR_MS);
        },
      ),
      { numRuns: 500 },
    );
  });
});

test('the day of the year counts 29 February', () => {
  expect(dayOfYear('2025-01-01')).toBe(1);
  expect(dayOfYear('2024-03-01')).toBe(61);
  expect(dayOfYear('2025-03-01')).toBe(60);
  expect(dayOfYear('2024-12-31')).toBe(366);
  // Meeus, Astronomical Algorithms, ch. 7: 14 November 1978 is day 318, 22 April 1988 day 113.
  expect(dayOfYear('1978-11-14')).toBe(318);
  expect(dayOfYear('1988-04-22')).toBe(113);
});

test('offsets read as people write them', () => {
  const summer = Date.UTC(2027, 6, 1);
  const winter = Date.UTC(2027, 0, 1);
  expect(utcOffsetText(summer, 'Europe/Rome')).toBe('UTC+2');
  expect(utcOffsetText(winter, 'Europe/Rome')).toBe('UTC+1');
  expect(utcOffsetText(winter, 'Europe/London')).toBe('UTC');
  expect(utcOffsetText(winter, 'America/St_Johns')).toBe('UTC−3:30');
  expect(utcOffsetText(winter, 'Asia/Kathmandu')).toBe('UTC+5:45');
  expect(utcOffsetText(winter, 'Pacific/Kiritimati')).toBe('UTC+14');
});

test('dates read in the language asked for', () => {
  expect(formatDate('2027-05-14', 'en-GB')).toBe('Fri 14 May 2027');
  expect(formatDate('2024-02-29', 'en-GB')).toBe('Thu 29 Feb 2024');
  expect(formatDate('2027-05-14', 'it')).toBe('ven 14 mag 2027');
});
