import type { HistoryEntry } from '../core/plan/history-entry.ts';
import type { BlobTables, StoredBlob } from './blob-tables.ts';
import type { DocumentStore, DocumentTables } from './document-tables.ts';
import type { DocumentName, SettingValue, ShootRepository } from './shoot-repository.ts';
import { storedRepository } from './stored-repository.ts';

/** Keeps everything as long as the page lives: for tests, and for a browser that keeps nothing. */
export const memoryRepository = (): ShootRepository => storedRepository(memoryStore());

type State = {
  readonly documents: Map<string, { readonly name: DocumentName; readonly document: object }>;
  readonly log: HistoryEntry[];
  readonly settings: Map<string, SettingValue>;
};

function memoryStore(): DocumentStore {
  let state: State = { documents: new Map(), log: [], settings: new Map() };
  let last: Promise<unknown> = Promise.resolve();
  const watchers = new Set<() => void>();
  const blobs = blobTables(new Map(), new Map());

  const transact: DocumentStore['transact'] = (mode, work) => {
    const turn = last.then(async () => {
      const copy: State = {
        documents: new Map(state.documents),
        log: [...state.log],
        settings: new Map(state.settings),
      };
      const value = await work(tablesOf(copy));
      if (mode === 'write') {
        state = copy;
        for (const ask of watchers) ask();
      }
      return value;
    });
    last = turn.catch(() => undefined);
    return turn;
  };

  return {
    transact,
    transactBlobs: (_, work) => work(blobs),
    watch: (query, onValue, onError) => {
      const ask = (): void => {
        transact('read', query).then(
          (value) => watchers.has(ask) && onValue(value),
          (error: unknown) => watchers.has(ask) && onError(error),
        );
      };
      watchers.add(ask);
      ask();
      return () => void watchers.delete(ask);
    },
    failureSentence: () => null,
  };
}

const keyOf = ({ kind, id }: DocumentName): string => `${kind} ${id}`;

const isOf =
  ({ kind, id }: DocumentName) =>
  (entry: HistoryEntry): boolean =>
    entry.kind === kind && entry.documentId === id;

/** What goes in and out are copies, as with a database. */
const tablesOf = ({ documents, log, settings }: State): DocumentTables => ({
  document: async (name) => structuredClone(documents.get(keyOf(name))?.document),
  documentsOf: async (kind) =>
    [...documents.values()]
      .filter(({ name }) => name.kind === kind)
      .map(({ document }) => structuredClone(document)),
  putDocument: async (name, document) =>
    void documents.set(keyOf(name), { name, document: structuredClone(document) }),
  deleteDocument: async (name) => void documents.delete(keyOf(name)),
  entriesOf: async (names) =>
    structuredClone(log.filter((entry) => names.some((name) => isOf(name)(entry)))),
  eachEntry: async (visit) => structuredClone(log).forEach(visit),
  appendEntry: async (entry) => {
    if (log.some(({ id }) => id === entry.id))
      throw new Error(`entry ${entry.id} is there already`);
    log.push(structuredClone(entry));
  },
  deleteEntries: async (name) =>
    void log.splice(0, log.length, ...log.filter((entry) => !isOf(name)(entry))),
  setting: async (name) => settings.get(name),
  putSetting: async (name, value) => void settings.set(name, value),
});

const blobTables = (blobs: Map<string, StoredBlob>, files: Map<string, Blob>): BlobTables => ({
  blob: async (hash) => structuredClone(blobs.get(hash)),
  blobHashes: async () => [...blobs.keys()],
  putBlob: async (blob) => void blobs.set(blob.hash, structuredClone(blob)),
  deleteBlob: async (hash) => void blobs.delete(hash),
  file: async (name) => files.get(name),
  files: async () => [...files].map(([name, file]) => ({ name, file })),
  putFile: async ({ name, file }) => void files.set(name, file),
  deleteFile: async (name) => void files.delete(name),
});
