import { inOrder, orderKeyBetween } from './order-key.ts';

/** Without 'a', in which no key may end. */
const LETTERS = 'bcdefghijklmnopqrstuvwxyz';

/** Keys of many new last entries, in order: short, where one after the other would grow by the hundred. */
export function orderKeysAtEnd(
  entries: Readonly<Record<string, { readonly order: string }>>,
  count: number,
): readonly string[] {
  const first = orderKeyBetween(inOrder(entries).at(-1)?.[1].order ?? '', '');
  let width = 1;
  while (LETTERS.length ** width < count) width += 1;
  return Array.from({ length: count }, (_, index) => {
    let suffix = '';
    for (let rest = index, place = 0; place < width; place += 1) {
      suffix = LETTERS.charAt(rest % LETTERS.length) + suffix;
      rest = Math.floor(rest / LETTERS.length);
    }
    return first + suffix;
  });
}
