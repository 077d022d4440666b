import { Buffer } from 'node:buffer';

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { fromBase64Url, toBase64Url } from '../../../src/exchange/hand-over/base64-url.ts';

describe('bytes in an address, RFC 4648, sections 5 and 10', () => {
  test.each([
    ['', ''],
    ['f', 'Zg'],
    ['fo', 'Zm8'],
    ['foo', 'Zm9v'],
    ['foob', 'Zm9vYg'],
    ['fooba', 'Zm9vYmE'],
    ['foobar', 'Zm9vYmFy'],
  ])('%j is %j', (plain, written) => {
    expect(toBase64Url(new TextEncoder().encode(plain))).toBe(written);
    expect(new TextDecoder().decode(fromBase64Url(written) ?? undefined)).toBe(plain);
  });

  test('any bytes are written as Node writes them, and read back', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 20_000 }), (bytes) => {
        const written = toBase64Url(bytes);
        expect(written).toBe(Buffer.from(bytes).toString('base64url'));
        expect(fromBase64Url(written)).toEqual(new Uint8Array(bytes));
      }),
    );
  });

  test.each([
    ['the other alphabet', 'a+b/'],
    ['padding', 'Zg=='],
    ['white space', 'Zm 9v'],
    ['a length that none has', 'Zm9vY'],
    ['bits left over that are not zero', 'Zh'],
    ['a letter that is none', 'Zmäv'],
  ])('no bytes are written with %s', (_, written) => {
    expect(fromBase64Url(written)).toBeNull();
  });
});
