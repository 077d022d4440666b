import type { DocumentKind, HistoryEntry } from '../core/plan/history-entry.ts';
import type { BlobTables } from './blob-tables.ts';
import type { DocumentName, SettingValue } from './shoot-repository.ts';

/** What a transaction may do. */
export type DocumentTables = {
  readonly document: (name: DocumentName) => Promise<object | undefined>;
  readonly documentsOf: (kind: DocumentKind) => Promise<readonly object[]>;
  readonly putDocument: (name: DocumentName, document: object) => Promise<void>;
  readonly deleteDocument: (name: DocumentName) => Promise<void>;
  /** Of all the documents together, in the order in which they were appended. */
  readonly entriesOf: (names: readonly DocumentName[]) => Promise<readonly HistoryEntry[]>;
  /** Of every document there is, one after the other. */
  readonly eachEntry: (visit: (entry: HistoryEntry) => void) => Promise<void>;
  readonly appendEntry: (entry: HistoryEntry) => Promise<void>;
  readonly deleteEntries: (name: DocumentName) => Promise<void>;
  readonly setting: (name: string) => Promise<SettingValue | undefined>;
  readonly putSetting: (name: string, value: SettingValue) => Promise<void>;
};

/** A place that keeps documents and their log; both implementations of the repository stand on one. */
export type DocumentStore = {
  /** All that `work` writes, or nothing: it rejects with `work`'s error or the device's. */
  readonly transact: <Value>(
    mode: 'read' | 'write',
    work: (tables: DocumentTables) => Promise<Value>,
  ) => Promise<Value>;
  /** The same for blobs and files, apart from the documents: a large file holds up no edit. */
  readonly transactBlobs: <Value>(
    mode: 'read' | 'write',
    work: (tables: BlobTables) => Promise<Value>,
  ) => Promise<Value>;
  /** Asks again after every change that may matter. */
  readonly watch: <Value>(
    query: (tables: DocumentTables) => Promise<Value>,
    onValue: (value: Value) => void,
    onError: (error: unknown) => void,
  ) => () => void;
  /** The sentence for an error of the device; null for an error of ours. */
  readonly failureSentence: (error: unknown) => string | null;
};
