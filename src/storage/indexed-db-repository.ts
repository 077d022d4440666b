import { Dexie, liveQuery } from 'dexie';

import type { DocumentKind, HistoryEntry } from '../core/plan/history-entry.ts';
import type { BlobTables, StoredBlob, StoredFile } from './blob-tables.ts';
import type { DocumentStore, DocumentTables } from './document-tables.ts';
import type { SettingValue, ShootRepository } from './shoot-repository.ts';
import { storageSentence } from './storage-sentence.ts';
import { storedRepository } from './stored-repository.ts';

/** Keeps everything in the browser's own database of that name; every tab that opens it sees the same. */
export const indexedDbRepository = (databaseName: string): ShootRepository =>
  storedRepository(indexedDbStore(databaseName));

type StoredDocument = {
  readonly kind: DocumentKind;
  readonly id: string;
  readonly document: object;
};

type Setting = { readonly name: string; readonly value: SettingValue };

type LoggedEntry = HistoryEntry & { readonly seq?: number };

function indexedDbStore(databaseName: string): DocumentStore {
  const database = new Dexie(databaseName);
  database.version(1).stores({
    documents: '[kind+id], kind',
    log: '++seq, &id, [kind+documentId]',
    settings: 'name',
  });
  database.version(2).stores({ blobs: 'hash', files: 'name' });
  const tables = tablesOf(database);
  const blobs = blobTablesOf(database);
  return {
    transact: (mode, work) => transaction(database, mode, DOCUMENTS, async () => work(tables)),
    transactBlobs: (mode, work) => transaction(database, mode, BLOBS, async () => work(blobs)),
    watch: (query, onValue, onError) => {
      // An error is told as a value: a live query keeps some of them to itself.
      const subscription = liveQuery(() =>
        query(tables).then(
          (value) => () => onValue(value),
          (error: unknown) => () => onError(error),
        ),
      ).subscribe((tell) => tell());
      return () => subscription.unsubscribe();
    },
    failureSentence: storageSentence,
  };
}

const DOCUMENTS = ['documents', 'log', 'settings'];
const BLOBS = ['blobs', 'files'];

/** Only work written async lets the database follow its awaits. */
const transaction = <Value>(
  database: Dexie,
  mode: 'read' | 'write',
  tables: readonly string[],
  work: () => Promise<Value>,
): Promise<Value> =>
  Promise.resolve(database.transaction(mode === 'write' ? 'rw' : 'r', [...tables], work));

function blobTablesOf(database: Dexie): BlobTables {
  const blobs = database.table<StoredBlob, string>('blobs');
  const files = database.table<StoredFile, string>('files');
  return {
    blob: (hash) => blobs.get(hash),
    blobHashes: () => blobs.toCollection().primaryKeys(),
    putBlob: async (blob) => {
      await blobs.put(blob);
    },
    deleteBlob: (hash) => blobs.delete(hash),
    file: async (name) => (await files.get(name))?.file,
    files: () => files.toArray(),
    putFile: async (file) => {
      await files.put(file);
    },
    deleteFile: (name) => files.delete(name),
  };
}

function tablesOf(database: Dexie): DocumentTables {
  const documents = database.table<StoredDocument, [DocumentKind, string]>('documents');
  const log = database.table<LoggedEntry, number>('log');
  const settings = database.table<Setting, string>('settings');
  return {
    document: async ({ kind, id }) => (await documents.get([kind, id]))?.document,
    documentsOf: async (kind) =>
      (await documents.where({ kind }).toArray()).map(({ document }) => document),
    putDocument: async ({ kind, id }, document) => {
      await documents.put({ kind, id, document });
    },
    deleteDocument: ({ kind, id }) => documents.delete([kind, id]),
    entriesOf: async (names) => {
      const rows: LoggedEntry[] = [];
      for (const { kind, id } of names)
        rows.push(...(await log.where('[kind+documentId]').equals([kind, id]).toArray()));
      return rows.toSorted((first, second) => (first.seq ?? 0) - (second.seq ?? 0));
    },
    eachEntry: async (visit) => {
      await log.each(visit);
    },
    appendEntry: async (entry) => {
      await log.add(entry);
    },
    deleteEntries: async ({ kind, id }) => {
      await log.where('[kind+documentId]').equals([kind, id]).delete();
    },
    setting: async (name) => (await settings.get(name))?.value,
    putSetting: async (name, value) => {
      await settings.put({ name, value });
    },
  };
}
