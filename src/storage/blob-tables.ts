/** A small file that documents name by its content hash, such as a photo. */
export type StoredBlob = {
  readonly hash: string;
  readonly type: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** When a sweep first found that nothing names it, epoch milliseconds. */
  readonly unusedSinceMs: number | null;
};

/** A file of this device, such as a map extract; its bytes stay on disk until they are read. */
export type StoredFile = { readonly name: string; readonly file: Blob };

/** What a transaction over blobs and files may do. */
export type BlobTables = {
  readonly blob: (hash: string) => Promise<StoredBlob | undefined>;
  readonly blobHashes: () => Promise<readonly string[]>;
  readonly putBlob: (blob: StoredBlob) => Promise<void>;
  readonly deleteBlob: (hash: string) => Promise<void>;
  readonly file: (name: string) => Promise<Blob | undefined>;
  readonly files: () => Promise<readonly StoredFile[]>;
  readonly putFile: (file: StoredFile) => Promise<void>;
  readonly deleteFile: (name: string) => Promise<void>;
};
