import { START_STEP_MIN } from './order-day.ts';
import { MINUTE_DUST, plainGain, type OrderTable } from './order-table.ts';

export type OrderStep = { readonly setup: number; readonly slot: number };

/** Setups of a table and their slots, in the order of the day. */
export type OrderPath = readonly OrderStep[];

export type OrdersFound = {
  readonly path: OrderPath;
  /** By setup: the best order found that holds it, null where the path does or none does. */
  readonly withEach: readonly (OrderPath | null)[];
};

/** When a setup that starts at a slot is back in the car, in minutes from the day's start. */
export function leaveMinOf({ setups, moves, firstSlot }: OrderTable, step: OrderStep): number {
  const setup = setups[step.setup];
  return setup === undefined
    ? Infinity
    : moves.leaveMin(setup, START_STEP_MIN * (firstSlot + step.slot));
}

/** How an order ends, and with how many setups. */
export type OrderEnd = { readonly endMin: number; readonly placed: number };

/** Of two orders of one worth that which is over earlier goes first, then that with more setups. */
export const isBetterEnd = (one: OrderEnd, other: OrderEnd): boolean =>
  Math.abs(one.endMin - other.endMin) > MINUTE_DUST
    ? one.endMin < other.endMin
    : one.placed > other.placed;

/** Weight × worth of a path, added up in the order of the day. */
export const worthOfPath = ({ setups, firstSlot }: OrderTable, path: OrderPath): number =>
  path.reduce((sum, { setup, slot }) => {
    const placed = setups[setup];
    return sum + (placed === undefined ? 0 : plainGain(placed, firstSlot + slot));
  }, 0);
