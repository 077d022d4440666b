import type { Patch } from 'immer';

import type { HistoryEntry } from './history-entry.ts';
import { forwardIds } from './undo-order.ts';

/**
 * Places written by other authors after an entry and not withdrawn since. What an author undid
 * counts no more, except where the undo had to leave it alone.
 */
export function standingPaths(
  entries: readonly HistoryEntry[],
  since: HistoryEntry,
): readonly Patch['path'][] {
  const forward = forwardIds(entries);
  const withdrawnBy = new Map(entries.map((entry) => [entry.undoes, entry]));
  const later = entries.slice(entries.findIndex(({ id }) => id === since.id) + 1);
  return later
    .filter(({ id, authorId }) => authorId !== since.authorId && forward.has(id))
    .flatMap((entry) => {
      const withdrawn = new Set(
        withdrawnBy.get(entry.id)?.patches.map(({ path }) => JSON.stringify(path)),
      );
      return entry.patches
        .map(({ path }) => path)
        .filter((path) => !withdrawn.has(JSON.stringify(path)));
    });
}
