import { Dexie, liveQuery, type EntityTable, type Table } from 'dexie';

import type { DocumentKind, HistoryEntry } from '../core/plan/history-entry.ts';
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

type Database = Dexie & {
  readonly documents: Table<StoredDocument, [DocumentKind, string]>;
  readonly log: EntityTable<HistoryEntry & { readonly seq: number }, 'seq'>;
  readonly settings: EntityTable<{ readonly name: string; readonly value: SettingValue }, 'name'>;
};

function indexedDbStore(databaseName: string): DocumentStore {
  const database = new Dexie(databaseName) as Database;
  database.version(1).stores({
    documents: '[kind+id], kind',
    log: '++seq, &id, [kind+documentId]',
    settings: 'name',
  });
  const tables = tablesOf(database);
  return {
    transact: (mode, work) =>
      Promise.resolve(
        database.transaction(
          mode === 'write' ? 'rw' : 'r',
          [database.documents, database.log, database.settings],
          // Only a function written async lets the database follow its awaits.
          async () => work(tables),
        ),
      ),
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

const tablesOf = ({ documents, log, settings }: Database): DocumentTables => ({
  document: async ({ kind, id }) => (await documents.get([kind, id]))?.document,
  documentsOf: async (kind) =>
    (await documents.where({ kind }).toArray()).map(({ document }) => document),
  putDocument: async ({ kind, id }, document) => {
    await documents.put({ kind, id, document });
  },
  deleteDocument: ({ kind, id }) => documents.delete([kind, id]),
  entriesOf: async (names) => {
    const rows = [];
    for (const { kind, id } of names)
      rows.push(...(await log.where('[kind+documentId]').equals([kind, id]).toArray()));
    return rows
      .toSorted((first, second) => first.seq - second.seq)
      .map(({ seq: _, ...entry }) => entry);
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
});
