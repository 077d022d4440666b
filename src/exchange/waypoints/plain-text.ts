import { TEXT_LENGTH } from '../../core/plan/fields.ts';

const NAME_LENGTH = 120;
/** Of a text that still has its markup; more is cut before it is looked at. */
const MARKUP_LENGTH = 10 * TEXT_LENGTH;

/** Text as it can be kept: one kind of line end, no control, no half characters, nothing that turns the reading direction. */
const cleaned = (text: string): string =>
  text
    .replace(/\r\n?|[\u2028\u2029]/g, '\n')
    .replace(/\t/g, ' ')
    .replace(/(?!\n)[\p{Cc}\p{Cs}\uFFFE\uFFFF\uFEFF\u202A-\u202E\u2066-\u2069]/gu, '');

/** A name of one line, or null where there is none; too long a one is cut. */
export function plainName(text: string | null): string | null {
  const name = cleaned(withoutTags((text ?? '').slice(0, MARKUP_LENGTH)))
    .replace(/\s+/g, ' ')
    .trim();
  return name === '' ? null : cut(name, NAME_LENGTH);
}

/** A note of any number of lines; too long a one is cut. */
export const plainNote = (text: string | null): string =>
  cut(
    cleaned(withoutTags((text ?? '').slice(0, MARKUP_LENGTH)))
      .replace(/ *\n */g, '\n')
      .replace(/\n{3,}/g, '\n\n')
      .trim(),
    TEXT_LENGTH,
  );

const cut = (text: string, length: number): string =>
  text.length <= length
    ? text
    : `${text
        .slice(0, length - 1)
        .replace(/\p{Cs}$/u, '')
        .trimEnd()}…`;

/** Tags of hypertext that programs put into fields meant for plain text. */
const HYPERTEXT_TAG =
  /<\/?(?:a|b|big|blockquote|body|br|center|div|em|font|h[1-6]|head|hr|html|i|iframe|img|li|ol|p|pre|script|small|span|strong|style|sub|sup|table|tbody|td|th|tr|u|ul)(?:\s[^<>]*|\/)?>/i;

const withoutTags = (text: string): string =>
  HYPERTEXT_TAG.test(text) ? textFromMarkup(text) : text;

/** What hypertext says, as plain text; scripts and styles are dropped, links lose their address. */
export function textFromMarkup(markup: string): string {
  const short = markup.slice(0, MARKUP_LENGTH);
  const oneLine = BREAK.test(short) ? short.replace(/\s+/g, ' ') : short;
  return oneLine
    .replace(/<!--[\s\S]*?(?:-->|$)/g, '')
    .replace(/<(script|style)\b[\s\S]*?(?:<\/\1\s*>|$)/gi, '')
    .replace(BREAKS, '\n')
    .replace(/<[a-z/!?][^<>]*>/gi, '')
    .replace(/&(?:#(\d{1,7})|#x([\da-f]{1,6})|([a-z]{1,8}));/gi, entityText);
}

const BREAK = /<(?:br|\/?p|\/?div|\/?li|\/?tr|\/?h[1-6])(?:\s[^<>]*|\/)?>/i;
const BREAKS = new RegExp(BREAK, 'gi');

const entityText = (whole: string, decimal?: string, hex?: string, name?: string): string => {
  if (name !== undefined) return ENTITIES[name.toLowerCase()] ?? whole;
  const code = decimal === undefined ? Number.parseInt(hex ?? '', 16) : Number(decimal);
  return code <= 0x10ffff ? String.fromCodePoint(code) : whole;
};

const ENTITIES: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
  nbsp: ' ',
  deg: '°',
  ndash: '–',
  mdash: '—',
  hellip: '…',
};

/** Plain text for a field that is read as hypertext: only what would be taken for markup is escaped. */
export const markupFromText = (text: string): string =>
  text.replace(/&(?=#?\w+;)/g, '&amp;').replace(/<(?=[a-z/!?])/gi, '&lt;');
