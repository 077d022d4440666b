import { START_STEP_MIN } from './order-day.ts';
import { MINUTE_DUST, type OrderTable } from './order-table.ts';

/** Setups of a table and their slots, in the order of the day. */
export type OrderPath = readonly { readonly setup: number; readonly slot: number }[];

export type OrdersFound = {
  readonly path: OrderPath;
  /** By setup: the best order found that holds it, null where the path does or none does. */
  readonly withEach: readonly (OrderPath | null)[];
};

/** When the last setup of a path is back in the car, in minutes from the day's start. */
export function endMinOf({ setups, moves, firstSlot }: OrderTable, path: OrderPath): number {
  const last = path.at(-1);
  const setup = last && setups[last.setup];
  return setup === undefined ? 0 : moves.leaveMin(setup, START_STEP_MIN * (firstSlot + last!.slot));
}

/** Whether of two orders of one worth the first is over later, or with fewer setups at one time. */
export function laterThan(table: OrderTable, first: OrderPath, second: OrderPath): boolean {
  const laterMin = endMinOf(table, first) - endMinOf(table, second);
  return Math.abs(laterMin) > MINUTE_DUST ? laterMin > 0 : first.length < second.length;
}

/** What a path brings, prizes and prices counted, added up in the order of the day. */
export const sumOf = ({ gain, price, slots, count }: OrderTable, path: OrderPath): number =>
  path.reduce((sum, { setup, slot }, at) => {
    const before = path[at - 1];
    const paid = before === undefined ? 0 : (price[before.setup * count + setup] ?? 0);
    return sum - paid + (gain[setup * slots + slot] ?? -Infinity);
  }, 0);
