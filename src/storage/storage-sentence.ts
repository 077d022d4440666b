import { Dexie } from 'dexie';

/** What to tell the user when the browser's database refuses; null where the error is none of the database's. */
export function storageSentence(error: unknown): string | null {
  const names = namesOf(error);
  if (names.includes('QuotaExceededError'))
    return 'The browser has no room left for this app, so the change was not saved; nothing else was lost. Free some space on the device, then try again.';
  if (names.some((name) => NO_DATABASE.has(name)))
    return 'This browser gives the app no place to keep data (a private window may do that). Nothing can be saved here: write the shoot to a file before you close the page.';
  return isOfDatabase(error)
    ? `The browser could not do it (${names.join(', ')}); nothing was changed. Reload the page and try again.`
    : null;
}

const NO_DATABASE: ReadonlySet<string> = new Set([
  'MissingAPIError',
  'OpenFailedError',
  'DatabaseClosedError',
  'InvalidStateError',
  'SecurityError',
]);

const isOfDatabase = (error: unknown): error is Error =>
  error instanceof Dexie.DexieError ||
  (typeof DOMException !== 'undefined' && error instanceof DOMException);

/** The error's own name and those of the errors it wraps. */
function namesOf(error: unknown): readonly string[] {
  if (!isOfDatabase(error)) return [];
  const inner = 'inner' in error ? namesOf(error.inner) : [];
  return [...new Set([error.name, ...inner])];
}
