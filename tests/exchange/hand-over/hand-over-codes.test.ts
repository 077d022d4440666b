import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import {
  handOverCodes,
  type HandOverCode,
  type QrEncode,
} from '../../../src/exchange/hand-over/hand-over-codes.ts';
import { MAX_PARTS } from '../../../src/exchange/hand-over/hand-over-part.ts';
import { sizeText } from '../../../src/exchange/hand-over/pack-hand-over.ts';
import { defined } from '../../support/defined.ts';
import { APP, demoFile, dense, packed, problemOf, readBack } from '../../support/handed-over.ts';

/** Stands for an encoder: keeps what it was given, its modules tell one text from another. */
const encoder = (): { readonly encode: QrEncode; readonly given: Parameters<QrEncode>[] } => {
  const given: Parameters<QrEncode>[] = [];
  const encode: QrEncode = (text, options) => {
    given.push([text, options]);
    return { data: [Array.from({ length: text.length % 10 }, () => true)] };
  };
  return { encode, given };
};

const codesFor = async (text: string, address = APP): Promise<readonly HandOverCode[]> => {
  const codes = handOverCodes({
    packed: await packed(text),
    appAddress: address,
    encode: encoder().encode,
  });
  if (!codes.ok) throw new Error(codes.problem.sentence);
  return codes.value;
};

describe('a shoot in codes', () => {
  test('each code is a link that fits version 25 at level L, 1,273 bytes (ISO/IEC 18004:2015, table 7)', async () => {
    const { encode, given } = encoder();
    const codes = handOverCodes({ packed: await packed(demoFile()), appAddress: APP, encode });
    if (!codes.ok) throw new Error(codes.problem.sentence);
    expect(codes.value.length).toBeGreaterThan(1);
    for (const [at, code] of codes.value.entries()) {
      expect(code).toMatchObject({ number: at + 1, of: codes.value.length });
      expect(code.link).toContain(`#p=1.${at + 1}-${codes.value.length}.`);
      expect(given[at]).toEqual([code.link, { ecc: 'L', border: 4, maxVersion: 25 }]);
      expect(code.modules).toEqual([Array.from({ length: code.link.length % 10 }, () => true)]);
      expect(new TextEncoder().encode(code.link).length).toBeLessThanOrEqual(1273);
    }
    expect(await readBack(...codes.value.map(({ link }) => link))).toBe(demoFile());
  });

  test('what fits one code is one code', async () => {
    const codes = await codesFor('A small shoot');
    expect(codes.length).toBe(1);
    expect(await readBack(defined(codes[0]).link)).toBe('A small shoot');
  });

  test('any length goes into as few codes as can be, none over-full, and comes back in any order', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 1, max: 7000 }),
        fc.webUrl({ validSchemes: ['https'] }),
        fc.infiniteStream(fc.nat()),
        async (length, address, chance) => {
          const text = dense(length);
          const codes = await codesFor(text, address);
          const overhead = defined(codes[0]).link.indexOf('#') + '#p=1.1-1..'.length + 16;
          const { payload } = await packed(text);
          expect(codes.length).toBe(Math.ceil(payload.length / (1273 - overhead)) || 1);
          for (const { link } of codes) expect(link.length).toBeLessThanOrEqual(1273);
          const shuffled = codes
            .map(({ link }) => ({ link, at: defined(chance.next().value) }))
            .toSorted((one, other) => one.at - other.at)
            .map(({ link }) => link);
          expect(await readBack(...shuffled, defined(shuffled[0]))).toBe(text);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('codes still to come are named, and no shoot is made of a part', async () => {
    const links = (await codesFor(dense(5000))).map(({ link }) => link);
    expect(links.length).toBe(5);
    expect(await problemOf(defined(links[1]), defined(links[3]))).toEqual({
      kind: 'incomplete',
      sentence: 'Codes 1, 3 and 5 of 5 still to be read.',
      missing: [1, 3, 5],
    });
    expect(await problemOf(...links.slice(1))).toMatchObject({
      sentence: 'Code 1 of 5 still to be read.',
    });
  });

  test('codes of two shoots are not mixed', async () => {
    const [one, other] = await Promise.all([codesFor(dense(2000)), codesFor(`${dense(1999)}!`)]);
    expect(one.length).toBe(other.length);
    expect(await problemOf(defined(one[0]).link, defined(other[1]).link)).toMatchObject({
      kind: 'of-several',
      sentence: expect.stringContaining('different shoots'),
    });
  });

  test('a code read wrongly can be read again, and until then no shoot is made of it', async () => {
    const links = (await codesFor(dense(2000))).map(({ link }) => link);
    const wrong = defined(links[0]).replace(/-2\..{6}/, '-2.AAAAAA');
    expect(await problemOf(wrong, ...links.slice(1))).toMatchObject({ kind: 'damaged' });
    expect(await readBack(wrong, ...links)).toBe(dense(2000));
  });

  test('1,273 bytes are one code, one more makes two', async () => {
    const small = await packed('x');
    const room = 1273 - APP.length - '#p=1.1-1..'.length - 16;
    for (const [length, of] of [
      [room, 1],
      [room + 1, 2],
      [2 * room, 2],
      [2 * room + 1, 3],
    ] as const) {
      const codes = handOverCodes({
        packed: { ...small, payload: 'A'.repeat(length) },
        appAddress: APP,
        encode: encoder().encode,
      });
      expect(codes.ok && codes.value.length).toBe(of);
    }
  });

  test('more than eight codes are refused with their number, and the file is offered', async () => {
    const small = await packed(dense(11_000));
    const codes = handOverCodes({ packed: small, appAddress: APP, encode: encoder().encode });
    expect(codes).toEqual({
      ok: false,
      problem: {
        kind: 'too-long',
        sentence: `The shoot (${sizeText(small.packedBytes)} packed) would take 10 codes; more than ${MAX_PARTS} nobody reads one by one. Send the shoot file instead (11.0 kB).`,
      },
    });
  });

  test('an address that fills a code alone is refused', async () => {
    const codes = handOverCodes({
      packed: await packed('x'),
      appAddress: `${APP}?${'a'.repeat(1300)}`,
      encode: encoder().encode,
    });
    expect(codes).toMatchObject({
      ok: false,
      problem: { sentence: expect.stringContaining('address of the app alone fills a code') },
    });
  });
});
