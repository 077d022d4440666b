import { Dexie } from 'dexie';
import { IDBKeyRange, IDBObjectStore, indexedDB } from 'fake-indexeddb';
import { afterEach, describe, expect, test, vi } from 'vitest';

import { demoShoot } from '../../src/core/plan/demo-shoot.ts';
import { SHOOT_VERSION } from '../../src/core/plan/shoot.ts';
import { editShoot } from '../../src/core/plan/edits.ts';
import { indexedDbRepository } from '../../src/storage/indexed-db-repository.ts';
import { describeBlobs } from '../support/blob-contract.ts';
import { describeRepository } from '../support/repository-contract.ts';

Object.assign(Dexie.dependencies, { indexedDB, IDBKeyRange });

let databases = 0;
const newName = (): string => {
  databases += 1;
  return `test-${databases}`;
};

describeRepository('kept in the browser’s database', () => {
  const name = newName();
  return [indexedDbRepository(name), indexedDbRepository(name)];
});

describeBlobs('kept in the browser’s database', () => {
  const name = newName();
  return [indexedDbRepository(name), indexedDbRepository(name)];
});

const edited = {
  kind: 'shoot',
  id: 'demo',
  edit: editShoot({ title: 'Octet' }),
  label: 'rename',
  stamp: { entryId: 'e1', authorId: 'ann', atMs: 1 },
} as const;

const matching = (words: string): unknown => expect.stringContaining(words);

const opened = async (): Promise<ReturnType<typeof indexedDbRepository>> => {
  const tab = indexedDbRepository(newName());
  await tab.create('shoot', demoShoot());
  return tab;
};

/** From the next write on, the database's own call throws. */
const refuseWrites = (store: string, error: string): void => {
  for (const method of ['put', 'add'] as const) {
    const real = IDBObjectStore.prototype[method];
    vi.spyOn(IDBObjectStore.prototype, method).mockImplementation(function (
      this: IDBObjectStore,
      ...given
    ) {
      if (this.name === store) throw new DOMException('refused', error);
      return real.apply(this, given);
    });
  }
};

describe('what the device refuses is an answer with a sentence', () => {
  afterEach(() => vi.restoreAllMocks());

  test.each(['documents', 'log'])(
    'no room left when %s is written: nothing of the edit is kept',
    async (store) => {
      const tab = await opened();
      refuseWrites(store, 'QuotaExceededError');
      expect(await tab.edit(edited)).toEqual({
        ok: false,
        problem: {
          kind: 'storage',
          sentence: matching('The browser has no room left'),
        },
      });
      vi.restoreAllMocks();
      expect(await tab.read('shoot', 'demo')).toEqual({ ok: true, value: demoShoot() });
      expect(
        await tab.canUndo({ documents: [{ kind: 'shoot', id: 'demo' }], authorId: 'ann' }),
      ).toEqual({ ok: true, value: null });
    },
  );

  test.each(['blobs', 'files'])('no room left for %s: it is said, and not kept', async (store) => {
    const tab = await opened();
    refuseWrites(store, 'QuotaExceededError');
    const refused = {
      ok: false,
      problem: { kind: 'storage', sentence: matching('The browser has no room left') },
    };
    expect(
      store === 'blobs'
        ? await tab.keepBlob(Uint8Array.from([1, 2]), 'image/jpeg')
        : await tab.keepFile('coast.pmtiles', new Blob(['map'])),
    ).toEqual(refused);
    vi.restoreAllMocks();
    expect(await tab.listFiles()).toEqual({ ok: true, value: [] });
    expect(await tab.sweepBlobs(0)).toEqual({ ok: true, value: 0 });
  });

  test('a page without a safe origin has no way to name a photo, and says so', async () => {
    const tab = await opened();
    vi.stubGlobal('crypto', {});
    const kept = await tab.keepBlob(Uint8Array.from([1]), 'image/jpeg');
    vi.unstubAllGlobals();
    expect(kept).toEqual({
      ok: false,
      problem: { kind: 'storage', sentence: matching('only where the page was opened over https') },
    });
  });

  test('a browser that opens no database', async () => {
    vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      throw new DOMException('denied', 'SecurityError');
    });
    const tab = indexedDbRepository(newName());
    const answer = {
      ok: false,
      problem: {
        kind: 'storage',
        sentence: matching('no place to keep data'),
      },
    };
    expect(await tab.listShoots()).toEqual(answer);
    expect(await tab.edit(edited)).toEqual(answer);
    expect(await tab.saveSetting('tiles', true)).toEqual(answer);
    expect(await tab.blob('a'.repeat(64))).toEqual(answer);
    expect(await tab.sweepBlobs(0)).toEqual(answer);
    expect(await tab.file('coast.pmtiles')).toEqual(answer);
    const heard = vi.fn<(answer: unknown) => void>();
    const stop = tab.observe('shoot', 'demo', heard);
    await vi.waitFor(() => expect(heard).toHaveBeenCalledWith(answer));
    stop();
  });
});

