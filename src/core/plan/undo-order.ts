import type { HistoryEntry } from './history-entry.ts';

/** `entries` may belong to several documents, in the order of the log. */
export const latestUndoable = (
  entries: readonly HistoryEntry[],
  authorId: string,
): HistoryEntry | null => {
  const forward = forwardIds(entries);
  return latestStanding(entries, authorId, ({ id }) => forward.has(id));
};

/** `entries` may belong to several documents, in the order of the log. */
export const latestRedoable = (
  entries: readonly HistoryEntry[],
  authorId: string,
): HistoryEntry | null => {
  const forward = forwardIds(entries);
  const lastEdit = entries.findLastIndex(
    (entry) => entry.authorId === authorId && entry.undoes === null,
  );
  return latestStanding(entries.slice(lastEdit + 1), authorId, ({ id }) => !forward.has(id));
};

const latestStanding = (
  entries: readonly HistoryEntry[],
  authorId: string,
  counts: (entry: HistoryEntry) => boolean,
): HistoryEntry | null => {
  const withdrawn = new Set(entries.map(({ undoes }) => undoes));
  return (
    entries.findLast(
      (entry) =>
        entry.authorId === authorId &&
        entry.patches.length > 0 &&
        !withdrawn.has(entry.id) &&
        counts(entry),
    ) ?? null
  );
};

/** Ids of edits and redos, the entries that are somebody's work; the others are undos. */
export const forwardIds = (entries: readonly HistoryEntry[]): ReadonlySet<string> => {
  const forward = new Set<string>();
  const undos = new Set<string>();
  for (const { id, undoes } of entries)
    (undoes === null || undos.has(undoes) ? forward : undos).add(id);
  return forward;
};
