/** The browser's own stores, or null where it refuses them. */
export type AuthorPlaces = {
  readonly local: Pick<Storage, 'getItem' | 'setItem'> | null;
  readonly session: Pick<Storage, 'getItem' | 'setItem'> | null;
  readonly locks: Pick<LockManager, 'request'> | null;
};

const AUTHORS = 'undersky.authors';
const AUTHOR = 'undersky.author';
const DEVICE = 'undersky.device';

/** What this browser offers; a page without storage or without a safe origin gets null there. */
export const browserPlaces = (page: Window): AuthorPlaces => ({
  local: offered(() => page.localStorage),
  session: offered(() => page.sessionStorage),
  locks: offered(() => page.navigator.locks ?? null),
});

const offered = <Place>(place: () => Place | null): Place | null => {
  try {
    return place();
  } catch {
    return null;
  }
};

/**
 * Who this tab is in the log: the same after a reload or a new start, never the same for two tabs
 * that live at once. Each tab holds a lock named for its id as long as it lives; a new tab takes
 * the first id of the device's list that nobody holds, its own from before a reload first. Without
 * locks the tab's session keeps the id.
 */
export async function claimAuthorId(places: AuthorPlaces, newId: () => string): Promise<string> {
  const { local, session, locks } = places;
  const before = read(session, AUTHOR);
  const claimed = local && locks && (await claimLocked(local, locks, before, newId));
  const id = claimed ?? before ?? newId();
  write(session, AUTHOR, id);
  return id;
}

/** null where the browser refuses locks after all. */
const claimLocked = (
  local: AuthorPlaces['local'] & object,
  locks: AuthorPlaces['locks'] & object,
  before: string | null,
  newId: () => string,
): Promise<string | null> =>
  locks
    .request(AUTHORS, async () => {
      const listed = listOf(read(local, AUTHORS));
      for (const candidate of new Set([...(before === null ? [] : [before]), ...listed]))
        if (await hold(locks, candidate)) return candidate;
      const made = newId();
      await hold(locks, made);
      write(local, AUTHORS, JSON.stringify([...listed, made]));
      return made;
    })
    .catch(() => null);

/** The device's id, made once. */
export function deviceId({ local }: Pick<AuthorPlaces, 'local'>, newId: () => string): string {
  const known = read(local, DEVICE);
  if (known !== null) return known;
  const made = newId();
  write(local, DEVICE, made);
  return made;
}

/** Whether the lock was free; it is then held until the tab is gone. */
const hold = (locks: AuthorPlaces['locks'] & object, id: string): Promise<boolean> =>
  new Promise((resolve, reject) => {
    locks
      .request(`${AUTHOR}.${id}`, { ifAvailable: true }, (lock) => {
        resolve(lock !== null);
        return lock === null ? undefined : new Promise<never>(() => undefined);
      })
      .catch(reject);
  });

function listOf(text: string | null): readonly string[] {
  try {
    const list: unknown = JSON.parse(text ?? '[]');
    return Array.isArray(list) ? list.filter((id) => typeof id === 'string') : [];
  } catch {
    return [];
  }
}

const read = (store: AuthorPlaces['local'], key: string): string | null => {
  try {
    return store?.getItem(key) ?? null;
  } catch {
    return null;
  }
};

/** A full or forbidden store costs the memory of the id, nothing else. */
const write = (store: AuthorPlaces['local'], key: string, value: string): void => {
  try {
    store?.setItem(key, value);
  } catch {
    return;
  }
};