describe('what is kept stays', () => {
  test('document and history are there when the page is opened again', async () => {
    const name = newName();
    const before = indexedDbRepository(name);
    await before.create('shoot', demoShoot());
    await before.edit(edited);
    const after = indexedDbRepository(name);
    const documents = [{ kind: 'shoot', id: 'demo' }] as const;
    expect(await after.canUndo({ documents, authorId: 'ann' })).toEqual({
      ok: true,
      value: 'rename',
    });
    await after.undo({ documents, stamp: { entryId: 'e2', authorId: 'ann', atMs: 2 } });
    expect(await after.read('shoot', 'demo')).toEqual({ ok: true, value: demoShoot() });
  });

  test('a database of before there were photos keeps its shoots and takes photos', async () => {
    const name = newName();
    const older = new Dexie(name);
    older.version(1).stores({
      documents: '[kind+id], kind',
      log: '++seq, &id, [kind+documentId]',
      settings: 'name',
    });
    await older.table('documents').put({ kind: 'shoot', id: 'demo', document: demoShoot() });
    older.close();
    const tab = indexedDbRepository(name);
    expect(await tab.read('shoot', 'demo')).toEqual({ ok: true, value: demoShoot() });
    const kept = await tab.keepBlob(Uint8Array.from([1, 2, 3]), 'image/jpeg');
    const again = indexedDbRepository(name);
    expect(kept.ok && (await again.blob(kept.value))).toEqual({
      ok: true,
      value: { bytes: Uint8Array.from([1, 2, 3]), type: 'image/jpeg' },
    });
  });

  test('a database that a newer version of the app has set up opens all the same', async () => {
    const name = newName();
    const newer = new Dexie(name);
    newer
      .version(9)
      .stores({ documents: '[kind+id], kind', log: '++seq', settings: 'name', more: 'id' });
    await newer.table('documents').put({ kind: 'shoot', id: 'demo', document: demoShoot() });
    newer.close();
    expect(await indexedDbRepository(name).read('shoot', 'demo')).toEqual({
      ok: true,
      value: demoShoot(),
    });
  });

  test('a document written by a newer version is refused with both versions and left as it is', async () => {
    const name = newName();
    const tab = indexedDbRepository(name);
    await tab.create('shoot', demoShoot());
    const raw = await new Dexie(name).open();
    await raw
      .table('documents')
      .put({ kind: 'shoot', id: 'demo', document: { ...demoShoot(), version: 7 } });
    const answer = {
      ok: false,
      problem: {
        kind: 'refused',
        faults: [{ path: 'version', expected: `a version up to ${SHOOT_VERSION}`, found: '7' }],
      },
    };
    expect(await tab.read('shoot', 'demo')).toEqual(answer);
    expect(await tab.edit(edited)).toEqual(answer);
    expect((await raw.table('documents').get(['shoot', 'demo'])).document.version).toBe(7);
    raw.close();
  });
});
