import { deflateRawSync, inflateRawSync } from 'node:zlib';

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import {
  handOverLink,
  MAX_LINK_CHARACTERS,
  onlyHereSentence,
} from '../../../src/exchange/hand-over/hand-over-link.ts';
import { bringsHandOver, partFragment } from '../../../src/exchange/hand-over/hand-over-part.ts';
import type { HandOverProblem } from '../../../src/exchange/hand-over/hand-over-problem.ts';
import {
  MAX_HANDED_BYTES,
  packHandOver,
  sizeText,
} from '../../../src/exchange/hand-over/pack-hand-over.ts';
import { readHandOver } from '../../../src/exchange/hand-over/read-hand-over.ts';
import { readShootFile, writeShootFile } from '../../../src/exchange/shoot-file.ts';
import { defined } from '../../support/defined.ts';
import { APP, demoFile, packed, problemOf, readBack, sha256 } from '../../support/handed-over.ts';
import { shootWithKitArbitrary } from '../../support/shoot-arbitrary.ts';

const noHash = async (): Promise<null> => null;

const linkFor = async (text: string): Promise<string> => {
  const link = handOverLink(await packed(text), APP);
  if (!link.ok) throw new Error(link.problem.sentence);
  return link.value;
};

describe('a shoot in a link', () => {
  test('the demo travels and arrives as the shoot that it was', async () => {
    const text = demoFile();
    const link = await linkFor(text);
    expect(link).toMatch(/^https:\/\/example\.org\/undersky\/#p=1\.1-1\.[\w-]+\.[0-9a-f]{16}$/);
    const file = await readShootFile(await readBack(link), sha256);
    expect(file.ok && file.value.shoot).toEqual(demoShoot());
  });

  test('any shoot travels and arrives byte for byte, however long', async () => {
    await fc.assert(
      fc.asyncProperty(shootWithKitArbitrary, async ({ shoot, kit }) => {
        const text = writeShootFile({ shoot, kit, photos: {}, exportedAtMs: 0 });
        const small = await packed(text);
        expect(await readBack(`${APP}${partFragment({ number: 1, of: 1, ...small })}`)).toBe(text);
      }),
      { numRuns: 30 },
    );
  });

  test('any text travels and arrives byte for byte', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'binary', maxLength: 2000 }), async (text) => {
        expect(await readBack(await linkFor(text))).toBe(text);
      }),
    );
  });

  test('a text with the mark of UTF-8 before it keeps it', async () => {
    expect(await readBack(await linkFor('\uFEFFPier'))).toBe('\uFEFFPier');
  });

  test('another implementation unpacks what the link holds, and the hash is the file’s SHA-256', async () => {
    const text = demoFile();
    const [, payload = '', check] = /#p=1\.1-1\.([\w-]+)\.(.*)$/.exec(await linkFor(text)) ?? [];
    expect(inflateRawSync(Buffer.from(payload, 'base64url')).toString('utf8')).toBe(text);
    expect((await sha256(new TextEncoder().encode(text))).startsWith(defined(check))).toBe(true);
  });

  test('every character of it can stand in a fragment, RFC 3986, 3.5, and it ends with a letter or digit', async () => {
    const link = await linkFor(demoFile());
    expect(new URL(link).href).toBe(link);
    expect(new URL(link).hash).toMatch(/^#[\w.~!$&'()*+,;=:@/?-]*[a-z0-9]$/i);
  });

  test('the app’s own fragment gives way, its search stays', async () => {
    const link = handOverLink(await packed('x'), `${APP}?dim=1#day`);
    expect(link.ok && link.value).toMatch(/^https:\/\/example\.org\/undersky\/\?dim=1#p=1\./);
  });

  test('sizes are said', async () => {
    const { textBytes, packedBytes, payload } = await packed('é'.repeat(1000));
    expect(textBytes).toBe(2000);
    expect(packedBytes).toBeLessThan(100);
    // RFC 4648: four characters for three bytes.
    expect(payload.length).toBe(Math.ceil((packedBytes * 4) / 3));
    expect([sizeText(23_813), sizeText(2e6)]).toEqual(['23.8 kB', '2.0 MB']);
  });

  test('8,000 characters are a link, one more is not, and the file is offered', async () => {
    const room = MAX_LINK_CHARACTERS - APP.length - '#p=1.1-1..'.length - 16;
    const small = { ...(await packed('x')), textBytes: 12_345 };
    expect(handOverLink({ ...small, payload: 'A'.repeat(room) }, APP)).toMatchObject({ ok: true });
    expect(handOverLink({ ...small, payload: 'A'.repeat(room + 1) }, APP)).toEqual({
      ok: false,
      problem: {
        kind: 'too-long',
        sentence:
          'The link would have 8,001 characters; everybody takes up to 8,000. Send the shoot file instead (12.3 kB).',
      },
    });
  });

  test('a file larger than any link is refused before it is packed', async () => {
    expect(await packHandOver('a'.repeat(MAX_HANDED_BYTES + 1), sha256)).toMatchObject({
      ok: false,
      problem: { kind: 'too-long', sentence: expect.stringContaining('2.0 MB') },
    });
    expect(await packHandOver('a'.repeat(MAX_HANDED_BYTES), sha256)).toMatchObject({ ok: true });
  });

  test('where the browser hashes nothing that is said, on both sides', async () => {
    const refused = { ok: false, problem: { kind: 'no-hash' } };
    expect(await packHandOver('x', noHash)).toMatchObject(refused);
    expect(await readHandOver([await linkFor('x')], noHash)).toMatchObject(refused);
  });

  test.each([
    ['http://127.0.0.1:4173/', '127.0.0.1'],
    ['http://localhost:5173/', 'localhost'],
    ['http://app.localhost/', 'app.localhost'],
    ['http://[::1]:8080/', '[::1]'],
    ['file:///home/me/index.html', 'a file'],
  ])('at %s a link leads nowhere else, and that is said', (address, named) => {
    expect(onlyHereSentence(address)).toContain(`(${named})`);
  });

  test.each([APP, 'http://192.168.1.20:4173/', 'https://localhost.example.org/'])(
    '%s leads here from elsewhere too',
    (address) => {
      expect(onlyHereSentence(address)).toBeNull();
    },
  );
});

