import * as z from 'zod/mini';

import { isCivilDate, isZone } from '../units/civil-time.ts';

/** A finite number inside stated bounds. */
export const numberFrom = (minimum: number, maximum: number): z.ZodMiniNumber =>
  z.number().check(z.gte(minimum), z.lte(maximum));

/** A finite number above 0, up to a stated bound. */
export const positiveUpTo = (maximum: number): z.ZodMiniNumber =>
  z.number().check(z.gt(0), z.lte(maximum));

export const wholeFrom = (minimum: number, maximum: number): z.ZodMiniNumber =>
  z.number().check(z.multipleOf(1), z.gte(minimum), z.lte(maximum));

export const TEXT_LENGTH = 4000;
export const text = z.string().check(z.maxLength(TEXT_LENGTH));
export const name = z.string().check(z.minLength(1), z.maxLength(120));
/** Never a name that every object answers to, such as 'constructor': ids are keys of maps. */
export const id = z.string().check(
  z.regex(/^[A-Za-z0-9_-]{1,40}$/, 'an id of letters, digits, - and _'),
  z.refine((key) => !(key in Object.prototype), 'an id that is no name built into every object'),
);
export const order = z.string().check(z.regex(/^[a-z]{1,80}$/, 'an order key of letters a to z'));

export const civilDate = z
  .string()
  .check(z.refine(isCivilDate, 'a date that exists, as 2027-05-14'));
/** A date, or '' where none is known. */
export const civilDateOrNone = z
  .string()
  .check(
    z.refine((date) => date === '' || isCivilDate(date), 'a date that exists, or an empty text'),
  );
/** Epoch milliseconds of the years 1900 to 2200. */
export const instantMs = z.number().check(z.gte(-2_208_988_800_000), z.lt(7_258_118_400_000));
/** SHA-256, lower-case hexadecimal. */
export const contentHash = z
  .string()
  .check(z.regex(/^[0-9a-f]{64}$/, 'a content hash of 64 hexadecimal digits'));
export const zone = z.string().check(z.refine(isZone, 'a time zone such as Europe/Rome'));
export const clock = z
  .string()
  .check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a clock time such as 19:30'));

/** A map keyed by id. */
export const mapOf = <Entry extends z.ZodMiniType>(
  entry: Entry,
): z.ZodMiniRecord<typeof id, Entry> => z.record(id, entry);
