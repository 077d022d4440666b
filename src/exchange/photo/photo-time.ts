import { instantAtClock } from '../../core/units/civil-time.ts';
import type { PhotoFacts } from './photo-facts.ts';

const EXIF_TIME = /^(\d{4}):(\d{2}):(\d{2}) (\d{2}:\d{2}):([0-5]\d)$/;
const OFFSET = /^([+-])(\d{2}):([0-5]\d)$/;
const WIDEST_OFFSET_MIN = 14 * 60;
/** A shoot keeps instants of the years 1900 to 2200, whatever the offset. */
const FIRST_YEAR = 1901;
const LAST_YEAR = 2198;

/** The clock's text 'YYYY-MM-DDTHH:mm:ss' from '2027:05:14 19:30:05'; null for no time there is. */
export function clockTimeOf(text: string | null): string | null {
  const [, year, month, day, clock, second] = EXIF_TIME.exec(text ?? '') ?? [];
  const date = `${year}-${month}-${day}`;
  const known =
    clock !== undefined &&
    Number(year) >= FIRST_YEAR &&
    Number(year) <= LAST_YEAR &&
    instantAtClock(date, clock, 'UTC') !== null;
  return known ? `${date}T${clock}:${second}` : null;
}

/** Minutes ahead of UTC from '+02:00'; null for no offset there is. */
export function offsetMinOf(text: string | null): number | null {
  const [, sign, hours, minutes] = OFFSET.exec(text ?? '') ?? [];
  if (sign === undefined) return null;
  const sizeMin = Number(hours) * 60 + Number(minutes);
  if (sizeMin > WIDEST_OFFSET_MIN) return null;
  return sign === '-' ? -sizeMin : sizeMin;
}

/** The instant at which a clock so far ahead of UTC showed the text. */
export const instantAtOffset = (clockTime: string, offsetMin: number): number =>
  Date.parse(`${clockTime}Z`) - offsetMin * 60_000;

/**
 * When a photo was taken: by the offset in the file, or else by the clocks of the zone it was taken
 * in. null where the file has no time, or one that those clocks never show.
 */
export function photoTakenAtMs(
  { takenAtMs, clockTime }: Pick<PhotoFacts, 'takenAtMs' | 'clockTime'>,
  zone: string,
): number | null {
  if (takenAtMs !== null || clockTime === null) return takenAtMs;
  const minuteMs = instantAtClock(clockTime.slice(0, 10), clockTime.slice(11, 16), zone);
  return minuteMs === null ? null : minuteMs + Number(clockTime.slice(17)) * 1000;
}
