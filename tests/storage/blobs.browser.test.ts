import { Dexie } from 'dexie';
import { expect, test } from 'vitest';

import type { Result } from '../../src/core/units/result.ts';
import { indexedDbRepository } from '../../src/storage/indexed-db-repository.ts';

const valueOf = <Value>(result: Result<Value, unknown>): Value => {
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
};

test('in a real browser a photo and a map file are there, whole, when the page is opened again', async () => {
  const name = 'blobs-in-a-real-browser';
  await Dexie.delete(name);
  const before = indexedDbRepository(name);
  const bytes = Uint8Array.from({ length: 300_000 }, (_, at) => (at * 7919) & 255);
  const hash = valueOf(await before.keepBlob(bytes, 'image/jpeg'));
  const map = new Blob([new Uint8Array(5_000_000), 'the end'], { type: 'application/x-map' });
  valueOf(await before.keepFile('coast.pmtiles', map));
  const after = indexedDbRepository(name);
  expect(valueOf(await after.blob(hash))).toEqual({ bytes, type: 'image/jpeg' });
  const file = valueOf(await after.file('coast.pmtiles'));
  expect(file).toBeInstanceOf(Blob);
  expect([file?.size, file?.type]).toEqual([5_000_007, 'application/x-map']);
  expect(await file?.slice(-3).text()).toBe('end');
  expect(valueOf(await after.listFiles())).toEqual([
    { name: 'coast.pmtiles', sizeBytes: 5_000_007, type: 'application/x-map' },
  ]);
  await Dexie.delete(name);
});
