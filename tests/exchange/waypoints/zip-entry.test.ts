import { strToU8, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';

import { unzippedEntry, zipEntries } from '../../../src/exchange/waypoints/zip-entry.ts';
import { defined } from '../../support/defined.ts';

/** Unzips the one entry, or gives the sentence. */
const unzipped = async (bytes: Uint8Array): Promise<Uint8Array | string> => {
  const entries = await zipEntries(bytes);
  if (!entries.ok) return entries.problem;
  const read = await unzippedEntry(bytes, defined(entries.value[0]));
  return read.ok ? read.value : read.problem;
};

const noise = (length: number): Uint8Array => {
  let state = 1;
  return Uint8Array.from({ length }, () => {
    state = Math.imul(state, 1664525) + 1013904223;
    return (state >>> 16) & 255;
  });
};

/** The sizes that the list of contents and the entry itself state, put to a small figure. */
const understated = (bytes: Uint8Array): Uint8Array => {
  const copy = bytes.slice();
  const view = new DataView(copy.buffer);
  for (let at = 0; at + 4 <= copy.length; at += 1) {
    const signature = view.getUint32(at, true);
    if (signature === 0x04034b50) view.setUint32(at + 22, 100, true);
    if (signature === 0x02014b50) view.setUint32(at + 24, 100, true);
  }
  return copy;
};

describe('an entry of an archive', () => {
  test.each([6, 0] as const)('comes out as it went in, packed at level %i', async (level) => {
    const contents = noise(100_000);
    expect(await unzipped(zipSync({ 'doc.kml': contents }, { level }))).toEqual(contents);
  });

  test('a list of contents in order', async () => {
    const bytes = zipSync({ 'files/a.png': noise(10), 'doc.kml': strToU8('<kml/>') });
    const entries = await zipEntries(bytes);
    expect(entries.ok && entries.value.map(({ name }) => name)).toEqual(['files/a.png', 'doc.kml']);
  });
});

describe('archives made to harm, and broken ones, get a sentence', () => {
  const bomb = zipSync({ 'doc.kml': new Uint8Array(60e6) }, { level: 9 });

  test('60 MB of zeros in 60 kB', async () => {
    expect(bomb.length).toBeLessThan(100_000);
    expect(await unzipped(bomb)).toMatch(/unpacks to 60\.0 MB or more.*expected at most 20 MB/);
  });

  test('the same with false sizes is given up as it grows', async () => {
    expect(await unzipped(understated(bomb))).toMatch(/unpacks to \d\d\.\d MB or more/);
  });

  test('small, but four hundred times its packed size', async () => {
    expect(await unzipped(zipSync({ 'doc.kml': new Uint8Array(4e6) }, { level: 9 }))).toMatch(
      /200 times its packed size/,
    );
  });

  test('more than 2,000 entries', async () => {
    const many = Object.fromEntries(
      Array.from({ length: 2001 }, (_, at) => [`${at}.kml`, new Uint8Array(1)]),
    );
    expect(await unzipped(zipSync(many, { level: 0 }))).toMatch(/more than 2000 files/);
  });

  test('cut short, without its list of contents', async () => {
    const whole = zipSync({ 'doc.kml': noise(50_000) });
    expect(await unzipped(whole.subarray(0, 30_000))).toMatch(/damaged or was cut short/);
  });

  test('damaged inside', async () => {
    const whole = zipSync({ 'doc.kml': strToU8('a long text '.repeat(500)) });
    const damaged = whole.slice();
    damaged.fill(0xff, 40, 60);
    expect(await unzipped(damaged)).toMatch(/damaged, locked or cut short/);
  });

  test('no zip at all', async () => {
    expect(await unzipped(strToU8('GIF89a'))).toBe(
      'Expected a zip archive, found a file that does not begin as one.',
    );
  });
});
