import type { DocumentKind } from '../core/plan/history-entry.ts';
import { fail, type Result } from '../core/units/result.ts';
import type { DocumentTables } from './document-tables.ts';
import type { DocumentOf, Missing, Refused } from './shoot-repository.ts';
import { openedDocument } from './stored-document.ts';

/** A document as this version reads it. */
export async function openStored<Kind extends DocumentKind>(
  tables: DocumentTables,
  kind: Kind,
  id: string,
): Promise<Result<DocumentOf<Kind>, Missing | Refused>> {
  const stored = await tables.document({ kind, id });
  if (stored === undefined) return fail({ kind: 'missing' });
  const opened = openedDocument(kind, stored);
  return opened.ok ? opened : fail({ kind: 'refused', faults: opened.problem });
}
