import { ok, type Result } from '../../core/units/result.ts';
import { withoutFragment } from './hand-over-link.ts';
import { MAX_PARTS, partFragment } from './hand-over-part.ts';
import { handOverProblem, type HandOverProblem } from './hand-over-problem.ts';
import { sizeText, type PackedHandOver } from './pack-hand-over.ts';

/** An encoder of QR codes (ISO/IEC 18004): rows of modules, true for dark, the border round them included. */
export type QrEncode = (
  text: string,
  options: { readonly ecc: 'L'; readonly border: number; readonly maxVersion: number },
) => { readonly data: readonly (readonly boolean[])[] };

export type HandOverCode = {
  /** 1 to `of`, to be shown beside it. */
  readonly number: number;
  readonly of: number;
  /** The link that it is read as. */
  readonly link: string;
  readonly modules: readonly (readonly boolean[])[];
};

/** 117 modules a side: common practice for what a phone still reads off a screen. */
const MAX_VERSION = 25;
/** Of version 25 at level L, in bytes (ISO/IEC 18004:2015, table 7). */
const MAX_CODE_BYTES = 1273;
/** The quiet zone that readers need (ISO/IEC 18004:2015, 6.3.8), in modules. */
const BORDER = 4;

/** As few codes as carry the shoot, about equally full, each a link of its own to be read in any order. */
export function handOverCodes({
  packed,
  appAddress,
  encode,
}: {
  readonly packed: PackedHandOver;
  readonly appAddress: string;
  readonly encode: QrEncode;
}): Result<readonly HandOverCode[], HandOverProblem> {
  const { payload, check } = packed;
  const address = withoutFragment(appAddress);
  const linkOf = (number: number, of: number, share: string): string =>
    `${address}${partFragment({ number, of, payload: share, check })}`;
  const room = MAX_CODE_BYTES - new TextEncoder().encode(linkOf(1, 1, '')).length;
  const of = room > 0 ? Math.max(1, Math.ceil(payload.length / room)) : Number.POSITIVE_INFINITY;
  if (of > MAX_PARTS) return tooLong(of, packed);
  const share = Math.ceil(payload.length / of);
  return ok(
    Array.from({ length: of }, (_, at) => {
      const link = linkOf(at + 1, of, payload.slice(at * share, (at + 1) * share));
      const { data } = encode(link, { ecc: 'L', border: BORDER, maxVersion: MAX_VERSION });
      return { number: at + 1, of, link, modules: data };
    }),
  );
}

const tooLong = (of: number, packed: PackedHandOver): Result<never, HandOverProblem> =>
  handOverProblem(
    'too-long',
    Number.isFinite(of)
      ? `The shoot (${sizeText(packed.packedBytes)} packed) would take ${of} codes; more than ${MAX_PARTS} nobody reads one by one. Send the shoot file instead (${sizeText(packed.textBytes)}).`
      : `The address of the app alone fills a code. Send the shoot file instead (${sizeText(packed.textBytes)}).`,
  );
