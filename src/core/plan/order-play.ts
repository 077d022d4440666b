import type { OrderPath } from './order-path.ts';
import type { OrderTable } from './order-table.ts';

/** How far each setup of an order can be moved while the sequence stands, in slots. */
export type Play = { readonly earliest: readonly number[]; readonly latest: readonly number[] };

/** Earliest and latest allowed starts, all that comes before or after kept; −1 where there is none. */
export function playOf(table: OrderTable, path: OrderPath): Play {
  const { count, slots, next, latest } = table;
  const setups = path.map(({ setup }) => setup);
  const earliestSlots: number[] = [];
  for (const [at, setup] of setups.entries()) {
    const before = setups[at - 1];
    const slot = earliestSlots[at - 1] ?? 0;
    const ready =
      before === undefined ? 0 : (next[(before * count + setup) * slots + slot] ?? slots);
    earliestSlots.push(slot < 0 ? -1 : allowedFrom(table, setup, ready));
  }
  const latestSlots: number[] = [];
  for (const [back, setup] of setups.toReversed().entries()) {
    const after = setups[setups.length - back];
    const slot = latestSlots[back - 1] ?? slots - 1;
    const until =
      after === undefined ? slots - 1 : (latest[(setup * count + after) * slots + slot] ?? -1);
    latestSlots.push(slot < 0 ? -1 : allowedUntil(table, setup, until));
  }
  return { earliest: earliestSlots, latest: latestSlots.toReversed() };
}

/** The first allowed slot of a setup from a slot on, or −1. */
export function allowedFrom({ gain, slots }: OrderTable, setup: number, from: number): number {
  for (let slot = Math.max(0, from); slot < slots; slot += 1)
    if ((gain[setup * slots + slot] ?? -Infinity) > -Infinity) return slot;
  return -1;
}

function allowedUntil({ gain, slots }: OrderTable, setup: number, until: number): number {
  for (let slot = until; slot >= 0; slot -= 1)
    if ((gain[setup * slots + slot] ?? -Infinity) > -Infinity) return slot;
  return -1;
}
