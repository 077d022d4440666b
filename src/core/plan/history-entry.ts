import type { Patch } from 'immer';

export type DocumentKind = 'shoot' | 'kit';

/**
 * One line of the log, which only grows. Where `undoes` names an entry, this one withdrew it: an
 * undo names an edit or a redo, a redo names an undo.
 */
export type HistoryEntry = {
  readonly id: string;
  readonly documentId: string;
  readonly kind: DocumentKind;
  readonly authorId: string;
  /** Epoch milliseconds. */
  readonly atMs: number;
  readonly label: string;
  readonly patches: readonly Patch[];
  readonly inversePatches: readonly Patch[];
  readonly undoes: string | null;
};
