import { describeFault } from '../core/plan/check-document.ts';
import type { DocumentKind, HistoryEntry } from '../core/plan/history-entry.ts';
import { applyEdit, withdraw, type Withdrawal } from '../core/plan/history.ts';
import type { Kit } from '../core/plan/kit.ts';
import type { Shoot } from '../core/plan/shoot.ts';
import { latestRedoable, latestUndoable } from '../core/plan/undo-order.ts';
import { fail, ok, type Result } from '../core/units/result.ts';
import type { DocumentTables } from './document-tables.ts';
import { openStored } from './open-stored.ts';
import type { ShootRepository, StepDone, StepRequest, StorageFailure } from './shoot-repository.ts';
import { checkedDocument } from './stored-document.ts';

/** Runs work in one transaction; what the device refuses is an answer. */
export type Guarded = <Value, Problem>(
  mode: 'read' | 'write',
  work: (tables: DocumentTables) => Promise<Result<Value, Problem>>,
) => Promise<Result<Value, Problem | StorageFailure>>;

export type StoredEdits = Pick<ShootRepository, 'edit' | 'undo' | 'redo'>;

/** The part of the repository that changes documents and keeps their log. */
export function storedEdits(guarded: Guarded): StoredEdits {
  const step = <Problem>(
    next: typeof latestUndoable,
    nothing: Problem,
    { documents, stamp }: StepRequest,
  ): Promise<Result<StepDone, Problem | StorageFailure>> =>
    guarded('write', async (tables) => {
      const entries = await tables.entriesOf(documents);
      const target = next(entries, stamp.authorId);
      if (target === null) return fail(nothing);
      const name = { kind: target.kind, id: target.documentId };
      const read = await openStored(tables, target.kind, target.documentId);
      if (!read.ok) return fail(nothing);
      const plan = writable(target.kind, withdrawn(read.value, entries, target));
      if (plan.patches.length > 0) await tables.putDocument(name, plan.document);
      await tables.appendEntry({
        id: stamp.entryId,
        documentId: target.documentId,
        kind: target.kind,
        authorId: stamp.authorId,
        atMs: stamp.atMs,
        label: target.label,
        patches: plan.patches,
        inversePatches: plan.inversePatches,
        undoes: target.id,
      });
      return ok({ label: target.label, leftAlone: plan.leftAlone });
    });

  return {
    edit: ({ kind, id, edit, label, stamp }) =>
      guarded('write', async (tables) => {
        const read = await openStored(tables, kind, id);
        if (!read.ok) return read;
        const { document, patches, inversePatches } = applyEdit(read.value, edit);
        if (patches.length === 0) return read;
        const checked = checkedDocument(kind, document);
        if (!checked.ok) return fail({ kind: 'refused', faults: checked.problem });
        await tables.putDocument({ kind, id }, checked.value);
        await tables.appendEntry({
          id: stamp.entryId,
          documentId: id,
          kind,
          authorId: stamp.authorId,
          atMs: stamp.atMs,
          label,
          patches,
          inversePatches,
          undoes: null,
        });
        return checked;
      }),

    undo: (request) => step(latestUndoable, { kind: 'nothing-to-undo' as const }, request),
    redo: (request) => step(latestRedoable, { kind: 'nothing-to-redo' as const }, request),
  };
}

const withdrawn = (
  document: Shoot | Kit,
  entries: readonly HistoryEntry[],
  target: HistoryEntry,
): Withdrawal<Shoot | Kit> =>
  withdraw(
    document,
    entries.filter(
      ({ kind, documentId }) => kind === target.kind && documentId === target.documentId,
    ),
    target,
  );

/** A withdrawal that would leave a document this version refuses is left undone whole, and says so. */
function writable(kind: DocumentKind, plan: Withdrawal<Shoot | Kit>): Withdrawal<Shoot | Kit> {
  const checked = checkedDocument(kind, plan.document);
  if (checked.ok) return plan;
  const refused = checked.problem.map((fault) => `${describeFault(fault)}, left as it is`);
  return { ...plan, patches: [], inversePatches: [], leftAlone: [...plan.leftAlone, ...refused] };
}
