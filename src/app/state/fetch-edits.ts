/** Fetches what writes edits, before the first of them is made. */
export const fetchEdits = (): Promise<unknown> => import('../../storage/stored-edits.ts');
