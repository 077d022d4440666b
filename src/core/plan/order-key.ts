/**
 * A key that sorts between two others, so that an entry can be moved without touching its
 * neighbours. Keys are strings over a–z, compared by code unit; '' stands for no neighbour.
 */
export function orderKeyBetween(before: string, after: string): string {
  let key = '';
  for (let place = 0; ; place += 1) {
    const low = place < before.length ? before.charCodeAt(place) - A : 0;
    const high = after !== '' && place < after.length ? after.charCodeAt(place) - A : LETTERS;
    if (high - low > 1) return key + String.fromCharCode(A + Math.floor((low + high) / 2));
    key += String.fromCharCode(A + low);
    if (high > low) return `${key}${orderKeyBetween(before.slice(place + 1), '')}`;
  }
}

const A = 'a'.charCodeAt(0);
const LETTERS = 26;

/** Entries of a map in their order; ties by id, so that every device shows the same. */
export const inOrder = <Entry extends { readonly order: string }>(
  entries: Readonly<Record<string, Entry>>,
): readonly (readonly [id: string, entry: Entry])[] =>
  Object.entries(entries).toSorted(([firstId, first], [secondId, second]) =>
    first.order === second.order ? compare(firstId, secondId) : compare(first.order, second.order),
  );

const compare = (first: string, second: string): number =>
  first < second ? -1 : first > second ? 1 : 0;

/** The key of a new last entry: one letter longer every 25 entries. */
export const orderKeyAtEnd = (
  entries: Readonly<Record<string, { readonly order: string }>>,
): string => keyAfter(inOrder(entries).at(-1)?.[1].order ?? '');

const keyAfter = (last: string): string => {
  if (last === '') return orderKeyBetween('', '');
  const letter = last.charCodeAt(last.length - 1) - A;
  return letter < LETTERS - 1
    ? last.slice(0, -1) + String.fromCharCode(A + letter + 1)
    : `${last}b`;
};

/** A map whose entries get their order as they are written. */
export function inWrittenOrder<Entry extends object>(
  entries: Readonly<Record<string, Entry>>,
): Record<string, Entry & { order: string }> {
  let order = '';
  return Object.fromEntries(
    Object.entries(entries).map(([id, entry]) => {
      order = orderKeyBetween(order, '');
      return [id, { ...entry, order }];
    }),
  );
}
