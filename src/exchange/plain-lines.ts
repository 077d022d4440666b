/**
 * Text as any line of a file can hold it: one kind of line end, no control characters, no half
 * characters, nothing that turns the reading direction; tabs stay.
 */
export const plainLines = (text: string): string =>
  text
    .replace(/\r\n?|[\v\f\u0085\u2028\u2029]/g, '\n')
    .replace(/(?![\n\t])[\p{Cc}\p{Cs}\uFFFE\uFFFF\uFEFF\u202A-\u202E\u2066-\u2069]/gu, '');

/** The same in one line, without white space at its ends. */
export const plainLine = (text: string): string => plainLines(text).replace(/\s+/g, ' ').trim();
