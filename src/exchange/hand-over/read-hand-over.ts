import { fail, ok, type Result } from '../../core/units/result.ts';
import type { ContentHash } from '../file-photos.ts';
import { fromBase64Url } from './base64-url.ts';
import { inflatedWithin } from './deflate.ts';
import { CHECK_DIGITS, readPart, type HandOverPart } from './hand-over-part.ts';
import { handOverProblem, type HandOverProblem } from './hand-over-problem.ts';
import { MAX_HANDED_BYTES, noHash, sizeText } from './pack-hand-over.ts';

/**
 * The text of the shoot file that links brought along, in any order; of a part that comes again the
 * last is taken. It is held to its hash, but not yet read: it is of unknown origin, as any file.
 */
export async function readHandOver(
  addresses: readonly string[],
  contentHash: ContentHash,
): Promise<Result<string, HandOverProblem>> {
  const parts: HandOverPart[] = [];
  for (const address of addresses) {
    const part = readPart(address);
    if (!part.ok) return part;
    parts.push(part.value);
  }
  const joined = joinedParts(parts);
  if (!joined.ok) return joined;
  const packed = fromBase64Url(joined.value.payload);
  if (packed === null) return damaged();
  const inflated = await inflatedWithin(packed, MAX_HANDED_BYTES);
  if (!inflated.ok) {
    return inflated.problem === 'damaged'
      ? damaged()
      : handOverProblem(
          'too-large',
          `The link unpacks to more than ${sizeText(MAX_HANDED_BYTES)}, as links do that are made to fill memory; no shoot handed over is as large.`,
        );
  }
  const hash = await contentHash(inflated.value);
  if (hash === null) return noHash();
  if (hash.slice(0, CHECK_DIGITS) !== joined.value.check) return damaged();
  const text = decoded(inflated.value);
  return text === null ? damaged() : ok(text);
}

function joinedParts(
  parts: readonly HandOverPart[],
): Result<{ readonly payload: string; readonly check: string }, HandOverProblem> {
  const [first] = parts;
  if (first === undefined)
    return handOverProblem(
      'no-hand-over',
      'Expected a link that brings a shoot along, found none.',
    );
  const { of, check } = first;
  const payloads = new Map<number, string>();
  for (const part of parts) {
    if (part.of !== of || part.check !== check)
      return handOverProblem(
        'of-several',
        'These codes are of different shoots, or of one that was changed in between. Read all codes of one hand-over.',
      );
    payloads.set(part.number, part.payload);
  }
  const numbers = Array.from({ length: of }, (_, at) => at + 1);
  const missing = numbers.filter((number) => !payloads.has(number));
  if (missing.length > 0)
    return fail({
      kind: 'incomplete',
      sentence: `${missing.length === 1 ? 'Code' : 'Codes'} ${listed(missing)} of ${of} still to be read.`,
      missing,
    });
  return ok({ payload: numbers.map((number) => payloads.get(number) ?? '').join(''), check });
}

const listed = (numbers: readonly number[]): string =>
  numbers.length < 2
    ? numbers.join('')
    : `${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`;

const damaged = (): Result<never, HandOverProblem> =>
  handOverProblem(
    'damaged',
    'The link was changed on its way: what it holds is not what was handed over. Copy it again, or ask for the shoot file.',
  );

/** Null for bytes that are no UTF-8. */
function decoded(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return null;
  }
}
