import { fail, ok, type Result } from '../core/units/result.ts';
import type { BlobTables } from './blob-tables.ts';
import { contentHash } from './content-hash.ts';
import type { DocumentStore } from './document-tables.ts';
import type { BlobRepository, StorageFailure } from './shoot-repository.ts';
import { usedBlobs } from './used-blobs.ts';

/** A blob that nothing names is kept a day longer: it may be about to be named. */
const GRACE_MS = 86_400_000;

/** Blobs and device files over any store. */
export function storedBlobs(
  store: DocumentStore,
  storageFailure: (error: unknown) => Result<never, StorageFailure>,
): BlobRepository {
  const guarded = <Value>(
    mode: 'read' | 'write',
    work: (tables: BlobTables) => Promise<Value>,
  ): Promise<Result<Value, StorageFailure>> =>
    store.transactBlobs(mode, work).then(ok, storageFailure);

  return {
    keepBlob: async (bytes, type) => {
      const own = bytes.slice();
      const hash = await contentHash(own);
      if (hash === null) return fail({ kind: 'storage', sentence: NO_SAFE_ORIGIN });
      return guarded('write', async (tables) => {
        const before = await tables.blob(hash);
        if (before === undefined || before.unusedSinceMs !== null)
          await tables.putBlob({ hash, type, bytes: own, unusedSinceMs: null });
        return hash;
      });
    },

    blob: (hash) =>
      guarded('read', async (tables) => {
        const found = await tables.blob(hash);
        return found === undefined ? null : { bytes: found.bytes, type: found.type };
      }),

    sweepBlobs: async (nowMs) => {
      const used = await store.transact('read', usedBlobs).then(ok, storageFailure);
      if (!used.ok) return used;
      return guarded('write', (tables) => sweep(tables, used.value, nowMs));
    },

    keepFile: (name, blob) =>
      guarded('write', async (tables) => {
        await tables.putFile({ name, file: blob });
        return null;
      }),
    file: (name) => guarded('read', async (tables) => (await tables.file(name)) ?? null),
    listFiles: () =>
      guarded('read', async (tables) =>
        (await tables.files())
          .map(({ name, file }) => ({ name, sizeBytes: file.size, type: file.type }))
          .toSorted((first, second) => (first.name < second.name ? -1 : 1)),
      ),
    removeFile: (name) =>
      guarded('write', async (tables) => {
        await tables.deleteFile(name);
        return null;
      }),
  };
}

const NO_SAFE_ORIGIN =
  'Photos can be kept only where the page was opened over https or from this computer: the browser gives no way to name them otherwise. Nothing was changed.';

async function sweep(
  tables: BlobTables,
  used: ReadonlySet<string>,
  nowMs: number,
): Promise<number> {
  let removed = 0;
  for (const hash of await tables.blobHashes()) {
    if (used.has(hash)) continue;
    const blob = await tables.blob(hash);
    if (blob === undefined) continue;
    if (blob.unusedSinceMs === null) await tables.putBlob({ ...blob, unusedSinceMs: nowMs });
    else if (nowMs - blob.unusedSinceMs > GRACE_MS) {
      await tables.deleteBlob(hash);
      removed += 1;
    }
  }
  return removed;
}
