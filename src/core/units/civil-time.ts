import { DateTime, IANAZone } from 'luxon';

const LOCALE = 'en-GB';
const CIVIL_DATE = /^\d{4}-\d{2}-\d{2}$/;
const CLOCK_TIME = /^([01]\d|2[0-3]):([0-5]\d)$/;

/** Whether the text is a date of the calendar, written 'YYYY-MM-DD'. */
export const isCivilDate = (text: string): boolean =>
  CIVIL_DATE.test(text) && atNoonUtc(text, LOCALE).isValid;

/** Whether the text is a time zone of the IANA database, such as 'Europe/Rome'. */
export const isZone = (text: string): boolean => IANAZone.isValidZone(text);

export type DayBounds = {
  /** First millisecond of the date. */
  readonly startMs: number;
  /** First millisecond after it. */
  readonly endMs: number;
};

/**
 * The date in its zone, 23 or 25 h long where clocks change. A date that the zone skipped
 * (Samoa, 2011-12-30) is empty: it ends where it starts. NaN for what is no date or no zone.
 */
export const dayBoundsMs = (date: string, zone: string): DayBounds => ({
  startMs: firstInstantMs(date, zone),
  endMs: firstInstantMs(nextDate(date), zone),
});

/**
 * The instant at which clocks of the zone show 'HH:mm' on the date; the first of two where they
 * show it twice; null where they never show it, or where a text is no date, time or zone.
 */
export const instantAtClock = (date: string, clock: string, zone: string): number | null => {
  if (!isCivilDate(date) || !CLOCK_TIME.test(clock) || !isZone(zone)) return null;
  const first = earliest(DateTime.fromISO(`${date}T${clock}`, { zone, locale: LOCALE }));
  return first.toFormat("yyyy-MM-dd'T'HH:mm") === `${date}T${clock}` ? first.toMillis() : null;
};

/** 'HH:mm' on the clocks of the zone; the running minute, not the nearest. */
export const clockTime = (instantMs: number, zone: string): string =>
  inZone(instantMs, zone).toFormat('HH:mm');

/** 'YYYY-MM-DD' on the calendars of the zone. */
export const civilDateOf = (instantMs: number, zone: string): string =>
  inZone(instantMs, zone).toFormat('yyyy-MM-dd');

/** 1 on 1 January to 365 or 366; NaN for what is no date. */
export const dayOfYear = (date: string): number => atNoonUtc(date, LOCALE).ordinal;

/** The date a number of days later, or earlier when negative. */
export const addDays = (date: string, days: number): string =>
  atNoonUtc(date, LOCALE).plus({ days }).toFormat('yyyy-MM-dd');

/** 'UTC', 'UTC+2', 'UTC−3:30'. */
export const utcOffsetText = (instantMs: number, zone: string): string => {
  const minutes = utcOffsetMin(instantMs, zone);
  if (minutes === 0) return 'UTC';
  const size = Math.abs(minutes);
  const rest = size % 60 === 0 ? '' : `:${String(size % 60).padStart(2, '0')}`;
  return `UTC${minutes < 0 ? '−' : '+'}${Math.floor(size / 60)}${rest}`;
};

/** Minutes by which the zone's clocks are ahead of UTC at the instant. */
export const utcOffsetMin = (instantMs: number, zone: string): number =>
  inZone(instantMs, zone).offset;

/** 'Fri 14 May 2027', day and month named in the locale. */
export const formatDate = (date: string, locale: string): string =>
  atNoonUtc(date, locale).toFormat('ccc d LLL yyyy');

const atNoonUtc = (date: string, locale: string): DateTime =>
  DateTime.fromISO(`${date}T12:00`, { zone: 'utc', locale });

const inZone = (instantMs: number, zone: string): DateTime =>
  DateTime.fromMillis(instantMs, { zone, locale: LOCALE });

const nextDate = (date: string): string => addDays(date, 1);

const firstInstantMs = (date: string, zone: string): number =>
  earliest(DateTime.fromISO(date, { zone, locale: LOCALE }).startOf('day')).toMillis();

/** Of the two instants that share a clock time where clocks go back, the first. */
const earliest = (time: DateTime): DateTime =>
  time
    .getPossibleOffsets()
    .reduce((one, other) => (other.toMillis() < one.toMillis() ? other : one), time);
