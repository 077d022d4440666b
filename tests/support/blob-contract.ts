import { createHash } from 'node:crypto';

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { demoShoot } from '../../src/core/plan/demo-shoot.ts';
import { removeSpot, type Edit } from '../../src/core/plan/edits.ts';
import { applyEdit } from '../../src/core/plan/history.ts';
import { addPhoto, removePhoto } from '../../src/core/plan/photo-edits.ts';
import type { Shoot } from '../../src/core/plan/shoot.ts';
import type { Result } from '../../src/core/units/result.ts';
import type { ShootRepository } from '../../src/storage/shoot-repository.ts';
import { plainPhoto } from './plain-photo.ts';
import type { OpenTwo } from './repository-contract.ts';

const valueOf = <Value>(result: Result<Value, unknown>): Value => {
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.problem)}`);
  return result.value;
};

const bytesOf = (text: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(text);

/** Another implementation of SHA-256 than the one under test. */
const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

const DAY_MS = 86_400_000;
const START_MS = 1_810_000_000_000;

let entries = 0;
const edited = async (tab: ShootRepository, edit: Edit<Shoot>): Promise<void> => {
  entries += 1;
  const stamp = { entryId: `blob-entry-${entries}`, authorId: 'ann', atMs: START_MS };
  valueOf(await tab.edit({ kind: 'shoot', id: 'demo', edit, label: 'photo', stamp }));
};

/** A sweep, and another two days later: what is gone then was named by nothing. */
const sweptTwice = async (tab: ShootRepository): Promise<number> =>
  valueOf(await tab.sweepBlobs(START_MS)) + valueOf(await tab.sweepBlobs(START_MS + 2 * DAY_MS));

/** What every place that keeps shoots does with photos and device files. */
export const describeBlobs = (name: string, openTwo: OpenTwo): void => {
  describe(`photos and files ${name}`, () => {
    test('a photo is named by the SHA-256 of its bytes and is there for every tab', async () => {
      const [tab, other] = openTwo();
      // FIPS 180-4, the worked example of the one-block message ‘abc’.
      expect(valueOf(await tab.keepBlob(bytesOf('abc'), 'image/jpeg'))).toBe(
        'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
      );
      const kept = valueOf(await other.blob(sha256(bytesOf('abc'))));
      expect(kept).toEqual({ bytes: bytesOf('abc'), type: 'image/jpeg' });
    });

    test('whatever its bytes, it comes back byte for byte, and the caller’s copy is its own', async () => {
      await fc.assert(
        fc.asyncProperty(fc.uint8Array({ maxLength: 300 }), async (given) => {
          const [tab] = openTwo();
          const around = new Uint8Array(given.length + 7);
          around.set(given, 3);
          const bytes = around.subarray(3, 3 + given.length);
          const keeping = tab.keepBlob(bytes, 'image/jpeg');
          around.fill(0);
          const hash = valueOf(await keeping);
          expect(hash).toBe(sha256(given));
          expect(valueOf(await tab.blob(hash))?.bytes).toEqual(new Uint8Array(given));
        }),
        { numRuns: 25 },
      );
    });

    test('a photo that is not here is an answer', async () => {
      const [tab] = openTwo();
      expect(await tab.blob('0'.repeat(64))).toEqual({ ok: true, value: null });
    });

    test('a photo that no shoot ever named is swept after a day, not before', async () => {
      const [tab, other] = openTwo();
      const hash = valueOf(await tab.keepBlob(bytesOf('loose'), 'image/jpeg'));
      expect(valueOf(await other.sweepBlobs(START_MS))).toBe(0);
      expect(valueOf(await other.sweepBlobs(START_MS + DAY_MS / 2))).toBe(0);
      expect(valueOf(await tab.blob(hash))).not.toBeNull();
      expect(valueOf(await other.sweepBlobs(START_MS + 2 * DAY_MS))).toBe(1);
      expect(valueOf(await tab.blob(hash))).toBeNull();
    });

    test('a photo kept again after a sweep found it unused has its day again', async () => {
      const [tab] = openTwo();
      const hash = valueOf(await tab.keepBlob(bytesOf('twice'), 'image/jpeg'));
      valueOf(await tab.sweepBlobs(START_MS));
      valueOf(await tab.keepBlob(bytesOf('twice'), 'image/jpeg'));
      expect(valueOf(await tab.sweepBlobs(START_MS + 2 * DAY_MS))).toBe(0);
      expect(valueOf(await tab.blob(hash))).not.toBeNull();
    });

    test('a photo stays as long as a shoot names it, or an undo could bring it back', async () => {
      const [tab] = openTwo();
      valueOf(await tab.create('shoot', demoShoot()));
      const hash = valueOf(await tab.keepBlob(bytesOf('pier'), 'image/jpeg'));
      await edited(tab, addPhoto('pier', 'p1', { ...plainPhoto, contentHash: hash }));
      expect(await sweptTwice(tab)).toBe(0);
      await edited(tab, removePhoto('pier', 'p1'));
      expect(await sweptTwice(tab)).toBe(0);
      const stamp = { entryId: 'back', authorId: 'ann', atMs: START_MS };
      valueOf(await tab.undo({ documents: [{ kind: 'shoot', id: 'demo' }], stamp }));
      expect(
        valueOf(await tab.read('shoot', 'demo')).spots['pier']?.photos['p1']?.contentHash,
      ).toBe(hash);
      expect(valueOf(await tab.blob(hash))?.bytes).toEqual(bytesOf('pier'));
      valueOf(await tab.remove('shoot', 'demo'));
      expect(await sweptTwice(tab)).toBe(1);
      expect(valueOf(await tab.blob(hash))).toBeNull();
    });

    test('a photo of an imported shoot stays as long as its removal can be undone', async () => {
      const [tab] = openTwo();
      const hash = valueOf(await tab.keepBlob(bytesOf('imported'), 'image/jpeg'));
      const photo = { ...plainPhoto, contentHash: hash };
      const { document } = applyEdit(demoShoot(), addPhoto('pier', 'p1', photo));
      valueOf(await tab.create('shoot', document));
      await edited(tab, removeSpot('pier'));
      expect(await sweptTwice(tab)).toBe(0);
    });

    test('a map file is kept under its name for every tab, replaced, listed with its size, and removed', async () => {
      const [tab, other] = openTwo();
      expect(valueOf(await tab.file('coast.pmtiles'))).toBeNull();
      valueOf(await tab.keepFile('coast.pmtiles', new Blob(['first'])));
      valueOf(await tab.keepFile('bay.pmtiles', new Blob(['b'], { type: 'application/x-map' })));
      valueOf(await tab.keepFile('coast.pmtiles', new Blob(['second one'])));
      expect(valueOf(await other.listFiles())).toEqual([
        { name: 'bay.pmtiles', sizeBytes: 1, type: 'application/x-map' },
        { name: 'coast.pmtiles', sizeBytes: 10, type: '' },
      ]);
      const kept = valueOf(await other.file('coast.pmtiles'));
      expect(await kept?.slice(7, 10).text()).toBe('one');
      valueOf(await other.removeFile('coast.pmtiles'));
      expect(valueOf(await tab.file('coast.pmtiles'))).toBeNull();
      expect(valueOf(await tab.listFiles()).map((file) => file.name)).toEqual(['bay.pmtiles']);
    });

    test('a sweep leaves map files alone', async () => {
      const [tab] = openTwo();
      valueOf(await tab.keepFile('coast.pmtiles', new Blob(['map'])));
      expect(await sweptTwice(tab)).toBe(0);
      expect(valueOf(await tab.file('coast.pmtiles'))?.size).toBe(3);
    });
  });
};
