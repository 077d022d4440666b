import { fail, ok, type Result } from '../core/units/result.ts';
import { jsonBreak } from './json-break.ts';

/** A file as browsers hand it over; its text is asked for only when its size will do. */
export type FileText = {
  /** Bytes. */
  readonly size: number;
  readonly text: () => Promise<string>;
};

export type FileProblem = {
  readonly kind:
    | 'too-large'
    | 'unreadable'
    | 'cut-short'
    | 'not-json'
    | 'not-ours'
    | 'newer'
    | 'faults';
  /** What was found and what was expected, for the user, plain text. */
  readonly sentences: readonly string[];
};

export const MAX_FILE_BYTES = 20e6;

export const refusal = (
  kind: FileProblem['kind'],
  ...sentences: readonly string[]
): Result<never, FileProblem> => fail({ kind, sentences });

/** The JSON value of a file of unknown origin, without keys that could reach into objects' prototypes. */
export async function parseFileText(
  source: string | FileText,
  maxBytes: number,
): Promise<Result<unknown, FileProblem>> {
  const size = typeof source === 'string' ? source.length : source.size;
  if (size > maxBytes)
    return refusal(
      'too-large',
      `The file is too large: found ${Math.ceil(size / 1e5) / 10} MB, expected at most ${maxBytes / 1e6} MB.`,
    );
  const text = typeof source === 'string' ? source : await source.text().catch(() => null);
  if (text === null)
    return refusal(
      'unreadable',
      'The file could not be opened. It may have been moved or locked since it was chosen.',
    );
  return parsed(text.replace(/^\uFEFF/, ''));
}

function parsed(text: string): Result<unknown, FileProblem> {
  if (text.trim() === '')
    return refusal('not-json', 'Expected an Undersky shoot, found an empty file.');
  const at = jsonBreak(text);
  if (at?.atEnd)
    return refusal(
      'cut-short',
      `The file was cut short: it breaks off at ${placeIn(text, at.index)}, before the shoot is complete.`,
    );
  if (at !== null)
    return refusal(
      'not-json',
      `Expected an Undersky shoot, found a file that is not JSON: it cannot be read on from ${placeIn(text, at.index)}, where it has ‘${text.charAt(at.index)}’.`,
    );
  const value: unknown = JSON.parse(text);
  const forbidden = forbiddenPath(value);
  return forbidden === null
    ? ok(value)
    : refusal('faults', `${forbidden}: expected no field of this name in a shoot, found one.`);
}

const placeIn = (text: string, index: number): string => {
  const before = text.slice(0, index).split('\n');
  return `line ${before.length}, column ${(before.at(-1)?.length ?? 0) + 1}`;
};

/** Deeper than any field of a shoot; what lies below is dropped unread. */
const DEPTH = 16;

/** The path of a key called __proto__ where fields of a shoot can lie; null where there is none. */
function forbiddenPath(value: unknown, path: readonly string[] = []): string | null {
  if (typeof value !== 'object' || value === null || path.length > DEPTH) return null;
  for (const [key, child] of Object.entries(value)) {
    const found =
      key === '__proto__' ? [...path, key].join('.') : forbiddenPath(child, [...path, key]);
    if (found !== null) return found;
  }
  return null;
}
