import { sameValue, valueAt } from '../core/plan/same-value.ts';
import { latestRedoable, latestUndoable } from '../core/plan/undo-order.ts';
import { fail, ok, type Result } from '../core/units/result.ts';
import type { DocumentStore } from './document-tables.ts';
import type {
  AlreadyThere,
  Author,
  DocumentOf,
  Refused,
  ShootRepository,
  StorageFailure,
} from './shoot-repository.ts';
import { openStored } from './open-stored.ts';
import { storedBlobs } from './stored-blobs.ts';
import { checkedDocument } from './stored-document.ts';
import type { Guarded, StoredEdits } from './stored-edits.ts';

/** The repository over any store. */
export function storedRepository(store: DocumentStore): ShootRepository {
  const storageFailure = (error: unknown): Result<never, StorageFailure> => {
    const sentence = store.failureSentence(error);
    if (sentence === null) throw error;
    return fail({ kind: 'storage', sentence });
  };

  const guarded: Guarded = (mode, work) => store.transact(mode, work).catch(storageFailure);

  /** What writes edits is fetched before the first of them; the transaction itself waits for nothing. */
  const writing = async <Value, Problem>(
    write: (edits: StoredEdits) => Promise<Result<Value, Problem | StorageFailure>>,
  ): Promise<Result<Value, Problem | StorageFailure>> => {
    const loaded = await loadEdits(guarded).catch(() => null);
    return loaded === null ? fail(NOT_FETCHED) : write(loaded);
  };

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

    read: (kind, id) => guarded('read', (tables) => openStored(tables, kind, id)),

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
        const read = await openStored(tables, kind, id);
        if (!read.ok && read.problem.kind === 'missing') return fail(read.problem);
        await tables.deleteDocument({ kind, id });
        await tables.deleteEntries({ kind, id });
        return ok(read.ok ? read.value : null);
      }),

    edit: (request) => writing(({ edit }) => edit(request)),
    undo: (request) => writing(({ undo }) => undo(request)),
    redo: (request) => writing(({ redo }) => redo(request)),
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
        (tables) => openStored(tables, kind, id),
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

const NOT_FETCHED: StorageFailure = {
  kind: 'storage',
  sentence:
    'The part of the app that writes changes could not be fetched. Nothing was changed; try again with a network.',
};

const loadEdits = async (guarded: Guarded): Promise<StoredEdits> =>
  (await import('./stored-edits.ts')).storedEdits(guarded);
