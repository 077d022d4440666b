import { valueAt } from './same-value.ts';

/**
 * A place of a document as a photographer would say it: the names on the way there, then the field
 * without its unit: 'Pier head, bearing'. `earlier` are values the place or its owners held before,
 * for names of things that are gone; the first that knows a name is asked.
 */
export function fieldWords(
  documents: readonly unknown[],
  path: readonly (string | number)[],
): string {
  const words: string[] = [];
  let wordless = '';
  path.forEach((key, place) => {
    const named = nameAt(documents, path.slice(0, place + 1));
    if (named !== null) words.push(named);
    wordless = named === null ? spaced(String(key)) : '';
  });
  return [...words, ...(wordless === '' ? [] : [wordless])].join(', ');
}

function nameAt(documents: readonly unknown[], path: readonly (string | number)[]): string | null {
  for (const document of documents)
    for (const key of ['name', 'role']) {
      const text = valueAt(document, [...path, key]);
      if (typeof text === 'string' && text !== '') return text;
    }
  return null;
}

const UNIT = /(Deg|Mm|M|Min|Stops|S|Ws)$/;

const spaced = (field: string): string =>
  field
    .replace(/(?<=.)Id$/, '')
    .replace(UNIT, '')
    .replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
