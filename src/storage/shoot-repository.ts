import type { DocumentFault } from '../core/plan/check-document.ts';
import type { Edit } from '../core/plan/edits.ts';
import type { DocumentKind } from '../core/plan/history-entry.ts';
import type { Kit } from '../core/plan/kit.ts';
import type { Shoot } from '../core/plan/shoot.ts';
import type { Result } from '../core/units/result.ts';

export type DocumentOf<Kind extends DocumentKind> = { shoot: Shoot; kit: Kit }[Kind];

export type DocumentName = { readonly kind: DocumentKind; readonly id: string };

/** Who changes, when, and under which id the log keeps it. */
export type Stamp = {
  readonly entryId: string;
  readonly authorId: string;
  /** Epoch milliseconds. */
  readonly atMs: number;
};

/** The device did not keep or give what was asked of it; the sentence is for the user. */
export type StorageFailure = { readonly kind: 'storage'; readonly sentence: string };
export type Missing = { readonly kind: 'missing' };
/** A document that is not what it should be, with every fault. */
export type Refused = { readonly kind: 'refused'; readonly faults: readonly DocumentFault[] };
export type AlreadyThere = { readonly kind: 'already-there' };
export type NothingTo<Step extends 'undo' | 'redo'> = { readonly kind: `nothing-to-${Step}` };

export type ReadProblem = Missing | Refused | StorageFailure;

export type ShootSummary = { readonly id: string; readonly title: string; readonly date: string };

export type EditRequest<Kind extends DocumentKind> = {
  readonly kind: Kind;
  readonly id: string;
  readonly edit: Edit<DocumentOf<Kind>>;
  /** What the edit does, as a user would say it: 'turn Pier head'. */
  readonly label: string;
  readonly stamp: Stamp;
};

export type StepRequest = { readonly documents: readonly DocumentName[]; readonly stamp: Stamp };

/** What was undone or redone, and in words which parts of it were left as others made them. */
export type StepDone = { readonly label: string; readonly leftAlone: readonly string[] };

export type Author = { readonly documents: readonly DocumentName[]; readonly authorId: string };

export type SettingValue = string | number | boolean | null;

export type BlobContent = { readonly bytes: Uint8Array<ArrayBuffer>; readonly type: string };

export type DeviceFile = {
  readonly name: string;
  readonly sizeBytes: number;
  readonly type: string;
};

/** Where what is too large for a document is kept. */
export type BlobRepository = {
  /** The answer is its content hash, SHA-256 in 64 hexadecimal digits, by which documents name it. */
  readonly keepBlob: (
    bytes: Uint8Array<ArrayBuffer>,
    type: string,
  ) => Promise<Result<string, StorageFailure>>;
  /** null where it is not on this device. */
  readonly blob: (hash: string) => Promise<Result<BlobContent | null, StorageFailure>>;
  /** Takes away the blobs that no shoot and no undo has named for a day; the answer is how many. */
  readonly sweepBlobs: (nowMs: number) => Promise<Result<number, StorageFailure>>;
  /** Keeps a file of this device under a name, in place of one of that name. */
  readonly keepFile: (name: string, blob: Blob) => Promise<Result<null, StorageFailure>>;
  /** null where there is none; its bytes are read when they are asked for. */
  readonly file: (name: string) => Promise<Result<Blob | null, StorageFailure>>;
  /** By name. */
  readonly listFiles: () => Promise<Result<readonly DeviceFile[], StorageFailure>>;
  readonly removeFile: (name: string) => Promise<Result<null, StorageFailure>>;
};

/** Where shoots and kits are kept. Nothing throws into the page: what the device refuses is an answer. */
export type ShootRepository = BlobRepository & {
  /** By date, then title. */
  readonly listShoots: () => Promise<Result<readonly ShootSummary[], StorageFailure>>;
  readonly read: <Kind extends DocumentKind>(
    kind: Kind,
    id: string,
  ) => Promise<Result<DocumentOf<Kind>, ReadProblem>>;
  readonly create: <Kind extends DocumentKind>(
    kind: Kind,
    document: DocumentOf<Kind>,
  ) => Promise<Result<DocumentOf<Kind>, AlreadyThere | Refused | StorageFailure>>;
  /** Takes the document and its log away; the answer is the document, for putting it back, or null where it could not be read. */
  readonly remove: <Kind extends DocumentKind>(
    kind: Kind,
    id: string,
  ) => Promise<Result<DocumentOf<Kind> | null, Missing | StorageFailure>>;
  /** Writes the edited document and its log entry together, or neither; an edit that changes nothing leaves no entry. */
  readonly edit: <Kind extends DocumentKind>(
    request: EditRequest<Kind>,
  ) => Promise<Result<DocumentOf<Kind>, ReadProblem>>;
  /** The latest of the author's own edits in any of the documents. */
  readonly undo: (
    request: StepRequest,
  ) => Promise<Result<StepDone, NothingTo<'undo'> | StorageFailure>>;
  readonly redo: (
    request: StepRequest,
  ) => Promise<Result<StepDone, NothingTo<'redo'> | StorageFailure>>;
  /** The label of what an undo would take, or null. */
  readonly canUndo: (author: Author) => Promise<Result<string | null, StorageFailure>>;
  readonly canRedo: (author: Author) => Promise<Result<string | null, StorageFailure>>;
  /** Tells the document now and after every change, whichever tab made it; the answer stops it. */
  readonly observe: <Kind extends DocumentKind>(
    kind: Kind,
    id: string,
    listener: (answer: Result<DocumentOf<Kind>, ReadProblem>) => void,
  ) => () => void;
  /** null where it was never saved. */
  readonly setting: (name: string) => Promise<Result<SettingValue, StorageFailure>>;
  readonly saveSetting: (
    name: string,
    value: SettingValue,
  ) => Promise<Result<null, StorageFailure>>;
};
