import type { OrderTable } from './order-table.ts';
import { laterThan, type OrderPath, type OrdersFound } from './order-path.ts';

/** Always ordered exactly. */
export const EXACT_SETUPS = 12;
/** More than twelve are ordered exactly where the table takes no more than 64 MB. */
const MOST_CELLS = 2 ** 23;
const WORK_A_STEP = 400_000;

export const isExact = ({ count, slots }: OrderTable): boolean =>
  count <= EXACT_SETUPS || (count < 20 && count * 2 ** (count - 1) * slots <= MOST_CELLS);

/**
 * The best of all orders, by dynamic programming over sets of setups, the last of them, and its
 * start: a set's best sum up to a start depends on what came before only through that last one.
 * [heldKarp1962] Also the best of all orders that hold each setup left out.
 */
export function* exactOrders(table: OrderTable): Generator<number, OrdersFound> {
  const { count, slots, tieWidth } = table;
  const sets = 2 ** count;
  const rows = firstRows(count);
  const best = new Float64Array((rows[sets] ?? 0) * slots);
  let work = 0;
  for (let set = 1; set < sets; set += 1) {
    let row = rows[set] ?? 0;
    for (let last = 0; last < count; last += 1) {
      if ((set & (1 << last)) === 0) continue;
      fillRow(table, best, rows, { set, last, row });
      work += slots * count;
      row += 1;
    }
    if (work < WORK_A_STEP) continue;
    work = 0;
    yield (0.95 * set) / sets;
  }

  const endOf = (set: number): { sum: number; row: number; last: number } => {
    let found = { sum: -Infinity, row: -1, last: -1 };
    let row = rows[set] ?? 0;
    for (let last = 0; last < count; last += 1) {
      if ((set & (1 << last)) === 0) continue;
      const sum = best[(row + 1) * slots - 1] ?? -Infinity;
      if (sum > found.sum) found = { sum, row, last };
      row += 1;
    }
    return found;
  };
  const ends = Float64Array.from({ length: sets }, (_, set) => (set === 0 ? 0 : endOf(set).sum));
  const bestWith = (member: number): OrderPath => {
    let most = -Infinity;
    for (let set = 0; set < sets; set += 1)
      if (member < 0 || (set & (1 << member)) !== 0) most = Math.max(most, ends[set] ?? -Infinity);
    let chosen: OrderPath | null = null;
    for (let set = 0; set < sets; set += 1) {
      if ((ends[set] ?? -Infinity) < most - tieWidth) continue;
      if (member >= 0 && (set & (1 << member)) === 0) continue;
      const path = earliestPath(table, best, rows, { set, least: most - tieWidth });
      if (chosen === null || laterThan(table, chosen, path)) chosen = path;
    }
    return chosen ?? [];
  };
  const path = bestWith(-1);
  const placed = new Set(path.map(({ setup }) => setup));
  const withEach: (OrderPath | null)[] = [];
  for (let setup = 0; setup < count; setup += 1) {
    withEach.push(placed.has(setup) ? null : bestWith(setup));
    yield 0.95 + (0.05 * (setup + 1)) / count;
  }
  return { path, withEach };
}

/** By set: how many rows lie before its own, one for each member as the last. */
function firstRows(count: number): Uint32Array {
  const rows = new Uint32Array(2 ** count + 1);
  for (let set = 0; set < 2 ** count; set += 1) rows[set + 1] = (rows[set] ?? 0) + members(set);
  return rows;
}

function members(set: number): number {
  let found = 0;
  for (let rest = set; rest !== 0; rest &= rest - 1) found += 1;
  return found;
}

/** The best sums of a set whose last setup starts at each slot or before. */
function fillRow(
  { count, slots, gain, latest, price, from, to }: OrderTable,
  best: Float64Array,
  rows: Uint32Array,
  { set, last, row }: { readonly set: number; readonly last: number; readonly row: number },
): void {
  const out = best.subarray(row * slots, (row + 1) * slots);
  const rest = set & ~(1 << last);
  const first = from[last] ?? 0;
  const end = (to[last] ?? -1) + 1;
  out.fill(rest === 0 ? 0 : -Infinity);
  let sourceRow = rows[rest] ?? 0;
  for (let before = 0; before < count && rest !== 0; before += 1) {
    if ((rest & (1 << before)) === 0) continue;
    const source = best.subarray(sourceRow * slots, (sourceRow + 1) * slots);
    sourceRow += 1;
    if (source[slots - 1] === -Infinity) continue;
    const pair = before * count + last;
    const starts = latest.subarray(pair * slots, (pair + 1) * slots);
    const paid = price[pair] ?? 0;
    for (let slot = first; slot < end; slot += 1) {
      const start = starts[slot]!;
      if (start < 0) continue;
      const sum = source[start]! - paid;
      if (sum > out[slot]!) out[slot] = sum;
    }
  }
  let most = -Infinity;
  const gains = gain.subarray(last * slots, (last + 1) * slots);
  for (let slot = 0; slot < slots; slot += 1) {
    const sum = out[slot]! + gains[slot]!;
    if (sum > most) most = sum;
    out[slot] = most;
  }
}

/** Of a set's orders that bring at least so much, the one that is over first. */
function earliestPath(
  table: OrderTable,
  best: Float64Array,
  rows: Uint32Array,
  { set, least }: { readonly set: number; readonly least: number },
): OrderPath {
  const { count, slots } = table;
  let chosen: OrderPath | null = null;
  let row = rows[set] ?? 0;
  for (let last = 0; last < count; last += 1) {
    if ((set & (1 << last)) === 0) continue;
    const sums = best.subarray(row * slots, (row + 1) * slots);
    row += 1;
    const slot = sums.findIndex((sum) => sum >= least);
    if (slot < 0) continue;
    const path = pathTo(table, best, rows, { set, last, slot });
    if (chosen === null || laterThan(table, chosen, path)) chosen = path;
  }
  return chosen ?? [];
}

/** The setups that led to a sum, found by asking again which of them gave it. */
function pathTo(
  { count, slots, latest, price }: OrderTable,
  best: Float64Array,
  rows: Uint32Array,
  from: { readonly set: number; readonly last: number; readonly slot: number },
): OrderPath {
  const path: { setup: number; slot: number }[] = [];
  let { set, last, slot } = from;
  for (;;) {
    const row = (rows[set] ?? 0) + members(set & ((1 << last) - 1));
    const sums = best.subarray(row * slots, (row + 1) * slots);
    const reached = sums[slot];
    slot = sums.findIndex((sum) => sum === reached);
    path.push({ setup: last, slot });
    const rest = set & ~(1 << last);
    if (rest === 0) return path.toReversed();
    let found = { sum: -Infinity, setup: -1, slot: -1 };
    let sourceRow = rows[rest] ?? 0;
    for (let before = 0; before < count; before += 1) {
      if ((rest & (1 << before)) === 0) continue;
      const pair = before * count + last;
      const start = latest[pair * slots + slot] ?? -1;
      const sum = start < 0 ? -Infinity : best[sourceRow * slots + start]! - (price[pair] ?? 0);
      sourceRow += 1;
      if (sum > found.sum) found = { sum, setup: before, slot: start };
    }
    set = rest;
    last = found.setup;
    slot = found.slot;
  }
}
