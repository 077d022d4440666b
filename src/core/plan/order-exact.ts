import { isBetterEnd, leaveMinOf, type OrderPath, type OrdersFound } from './order-path.ts';
import type { OrderTable } from './order-table.ts';
import { bestSums, hasMember, members, type BestSums } from './order-sets.ts';

/** Always ordered exactly. */
const EXACT_SETUPS = 12;
/** More than twelve are ordered exactly where the table takes no more than 64 MB. */
const MOST_CELLS = 2 ** 23;

export const isExact = ({ count, slots }: OrderTable): boolean =>
  count <= EXACT_SETUPS || (count < 20 && count * 2 ** (count - 1) * slots <= MOST_CELLS);

/** The best of all orders, and the best of all that hold each setup left out. */
export function* exactOrders(table: OrderTable): Generator<number, OrdersFound> {
  const sums = yield* bestSums(table, 0.95);
  const path = bestPath(table, sums, null);
  const placed = new Set(path.map(({ setup }) => setup));
  const withEach: (OrderPath | null)[] = [];
  for (let setup = 0; setup < table.count; setup += 1) {
    withEach.push(placed.has(setup) ? null : bestPath(table, sums, setup));
    yield 0.95 + (0.05 * (setup + 1)) / table.count;
  }
  return { path, withEach };
}

type End = { readonly set: number; readonly last: number; readonly slot: number };

/** Of all sets, or of those with a member, the order that brings most, over earliest. */
function bestPath(table: OrderTable, sums: BestSums, member: number | null): OrderPath {
  const { slots, tieWidth } = table;
  const counts = (set: number): boolean => member === null || hasMember(set, member);
  let most = member === null ? 0 : -Infinity;
  for (let set = 1; set < sums.sets; set += 1)
    if (counts(set)) most = Math.max(most, sums.ofSet[set] ?? -Infinity);
  let chosen: End | null = null;
  let chosenEnd = { endMin: most > tieWidth || member !== null ? Infinity : 0, placed: 0 };
  for (let set = 1; set < sums.sets; set += 1) {
    if (!counts(set) || !((sums.ofSet[set] ?? -Infinity) >= most - tieWidth)) continue;
    let row = sums.rows[set] ?? 0;
    for (let last = 0; last < table.count; last += 1) {
      if (!hasMember(set, last)) continue;
      const slot = firstAtLeast(sums.best.subarray(row * slots, ++row * slots), most - tieWidth);
      if (slot < 0) continue;
      const end = {
        endMin: leaveMinOf(table, { setup: last, slot }),
        placed: members(set),
      };
      if (!isBetterEnd(end, chosenEnd)) continue;
      chosen = { set, last, slot };
      chosenEnd = end;
    }
  }
  return chosen === null ? [] : pathTo(table, sums, chosen);
}

/** The setups that led to a sum, found by asking again which of them gave it. */
function pathTo({ count, slots, latest, price }: OrderTable, sums: BestSums, end: End): OrderPath {
  const path: { setup: number; slot: number }[] = [];
  let { set, last, slot } = end;
  for (;;) {
    const row = (sums.rows[set] ?? 0) + members(set & ((1 << last) - 1));
    const reached = sums.best.subarray(row * slots, (row + 1) * slots);
    slot = firstAtLeast(reached, reached[slot] ?? Infinity);
    path.push({ setup: last, slot });
    const rest = set & ~(1 << last);
    if (rest === 0) return path.toReversed();
    let found = { sum: -Infinity, setup: -1, slot: -1 };
    let sourceRow = sums.rows[rest] ?? 0;
    for (let before = 0; before < count; before += 1) {
      if (!hasMember(rest, before)) continue;
      const pair = before * count + last;
      const start = latest[pair * slots + slot] ?? -1;
      const sum =
        start < 0 ? -Infinity : (sums.best[sourceRow * slots + start] ?? 0) - (price[pair] ?? 0);
      sourceRow += 1;
      if (sum > found.sum) found = { sum, setup: before, slot: start };
    }
    set = rest;
    last = found.setup;
    slot = found.slot;
  }
}

const firstAtLeast = (sums: Float64Array, least: number): number =>
  sums.findIndex((sum) => sum >= least);
