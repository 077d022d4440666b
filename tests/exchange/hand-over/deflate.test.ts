import { deflateRawSync, inflateRawSync } from 'node:zlib';

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { deflated, inflatedWithin } from '../../../src/exchange/hand-over/deflate.ts';

const bytes = (from: Uint8Array): Uint8Array<ArrayBuffer> => new Uint8Array(from);

describe('packing, RFC 1951', () => {
  test('any bytes are unpacked by another implementation, and its own by this', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 3000 }), async (plain) => {
        const packed = await deflated(bytes(plain));
        expect(bytes(inflateRawSync(packed))).toEqual(bytes(plain));
        expect(await inflatedWithin(bytes(deflateRawSync(plain)), 3000)).toEqual({
          ok: true,
          value: bytes(plain),
        });
      }),
    );
  });

  test('what fills the limit is unpacked, one byte more is not', async () => {
    const packed = bytes(deflateRawSync(new Uint8Array(100_001)));
    expect(await inflatedWithin(packed, 100_001)).toMatchObject({ ok: true });
    expect(await inflatedWithin(packed, 100_000)).toEqual({ ok: false, problem: 'too-large' });
  });

  test('64 MB of nothing in 65 kB are given up at the limit', async () => {
    const nothing = new Uint8Array(2 ** 26);
    const bomb = bytes(deflateRawSync(nothing, { level: 9 }));
    expect(bomb.length).toBeLessThan(nothing.length / 1000);
    expect(await inflatedWithin(bomb, 1e6)).toEqual({ ok: false, problem: 'too-large' });
  });

  test('anything cut short is damaged, wherever it was cut', async () => {
    const packed = bytes(
      deflateRawSync(new TextEncoder().encode('Quartet on the pier '.repeat(40))),
    );
    for (let end = 0; end < packed.length; end += 1)
      expect(await inflatedWithin(packed.slice(0, end), 10_000)).toEqual({
        ok: false,
        problem: 'damaged',
      });
  });

  test('bytes that were never packed are damaged', async () => {
    expect(await inflatedWithin(new Uint8Array(50).fill(255), 10_000)).toEqual({
      ok: false,
      problem: 'damaged',
    });
  });
});
