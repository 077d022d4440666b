import { describeFault } from '../core/plan/check-document.ts';
import type { DocumentKind, HistoryEntry } from '../core/plan/history-entry.ts';
import { applyEdit, withdraw, type Withdrawal } from '../core/plan/history.ts';
import { sameValue, valueAt } from '../core/plan/same-value.ts';
import type { Kit } from '../core/plan/kit.ts';
import type { Shoot } from '../core/plan/shoot.ts';
import { latestRedoable, latestUndoable } from '../core/plan/undo-order.ts';
import { fail, ok, type Result } from '../core/units/result.ts';
import type { DocumentStore, DocumentTables } from './document-tables.ts';
import type {
  AlreadyThere,
  Author,
  DocumentOf,
  Missing,
  Refused,
  ShootRepository,
  StepDone,
  StepRequest,
  StorageFailure,
} from './shoot-repository.ts';
import { storedBlobs } from './stored-blobs.ts';
import { checkedDocument, openedDocument } from './stored-document.ts';

/** The repository over any store. */
export function storedRepository(store: DocumentStore): ShootRepository {
  const storageFailure = (error: unknown): Result<never, StorageFailure> => {
    const sentence = store.failureSentence(error);
    if (sentence === null) throw error;
    return fail({ kind: 'storage', sentence });
  };

  const guarded = <Value, Problem>(
    mode: 'read' | 'write',
    work: (tables: DocumentTables) => Promise<Result<Value, Problem>>,
  ): Promise<Result<Value, Problem | StorageFailure>> =>
    store.transact(mode, work).catch(storageFailure);

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
      const read = await open(tables, target.kind, target.documentId);
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

  const labelOf = (
    next: typeof latestUndoable,
    { documents, authorId }: Author,
  ): Promise<Result<string | null, StorageFailure>> =>
    guarded('read', async (tables) =>
      ok(next(await tables.entriesOf(documents), authorId)?.label ?? null),
    );

  return {
    ...storedBlobs(store, storageFailure),

    listShoots: () =>
      guarded('read', async (tables) =>
        ok(
          (await tables.documentsOf('shoot'))
            .map((document) => ({
              id: textAt(document, 'id'),
              title: textAt(document, 'title'),
              date: textAt(document, 'date'),
            }))
            .toSorted((first, second) =>
              `${first.date} ${first.title}` < `${second.date} ${second.title}` ? -1 : 1,
            ),
        ),
      ),

    read: (kind, id) => guarded('read', (tables) => open(tables, kind, id)),

    create: (kind, document) =>
      guarded<DocumentOf<typeof kind>, AlreadyThere | Refused>('write', async (tables) => {
        const checked = checkedDocument(kind, document);
        if (!checked.ok) return fail({ kind: 'refused', faults: checked.problem });
        const name = { kind, id: document.id };
        if ((await tables.document(name)) !== undefined) return fail({ kind: 'already-there' });
        await tables.putDocument(name, checked.value);
        return checked;
      }),

    remove: (kind, id) =>
      guarded('write', async (tables) => {
        const read = await open(tables, kind, id);
        if (!read.ok && read.problem.kind === 'missing') return fail(read.problem);
        await tables.deleteDocument({ kind, id });
        await tables.deleteEntries({ kind, id });
        return ok(read.ok ? read.value : null);
      }),

    edit: ({ kind, id, edit, label, stamp }) =>
      guarded('write', async (tables) => {
        const read = await open(tables, kind, id);
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
    canUndo: (author) => labelOf(latestUndoable, author),
    canRedo: (author) => labelOf(latestRedoable, author),

    observe: (kind, id, listener) => {
      let told: unknown;
      const tell = (answer: Parameters<typeof listener>[0]): void => {
        if (sameValue(told, answer)) return;
        told = answer;
        listener(answer);
      };
      return store.watch(
        (tables) => open(tables, kind, id),
        tell,
        (error) => tell(storageFailure(error)),
      );
    },

    setting: (name) => guarded('read', async (tables) => ok((await tables.setting(name)) ?? null)),
    saveSetting: (name, value) =>
      guarded('write', async (tables) => {
        await tables.putSetting(name, value);
        return ok(null);
      }),
  };
}

const textAt = (document: object, field: string): string => String(valueAt(document, [field]));

async function open<Kind extends DocumentKind>(
  tables: DocumentTables,
  kind: Kind,
  id: string,
): Promise<Result<DocumentOf<Kind>, Missing | Refused>> {
  const stored = await tables.document({ kind, id });
  if (stored === undefined) return fail({ kind: 'missing' });
  const opened = openedDocument(kind, stored);
  return opened.ok ? opened : fail({ kind: 'refused', faults: opened.problem });
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
