import { isBetterEnd, leaveMinOf, type OrderEnd, type OrderPath } from './order-path.ts';
import type { OrderTable } from './order-table.ts';

/** Setups in a fixed sequence, of which any may be passed over. */
export type Sequence = readonly number[];

export type Insertion = { readonly at: number; readonly sum: number };

/** The best starts of a sequence's best part, and where one more setup fits best into it. */
export type Chain = {
  /** Reads the sequence anew from a place on, for what comes before each setup. */
  readonly readForward: (sequence: Sequence, from: number) => void;
  /** Reads it anew from a place back to the beginning, for what comes after each. */
  readonly readBackward: (sequence: Sequence, from: number) => void;
  /** Of the sequence as read forward. */
  readonly bestSum: (sequence: Sequence) => number;
  readonly bestPath: (sequence: Sequence) => OrderPath;
  /** Of the sequence as read both ways, with the setup in it and placed. */
  readonly bestInsertion: (sequence: Sequence, setup: number) => Insertion;
  /** Sums of the best that can still come, by setup and slots from which it starts; read backward. */
  readonly onward: Float64Array;
};

/** A chain over a table's setups; its rows are its own and written over by each reading. */
export function orderChain(table: OrderTable): Chain {
  const { count, slots, gain, latest, next, price, from, to, tieWidth } = table;
  const before = new Float64Array(count * slots);
  const onward = new Float64Array(count * slots);
  const left = new Float64Array(slots);
  const right = new Float64Array((count + 1) * slots);

  /** Raises a row to what can precede each start of the setup, once `source` is among it. */
  const takeBefore = (row: Float64Array, source: number, setup: number): void => {
    const pair = source * count + setup;
    const paid = price[pair] ?? 0;
    const end = (to[setup] ?? -1) + 1;
    for (let slot = from[setup] ?? 0; slot < end; slot += 1) {
      const start = latest[pair * slots + slot] ?? -1;
      if (start < 0) continue;
      const sum = (before[source * slots + start] ?? 0) - paid;
      if (sum > (row[slot] ?? 0)) row[slot] = sum;
    }
  };
  /** The same for what can follow each start. */
  const takeAfter = (
    row: Float64Array,
    offset: number,
    { target, setup }: { readonly target: number; readonly setup: number },
  ): void => {
    const pair = setup * count + target;
    const paid = price[pair] ?? 0;
    const end = (to[setup] ?? -1) + 1;
    for (let slot = from[setup] ?? 0; slot < end; slot += 1) {
      const start = next[pair * slots + slot] ?? slots;
      if (start >= slots) break;
      const sum = (onward[target * slots + start] ?? 0) - paid;
      if (sum > (row[offset + slot] ?? 0)) row[offset + slot] = sum;
    }
  };

  const readForward = (sequence: Sequence, first: number): void => {
    for (let at = first; at < sequence.length; at += 1) {
      const setup = sequence[at] ?? 0;
      const row = before.subarray(setup * slots, (setup + 1) * slots).fill(0);
      for (let earlier = 0; earlier < at; earlier += 1)
        takeBefore(row, sequence[earlier] ?? 0, setup);
      let most = -Infinity;
      for (let slot = 0; slot < slots; slot += 1) {
        const sum = (row[slot] ?? 0) + (gain[setup * slots + slot] ?? 0);
        if (sum > most) most = sum;
        row[slot] = most;
      }
    }
  };
  const readBackward = (sequence: Sequence, first: number): void => {
    for (let at = first; at >= 0; at -= 1) {
      const setup = sequence[at] ?? 0;
      const row = onward.subarray(setup * slots, (setup + 1) * slots).fill(0);
      for (let later = at + 1; later < sequence.length; later += 1)
        takeAfter(row, 0, { target: sequence[later] ?? 0, setup });
      let most = -Infinity;
      for (let slot = slots - 1; slot >= 0; slot -= 1) {
        const sum = (row[slot] ?? 0) + (gain[setup * slots + slot] ?? 0);
        if (sum > most) most = sum;
        row[slot] = most;
      }
    }
  };
  const bestSum = (sequence: Sequence): number =>
    sequence.reduce((most, setup) => Math.max(most, before[(setup + 1) * slots - 1] ?? 0), 0);

  const bestInsertion = (sequence: Sequence, setup: number): Insertion => {
    const length = sequence.length;
    const first = from[setup] ?? 0;
    const end = (to[setup] ?? -1) + 1;
    right.fill(0, length * slots, (length + 1) * slots);
    for (let at = length - 1; at >= 0; at -= 1) {
      right.copyWithin(at * slots, (at + 1) * slots, (at + 2) * slots);
      takeAfter(right, at * slots, { target: sequence[at] ?? 0, setup });
    }
    left.fill(0);
    let found: Insertion = { at: length, sum: -Infinity };
    for (let at = 0; at <= length; at += 1) {
      if (at > 0) takeBefore(left, sequence[at - 1] ?? 0, setup);
      for (let slot = first; slot < end; slot += 1) {
        const sum =
          (left[slot] ?? 0) + (gain[setup * slots + slot] ?? 0) + (right[at * slots + slot] ?? 0);
        if (sum > found.sum + tieWidth) found = { at, sum };
      }
    }
    return found;
  };

  const bestPath = (sequence: Sequence): OrderPath => {
    const least = bestSum(sequence) - tieWidth;
    let chosen: { setup: number; slot: number; at: number } | null = null;
    let chosenEnd: OrderEnd = { endMin: least > 0 ? Infinity : 0, placed: 0 };
    for (const [at, setup] of sequence.entries()) {
      const slot = before
        .subarray(setup * slots, (setup + 1) * slots)
        .findIndex((sum) => sum >= least);
      if (slot < 0) continue;
      const end = { endMin: leaveMinOf(table, { setup, slot }), placed: 1 };
      if (!isBetterEnd(end, chosenEnd)) continue;
      chosen = { setup, slot, at };
      chosenEnd = end;
    }
    return chosen === null ? [] : pathBackFrom(table, before, sequence, chosen);
  };
  return { readForward, readBackward, bestSum, bestPath, bestInsertion, onward };
}

function pathBackFrom(
  { count, slots, latest, price }: OrderTable,
  before: Float64Array,
  sequence: Sequence,
  end: { readonly setup: number; readonly slot: number; readonly at: number },
): OrderPath {
  const path: { setup: number; slot: number }[] = [];
  let { setup, slot, at } = end;
  for (;;) {
    const row = before.subarray(setup * slots, (setup + 1) * slots);
    const reached = row[slot] ?? Infinity;
    slot = row.findIndex((sum) => sum >= reached);
    path.push({ setup, slot });
    let found = { sum: 0, setup: -1, slot: -1, at: -1 };
    for (let earlier = 0; earlier < at; earlier += 1) {
      const source = sequence[earlier] ?? 0;
      const pair = source * count + setup;
      const start = latest[pair * slots + slot] ?? -1;
      const sum =
        start < 0 ? -Infinity : (before[source * slots + start] ?? 0) - (price[pair] ?? 0);
      if (sum > found.sum) found = { sum, setup: source, slot: start, at: earlier };
    }
    if (found.at < 0) return path.toReversed();
    ({ setup, slot, at } = found);
  }
}
