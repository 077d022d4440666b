import fc from 'fast-check';
import { zlibSync } from 'fflate';
import { expect, test } from 'vitest';

import { toBase64Url } from '../../../src/exchange/hand-over/base64-url.ts';
import { inflatedWithin } from '../../../src/exchange/hand-over/deflate.ts';
import { handOverLink } from '../../../src/exchange/hand-over/hand-over-link.ts';
import { packHandOver } from '../../../src/exchange/hand-over/pack-hand-over.ts';
import { readHandOver } from '../../../src/exchange/hand-over/read-hand-over.ts';
import { contentHash } from '../../../src/storage/content-hash.ts';

const linkFor = async (text: string): Promise<string> => {
  const packed = await packHandOver(text, contentHash);
  if (!packed.ok) throw new Error(packed.problem.sentence);
  const link = handOverLink(packed.value, location.href);
  if (!link.ok) throw new Error(link.problem.sentence);
  return link.value;
};

test('in a browser any text travels in the fragment of the page’s address and arrives byte for byte', async () => {
  await fc.assert(
    fc.asyncProperty(fc.string({ unit: 'binary', maxLength: 1000 }), async (text) => {
      const { hash } = new URL(await linkFor(text));
      expect(await readHandOver([hash], contentHash)).toEqual({ ok: true, value: text });
    }),
    { numRuns: 50 },
  );
});

/** By another implementation; without zlib's header and check sum (RFC 1950) it is RFC 1951. */
const packedBySomebody = (bytes: Uint8Array): Uint8Array<ArrayBuffer> =>
  new Uint8Array(zlibSync(bytes, { level: 9 }).slice(2, -4));

test('in a browser a bomb is given up at the limit, and what is no packing is damaged', async () => {
  const bomb = packedBySomebody(new Uint8Array(20e6));
  expect(await inflatedWithin(bomb, 2e6)).toEqual({ ok: false, problem: 'too-large' });
  expect(
    await readHandOver([`#p=1.1-1.${toBase64Url(bomb)}.0123456789abcdef`], contentHash),
  ).toMatchObject({ ok: false, problem: { kind: 'too-large' } });
  const packed = packedBySomebody(new TextEncoder().encode('Quartet on the pier '.repeat(20)));
  expect(await inflatedWithin(packed, 1000)).toMatchObject({ ok: true });
  for (const broken of [packed.slice(0, -3), new Uint8Array(40).fill(255), new Uint8Array()])
    expect(await inflatedWithin(broken, 1000)).toEqual({ ok: false, problem: 'damaged' });
});
