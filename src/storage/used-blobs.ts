import type { DocumentTables } from './document-tables.ts';

/** Hashes that any shoot names, or could name again by undo or redo. */
export async function usedBlobs(tables: DocumentTables): Promise<ReadonlySet<string>> {
  const used = new Set<string>();
  for (const shoot of await tables.documentsOf('shoot')) addHashes(used, shoot);
  await tables.eachEntry(({ patches, inversePatches }) => {
    for (const { path, value } of [...patches, ...inversePatches])
      addHashes(used, { [path.at(-1) ?? 'document']: value as unknown });
  });
  return used;
}

function addHashes(used: Set<string>, value: unknown): void {
  if (typeof value !== 'object' || value === null) return;
  for (const [key, child] of Object.entries(value))
    if (key === 'contentHash' && typeof child === 'string') used.add(child);
    else addHashes(used, child);
}
