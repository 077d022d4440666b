import { enablePatches, Immer, type Patch } from 'immer';

import type { Edit } from './edits.ts';
import { fieldWords } from './field-words.ts';
import type { HistoryEntry } from './history-entry.ts';
import type { Kit } from './kit.ts';
import { missingSpotIds } from './references.ts';
import { isNode, sameValue, valueAt } from './same-value.ts';
import type { Shoot } from './shoot.ts';
import { standingPaths } from './standing-work.ts';
import { latestRedoable, latestUndoable } from './undo-order.ts';

export type Change<Document> = {
  readonly document: Document;
  readonly patches: readonly Patch[];
  readonly inversePatches: readonly Patch[];
};

/** What withdrawing an entry would do; `leftAlone` says in words which parts stay as they are, and why. */
export type Withdrawal<Document> = Change<Document> & {
  readonly withdraws: HistoryEntry;
  readonly leftAlone: readonly string[];
};

/** The edited document and how to come back; the document handed in stays as it is. No patches where nothing changed. */
export function applyEdit<Document extends object>(
  document: Document,
  edit: Edit<Document>,
): Change<Document> {
  enablePatches();
  const [edited, patches, inversePatches] = new Immer({ autoFreeze: false }).produceWithPatches<
    Document,
    Document
  >(document, edit);
  return {
    document: edited,
    patches: patches.filter((patch) => changes(document, patch)),
    inversePatches: inversePatches.filter((patch) => changes(edited, patch)),
  };
}

const changes = (document: object, { op, path, value }: Patch): boolean =>
  op !== 'replace' || !sameValue(value, valueAt(document, path));

/** Undoes the author's latest edit or redo of this document; null where there is none. `entries` in the order of the log. */
export function planUndo<Document extends Shoot | Kit>(
  document: Document,
  entries: readonly HistoryEntry[],
  authorId: string,
): Withdrawal<Document> | null {
  const target = latestUndoable(entries, authorId);
  return target === null ? null : withdraw(document, entries, target);
}

/** Takes back the author's latest undo of this document; null where there is none, or where an edit of theirs came after it. */
export function planRedo<Document extends Shoot | Kit>(
  document: Document,
  entries: readonly HistoryEntry[],
  authorId: string,
): Withdrawal<Document> | null {
  const target = latestRedoable(entries, authorId);
  return target === null ? null : withdraw(document, entries, target);
}

/**
 * Applies the target's inverse patches, each only where its place still holds what the target wrote
 * and where nobody else's standing work came since, and none that would leave a setup without its
 * spot. Nothing is put back under an owner that is gone.
 */
export function withdraw<Document extends Shoot | Kit>(
  document: Document,
  entries: readonly HistoryEntry[],
  target: HistoryEntry,
): Withdrawal<Document> {
  const taken = standingPaths(entries, target);
  const words = wordsFor(document, entries);
  const leftAlone: string[] = [];
  let accepted = target.inversePatches.filter((inverse) => {
    const blocked = blocker(document, inverse, target, taken);
    if (blocked !== null) leftAlone.push(`${words(inverse)}: ${blocked}`);
    return blocked === null;
  });
  const missingBefore = missingSpotIds(document);
  for (;;) {
    const change = applyEdit(document, putting(accepted));
    const missing = [...missingSpotIds(change.document)].filter((id) => !missingBefore.has(id));
    const broken = accepted.filter((patch) => missing.some((id) => concerns(patch, id)));
    if (broken.length === 0) return { ...change, withdraws: target, leftAlone };
    for (const patch of broken)
      leftAlone.push(
        `${words(patch)}: ${patch.op === 'remove' ? 'in use since, left as it is' : 'its spot was removed since, left as it is'}`,
      );
    accepted = accepted.filter((patch) => !broken.includes(patch));
  }
}

function blocker(
  document: object,
  inverse: Patch,
  target: HistoryEntry,
  taken: readonly Patch['path'][],
): string | null {
  const owner = valueAt(document, inverse.path.slice(0, -1));
  if (owner === undefined || owner === null) return 'removed since, nothing to put back';
  const wrote = target.patches.find(({ path }) => sameValue(path, inverse.path));
  const holds = valueAt(document, inverse.path);
  const untouched =
    wrote !== undefined &&
    sameValue(holds, wrote.op === 'remove' ? undefined : wrote.value) &&
    !taken.some((path) => overlaps(path, inverse.path));
  if (untouched) return null;
  return holds === undefined
    ? 'removed since, nothing to put back'
    : 'changed since, left as it is';
}

const overlaps = (first: Patch['path'], second: Patch['path']): boolean => {
  const length = Math.min(first.length, second.length);
  return sameValue(first.slice(0, length), second.slice(0, length));
};

/** Whether a patch takes away the spot with this id, or puts in place a setup that names it. */
const concerns = ({ op, path, value }: Patch, spotId: string): boolean =>
  op === 'remove'
    ? path[0] === 'spots' && path[1] === spotId
    : path[0] === 'setups' && (value === spotId || valueAt(value, ['spotId']) === spotId);

const putting =
  <Document extends object>(patches: readonly Patch[]): Edit<Document> =>
  (draft) => {
    for (const { op, path, value } of patches) {
      const owner = valueAt(draft, path.slice(0, -1));
      const key = path.at(-1);
      if (!isNode(owner) || key === undefined) continue;
      if (op === 'remove') delete owner[key];
      else owner[key] = value;
    }
  };

/** Names a patch's place; where it is gone, by what the log last knew of it. */
const wordsFor =
  (document: object, entries: readonly HistoryEntry[]) =>
  ({ path }: Patch): string => {
    const known = entries
      .flatMap((entry) => [...entry.inversePatches, ...entry.patches])
      .filter((patch) => overlaps(patch.path, path) && patch.path.length <= path.length)
      .map((patch) =>
        patch.path.reduceRight<unknown>((value, key) => ({ [key]: value }), patch.value),
      );
    return fieldWords([document, ...known.toReversed()], path);
  };
