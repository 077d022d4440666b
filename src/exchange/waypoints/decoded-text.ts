import { fail, ok, type Result } from '../../core/units/result.ts';

export type DecodedText = { readonly text: string; readonly notes: readonly string[] };

/**
 * The text of a file: as its byte order mark says, else as its XML declaration says, else UTF-8,
 * else Windows-1252, in which spreadsheets still write.
 */
export function decodedText(bytes: Uint8Array): Result<DecodedText, string> {
  const encoding = markedEncoding(bytes) ?? declaredEncoding(bytes) ?? 'utf-8';
  const text = decoded(bytes, encoding, { fatal: true });
  if (text === undefined)
    return fail(
      `Found text in the encoding “${encoding}”, which this browser does not know; expected UTF-8.`,
    );
  if (text !== null) return text.includes('\0') ? binary() : ok({ text, notes: [] });
  if (bytes.includes(0)) return binary();
  return ok({
    text: decoded(bytes, 'windows-1252', { fatal: false }) ?? '',
    notes: ['The text is not UTF-8 and was read as Windows-1252: check letters with accents.'],
  });
}

const binary = (): Result<never, string> =>
  fail('Expected text with waypoints, found a binary file, such as a picture.');

/** Null where the bytes do not fit the encoding, undefined where the encoding is unknown. */
const decoded = (
  bytes: Uint8Array,
  encoding: string,
  options: { readonly fatal: boolean },
): string | null | undefined => {
  let decoder: TextDecoder;
  try {
    decoder = new TextDecoder(encoding, options);
  } catch {
    return undefined;
  }
  try {
    return decoder.decode(bytes);
  } catch {
    return null;
  }
};

/** By its mark, or by the zeros that every second byte of plain Latin text has. */
const markedEncoding = ([first, second, third, fourth]: Uint8Array): string | null => {
  if (first === 0xef && second === 0xbb && third === 0xbf) return 'utf-8';
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  if (first && second === 0 && third && fourth === 0) return 'utf-16le';
  if (first === 0 && second && third === 0 && fourth) return 'utf-16be';
  return null;
};

const DECLARATION = /^\s*<\?xml\s[^>]*?encoding\s*=\s*["']([\w.:-]{1,40})["']/;

/** A declared UTF-16 whose declaration can be read byte by byte is none. */
const declaredEncoding = (bytes: Uint8Array): string | null => {
  const start = String.fromCharCode(...bytes.subarray(0, 200));
  const declared = DECLARATION.exec(start)?.[1]?.toLowerCase() ?? null;
  return declared === null || declared.startsWith('utf-16') ? null : declared;
};
