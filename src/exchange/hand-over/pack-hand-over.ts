import { ok, type Result } from '../../core/units/result.ts';
import type { ContentHash } from '../file-photos.ts';
import { toBase64Url } from './base64-url.ts';
import { deflated } from './deflate.ts';
import { CHECK_DIGITS } from './hand-over-part.ts';
import { handOverProblem, type HandOverProblem } from './hand-over-problem.ts';

/** A shoot file made small, before it is known how it travels. */
export type PackedHandOver = {
  readonly payload: string;
  readonly check: string;
  readonly textBytes: number;
  readonly packedBytes: number;
};

/** What a link is unpacked to at the most. */
export const MAX_HANDED_BYTES = 2e6;

/** Packs the text of a shoot file, whatever is to stay already left out of it. */
export async function packHandOver(
  text: string,
  contentHash: ContentHash,
): Promise<Result<PackedHandOver, HandOverProblem>> {
  const bytes = new TextEncoder().encode(text);
  if (bytes.length > MAX_HANDED_BYTES)
    return handOverProblem(
      'too-long',
      `The shoot file has ${sizeText(bytes.length)}; a link or code carries what has at most ${sizeText(MAX_HANDED_BYTES)}, and far less of photos. Leave the photos out or send the shoot file.`,
    );
  const hash = await contentHash(bytes);
  if (hash === null) return noHash();
  const packed = await deflated(bytes);
  return ok({
    payload: toBase64Url(packed),
    check: hash.slice(0, CHECK_DIGITS),
    textBytes: bytes.length,
    packedBytes: packed.length,
  });
}

export const noHash = (): Result<never, HandOverProblem> =>
  handOverProblem(
    'no-hash',
    'The browser checks nothing on a page that was not opened over https, so a link would arrive unchecked. Open the app over https or send the shoot file.',
  );

/** '23.8 kB'. */
export const sizeText = (bytes: number): string =>
  bytes < 1e6 ? `${(bytes / 1e3).toFixed(1)} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
