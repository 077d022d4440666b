/*
 * A handed-over shoot in the fragment of an address, which no browser sends to a server:
 *
 *   #p=1.2-3.<payload>.<check>
 *
 *   1        the version of this way of writing
 *   2-3      the second part of three; '1-1' for a whole one
 *   payload  its share of the shoot file, UTF-8, deflated (RFC 1951), in base64url (RFC 4648)
 *   check    the first 16 hexadecimal digits of the SHA-256 of the file's text, the same in every
 *            part: they tell parts of different shoots apart, and stand last, where a cut is seen
 */
import { ok, type Result } from '../../core/units/result.ts';
import { handOverProblem, type HandOverProblem } from './hand-over-problem.ts';

export type HandOverPart = {
  /** 1 to `of`. */
  readonly number: number;
  readonly of: number;
  readonly payload: string;
  readonly check: string;
};

export const MAX_PARTS = 8;
export const CHECK_DIGITS = 16;

/** More than any address holds that was written here. */
const MAX_CHARACTERS = 64_000;

const VERSION = 1;
const FIELD = /(?:^|[#&])p=([^&#\s]*)/;

/** Whether an address or its fragment brings a shoot along. */
export const bringsHandOver = (address: string): boolean => FIELD.test(address);

/** The fragment with its '#'. */
export const partFragment = ({ number, of, payload, check }: HandOverPart): string =>
  `#p=${VERSION}.${number}-${of}.${payload}.${check}`;

/** Reads a part from an address or fragment of unknown origin, alone or within a message. */
export function readPart(address: string): Result<HandOverPart, HandOverProblem> {
  if (address.length > MAX_CHARACTERS)
    return handOverProblem(
      'too-large',
      `The link has ${count(address.length)} characters; expected at most ${count(MAX_CHARACTERS)}. Ask for the shoot file instead.`,
    );
  const written = FIELD.exec(address.trim())?.[1];
  if (written === undefined)
    return handOverProblem(
      'no-hand-over',
      `Expected a link that brings a shoot along, with “#p=” in it, found “${address.trim().slice(0, 40)}”.`,
    );
  const [version = '', place = '', payload, check = '', ...more] = written.split('.');
  if (!/^[1-9]\d{0,3}$/.test(version) || more.length > 0)
    return handOverProblem(
      'damaged',
      `Behind “#p=” expected a shoot that begins “${VERSION}.1-1.”, found “${written.slice(0, 40)}”. Copy the link again.`,
    );
  if (Number(version) !== VERSION)
    return handOverProblem(
      'newer',
      `This shoot was handed over by a newer version of the app: in the way of writing ${version}, this one reads ${VERSION}. Reload the app here, or ask for the shoot file.`,
    );
  const numbers = /^([1-9])-([1-9])$/.exec(place);
  const number = Number(numbers?.[1]);
  const of = Number(numbers?.[2]);
  if (!(number <= of && of <= MAX_PARTS))
    return place === '' || payload === undefined
      ? cutShort()
      : handOverProblem(
          'damaged',
          `Expected the number of a part such as 1-1 or 2-${MAX_PARTS}, found “${place.slice(0, 40)}”. Copy the link again.`,
        );
  if (payload === undefined) return cutShort();
  const strange = /[^A-Za-z0-9_-]/u.exec(payload)?.[0] ?? /[^0-9a-f]/u.exec(check)?.[0];
  if (strange !== undefined)
    return handOverProblem(
      'damaged',
      `The link is damaged: it has “${strange}” where only letters, digits, - and _ can stand. Copy it again.`,
    );
  if (check.length < CHECK_DIGITS) return cutShort();
  if (check.length > CHECK_DIGITS)
    return handOverProblem(
      'damaged',
      `The link is damaged: something follows behind its end. Copy it again.`,
    );
  return ok({ number, of, payload, check });
}

const cutShort = (): Result<never, HandOverProblem> =>
  handOverProblem(
    'cut-short',
    'The link was cut short: its end is missing. Copy it again, whole, or ask for the shoot file.',
  );

const count = (value: number): string => value.toLocaleString('en-GB');
