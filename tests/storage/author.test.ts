import { describe, expect, test } from 'vitest';

import { claimAuthorId, deviceId, type AuthorPlaces } from '../../src/storage/author.ts';

/** Locks as the Web Locks standard has them, as far as a tab's author needs: asked in turn or only if free, freed when the tab that holds them closes. */
const lockTable = (): {
  readonly tab: () => { readonly locks: AuthorPlaces['locks']; close: () => void };
} => {
  const held = new Map<string, { readonly owner: object; readonly done: Promise<unknown> }>();
  return {
    tab: () => {
      const owner = {};
      const request = async (
        name: string,
        ...rest: [LockGrantedCallback<unknown>] | [LockOptions, LockGrantedCallback<unknown>]
      ): Promise<unknown> => {
        const [options, callback] = rest.length === 1 ? [{}, rest[0]] : rest;
        await Promise.resolve();
        while (held.has(name)) {
          if ('ifAvailable' in options) return callback(null);
          await held.get(name)?.done;
        }
        const work = Promise.resolve().then(() => callback({ name, mode: 'exclusive' }));
        held.set(name, { owner, done: work });
        try {
          return await work;
        } finally {
          held.delete(name);
        }
      };
      return {
        locks: { request },
        close: () => {
          for (const [name, lock] of held) if (lock.owner === owner) held.delete(name);
        },
      };
    },
  };
};

const store = (): Pick<Storage, 'getItem' | 'setItem'> => {
  const kept = new Map<string, string>();
  return {
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, value) => void kept.set(key, value),
  };
};

const counter = (): (() => string) => {
  let count = 0;
  return () => {
    count += 1;
    return `author-${count}`;
  };
};

const device = (): {
  readonly open: (session?: AuthorPlaces['session']) => Promise<{ id: string; close: () => void }>;
} => {
  const local = store();
  const table = lockTable();
  const newId = counter();
  return {
    open: async (session = store()) => {
      const { locks, close } = table.tab();
      return { id: await claimAuthorId({ local, session, locks }, newId), close };
    },
  };
};

const refuse = (): never => {
  throw new DOMException('denied', 'SecurityError');
};

describe('who a tab is', () => {
  test('tabs that live at once are never the same author, though opened in the same moment', async () => {
    const { open } = device();
    const tabs = await Promise.all([open(), open(), open()]);
    expect(new Set(tabs.map(({ id }) => id)).size).toBe(3);
  });

  test('a tab opened after all were closed is an author from before', async () => {
    const { open } = device();
    const first = await open();
    first.close();
    expect((await open()).id).toBe(first.id);
  });

  test('every author of tabs opened at once comes back one day', async () => {
    const { open } = device();
    const before = await Promise.all([open(), open(), open()]);
    for (const { close } of before) close();
    const after = await Promise.all([open(), open(), open()]);
    expect(after.map(({ id }) => id).toSorted()).toEqual(before.map(({ id }) => id).toSorted());
  });

  test('each of two tabs is itself after a reload, whichever reloads first', async () => {
    const { open } = device();
    const sessions = [store(), store()];
    const [one, two] = [await open(sessions[0]), await open(sessions[1])];
    one.close();
    two.close();
    expect((await open(sessions[1])).id).toBe(two.id);
    expect((await open(sessions[0])).id).toBe(one.id);
  });

  test('a duplicated tab, which takes its session along, is somebody else', async () => {
    const { open } = device();
    const session = store();
    const one = await open(session);
    expect((await open(session)).id).not.toBe(one.id);
  });

  test('without locks the session keeps the author', async () => {
    const session = store();
    const places = { local: store(), session, locks: null };
    const newId = counter();
    const id = await claimAuthorId(places, newId);
    expect(await claimAuthorId(places, newId)).toBe(id);
    expect(await claimAuthorId({ ...places, session: store() }, newId)).not.toBe(id);
  });

  test('a browser that refuses every store and lock still gives an author', async () => {
    const refusing = { getItem: refuse, setItem: refuse };
    const locks = { request: () => Promise.reject(new DOMException('denied', 'SecurityError')) };
    expect(await claimAuthorId({ local: refusing, session: refusing, locks }, counter())).toBe(
      'author-1',
    );
    expect(await claimAuthorId({ local: null, session: null, locks: null }, counter())).toBe(
      'author-1',
    );
  });

  test('a list of authors that somebody has spoilt is started anew', async () => {
    const { locks } = lockTable().tab();
    const local = store();
    local.setItem('undersky.authors', '{"not": "a list"');
    expect(await claimAuthorId({ local, session: store(), locks }, counter())).toBe('author-1');
  });
});

describe('which device this is', () => {
  test('is made once', () => {
    const local = store();
    const newId = counter();
    expect([deviceId({ local }, newId), deviceId({ local }, newId)]).toEqual([
      'author-1',
      'author-1',
    ]);
  });
});