const CHECK = '0123456789abcdef';

describe('a link of unknown origin', () => {
  test.each([
    ['#day', false],
    ['', false],
    ['#p=1.1-1.x.y', true],
    ['https://example.org/#p=', true],
    ['https://example.org/?p=1', false],
    ['#dim=1&p=1.1-1.x.y', true],
  ])('whether %j brings a shoot along: %s', (address, brings) => {
    expect(bringsHandOver(address)).toBe(brings);
  });

  test.each<[string, string, HandOverProblem['kind'], RegExp]>([
    [
      'no hand-over',
      'https://example.org/#day',
      'no-hand-over',
      /with “#p=” in it, found “https:\/\/example.org\/#day”/,
    ],
    ['an empty one', '#p=', 'damaged', /begins “1\.1-1\.”, found “”/],
    ['something else', '#p=hello', 'damaged', /found “hello”/],
    ['a newer version', `#p=2.whatever~else`, 'newer', /way of writing 2, this one reads 1/],
    ['a newer version with our parts', `#p=12.1-1.AA.${CHECK}`, 'newer', /way of writing 12/],
    ['version nought', `#p=0.1-1.AA.${CHECK}`, 'damaged', /found “0\.1-1\.AA/],
    ['no more than a version', '#p=1', 'cut-short', /end is missing/],
    ['cut in the number', '#p=1.1', 'cut-short', /end is missing/],
    ['cut behind the number', '#p=1.1-1', 'cut-short', /end is missing/],
    ['cut in the payload', '#p=1.1-1.AAAA', 'cut-short', /end is missing/],
    ['cut in the check', `#p=1.1-1.AAAA.${CHECK.slice(1)}`, 'cut-short', /end is missing/],
    ['a part beyond the last', `#p=1.3-2.AA.${CHECK}`, 'damaged', /found “3-2”/],
    ['part nought', `#p=1.0-1.AA.${CHECK}`, 'damaged', /found “0-1”/],
    ['nine parts', `#p=1.1-9.AA.${CHECK}`, 'damaged', /found “1-9”/],
    ['a billion parts', `#p=1.1-1000000000.AA.${CHECK}`, 'damaged', /found “1-1000000000”/],
    ['the other base64', `#p=1.1-1.AA+A.${CHECK}`, 'damaged', /has “\+”/],
    ['padding', `#p=1.1-1.AA==.${CHECK}`, 'damaged', /has “=”/],
    ['letters of other scripts', `#p=1.1-1.AА.${CHECK}`, 'damaged', /has “А”/],
    ['a picture', `#p=1.1-1.🎻.${CHECK}`, 'damaged', /has “🎻”/],
    [
      'a check that is no hexadecimal',
      `#p=1.1-1.AA.${CHECK.replace('a', 'A')}`,
      'damaged',
      /has “A”/,
    ],
    ['something behind', `#p=1.1-1.AA.${CHECK}00`, 'damaged', /follows behind its end/],
    ['one field more', `#p=1.1-1.AA.${CHECK}.`, 'damaged', /Copy the link again/],
    ['nothing in it', `#p=1.1-1..${CHECK}`, 'damaged', /changed on its way/],
    ['bytes that were never packed', `#p=1.1-1.____.${CHECK}`, 'damaged', /changed on its way/],
    ['a length that no bytes have', `#p=1.1-1.AAAAA.${CHECK}`, 'damaged', /changed on its way/],
    [
      '70,000 characters',
      `#p=1.1-1.${'A'.repeat(70_000)}.${CHECK}`,
      'too-large',
      /has 70,\d+ characters/,
    ],
  ])('%s gets a sentence', async (_, link, kind, words) => {
    const problem = await problemOf(link);
    expect(problem.kind).toBe(kind);
    expect(problem.sentence).toMatch(words);
  });

  test('no links at all', async () => {
    expect(await problemOf()).toMatchObject({ kind: 'no-hand-over' });
  });

  test('any cut is seen: no shorter link is taken', async () => {
    const link = await linkFor('Quartet on the pier, three lights, two of them on batteries');
    const from = link.indexOf('#p=') + 3;
    for (let end = from; end < link.length; end += 1)
      expect(['cut-short', 'damaged']).toContain((await problemOf(link.slice(0, end))).kind);
  });

  test('any one character changed is seen', async () => {
    const text = 'Quartet on the pier, three lights, two of them on batteries';
    const link = await linkFor(text);
    const from = link.indexOf('#p=') + 3;
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: from, max: link.length - 1 }),
        fc.constantFrom(...'ABCxyz019-_.=+%& '.split('')),
        async (at, character) => {
          fc.pre(link.charAt(at) !== character);
          const changed = `${link.slice(0, at)}${character}${link.slice(at + 1)}`;
          const result = await readHandOver([changed], sha256);
          expect(result.ok).toBe(false);
        },
      ),
      { numRuns: 300 },
    );
  });

  test('a link within a message is found', async () => {
    const link = await linkFor('x');
    expect(await readBack(`The shoot: ${link}\nSee you there`)).toBe('x');
  });

  test('a bomb that unpacks to 20 MB is given up', async () => {
    const payload = deflateRawSync(new Uint8Array(20e6), { level: 9 }).toString('base64url');
    expect(payload.length).toBeLessThan(64_000);
    expect(await problemOf(`#p=1.1-1.${payload}.${CHECK}`)).toMatchObject({
      kind: 'too-large',
      sentence: expect.stringContaining('more than 2.0 MB'),
    });
  });

  test('bytes that are no UTF-8 are refused even with the right hash', async () => {
    const bytes = new Uint8Array([0xff, 0xfe, 0x41]);
    const payload = deflateRawSync(bytes).toString('base64url');
    const check = (await sha256(bytes)).slice(0, 16);
    expect(await problemOf(`#p=1.1-1.${payload}.${check}`)).toMatchObject({ kind: 'damaged' });
  });

  test('whatever stands in a fragment gets an answer, never an exception', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(
          fc.string({ unit: 'binary', maxLength: 200 }),
          fc.stringMatching(/^1\.[0-9]-[0-9]\.[\w-]{0,80}\.[0-9a-f]{14,18}$/),
        ),
        async (fragment) => {
          const problem = await problemOf(`#p=${fragment}`);
          expect(problem.sentence).toMatch(/\.$/);
        },
      ),
      { numRuns: 300 },
    );
  });
});
