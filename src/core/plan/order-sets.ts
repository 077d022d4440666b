import type { OrderTable } from './order-table.ts';

/** The best sum of every set of setups, by its last setup and the slots up to that one's start. */
export type BestSums = {
  readonly sets: number;
  /** By set: its first row in `best`; one row for each member as the last, in their order. */
  readonly rows: Uint32Array;
  /** Rows of one sum a slot; sums never fall along a row. */
  readonly best: Float64Array;
  /** By set: the best sum of any of its orders. */
  readonly ofSet: Float64Array;
};

const WORK_A_STEP = 1_000_000;

/**
 * Dynamic programming over sets: what came before a set's last setup bears on the rest of the day
 * only through that setup and its start. [heldKarp1962] Yields how far it is, up to a share.
 */
export function* bestSums(table: OrderTable, share: number): Generator<number, BestSums> {
  const { count, slots } = table;
  const sets = 2 ** count;
  const rows = new Uint32Array(sets + 1);
  for (let set = 0; set < sets; set += 1) rows[set + 1] = (rows[set] ?? 0) + members(set);
  const best = new Float64Array((rows[sets] ?? 0) * slots);
  const ofSet = new Float64Array(sets).fill(-Infinity);
  let work = 0;
  for (let set = 1; set < sets; set += 1) {
    let row = rows[set] ?? 0;
    for (let last = 0; last < count; last += 1) {
      if (!hasMember(set, last)) continue;
      const most = fillRow(table, best, rows, { set, last, row });
      if (most > (ofSet[set] ?? -Infinity)) ofSet[set] = most;
      work += slots * count;
      row += 1;
    }
    if (work < WORK_A_STEP) continue;
    work = 0;
    yield (share * set) / sets;
  }
  return { sets, rows, best, ofSet };
}

export const hasMember = (set: number, member: number): boolean => (set & (1 << member)) !== 0;

export function members(set: number): number {
  let found = 0;
  for (let rest = set; rest !== 0; rest &= rest - 1) found += 1;
  return found;
}

/** The sums of a set that ends with `last`; gives the best of them. */
function fillRow(
  { count, slots, gain, latest, price, from, to }: OrderTable,
  best: Float64Array,
  rows: Uint32Array,
  { set, last, row }: { readonly set: number; readonly last: number; readonly row: number },
): number {
  const out = best.subarray(row * slots, (row + 1) * slots);
  const rest = set & ~(1 << last);
  const first = from[last] ?? 0;
  const end = (to[last] ?? -1) + 1;
  out.fill(rest === 0 ? 0 : -Infinity);
  let sourceRow = rows[rest] ?? 0;
  for (let before = 0; before < count; before += 1) {
    if (!hasMember(rest, before)) continue;
    const source = sourceRow * slots;
    sourceRow += 1;
    if (best[source + slots - 1] === -Infinity) continue;
    const pair = before * count + last;
    const starts = pair * slots;
    const paid = price[pair] ?? 0;
    for (let slot = first; slot < end; slot += 1) {
      const start = latest[starts + slot] ?? -1;
      if (start < 0) continue;
      const sum = (best[source + start] ?? 0) - paid;
      if (sum > (out[slot] ?? 0)) out[slot] = sum;
    }
  }
  let most = -Infinity;
  const gains = last * slots;
  for (let slot = 0; slot < slots; slot += 1) {
    const sum = (out[slot] ?? 0) + (gain[gains + slot] ?? 0);
    if (sum > most) most = sum;
    out[slot] = most;
  }
  return most;
}
