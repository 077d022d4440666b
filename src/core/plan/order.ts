import { mustHaves } from './order-aims.ts';
import { MS_PER_MIN, START_STEP_MIN, type OrderQuestion, type PlacedSetup } from './order-day.ts';
import { exactOrders, isExact } from './order-exact.ts';
import { orderFaults, setupFaults, STOPS_THE_DAY, type OrderFault } from './order-faults.ts';
import { excludedAlone, leftOut, type LeftBecause } from './order-left.ts';
import { dayMoves } from './order-moves.ts';
import { leaveMinOf, worthOfPath } from './order-path.ts';
import { searchedOrders } from './order-search.ts';
import { part, runOrder } from './order-steps.ts';
import { orderTable, orderTableInSteps, type OrderAim, type OrderTable } from './order-table.ts';

export type DayOrder = {
  /** First frames, in the order of the day. */
  readonly order: readonly PlacedSetup[];
  /** In the order they were given. */
  readonly left: readonly { readonly id: string; readonly because: LeftBecause }[];
  /** Whether no other order is worth more. */
  readonly proven: boolean;
  /** Sum of weight × worth over the order. */
  readonly worth: number;
  /** When the last is back in the car; null without an order. */
  readonly endMs: number | null;
  readonly faults: readonly OrderFault[];
};

/**
 * The order of a day that is worth most: the sum of weight × worth(first frame) over the setups
 * placed, must-haves first, what falls out of it left; of orders of one worth that which is over
 * earliest. First frames lie on the day's grid of five minutes. A first frame comes no earlier
 * than the day's start and its way in and build, and after another no earlier than that one's last
 * frame, strike, trips to the car, drive, trips from the car, shared kit and build; the last setup
 * is struck and back in the car by the day's end. Proven up to 12 setups that can be placed at
 * all, and beyond where the day is short.
 */
export const bestOrder = (question: OrderQuestion): DayOrder =>
  runOrder(bestOrderInSteps(question));

/** The same, telling how far it is, 0 to 1. */
export const bestOrderInSteps = (question: OrderQuestion): Generator<number, DayOrder> =>
  orderFor(question, { wanted: mustHaves(question), fewestMoves: false });

/** What each part of the work is counted as of the whole. */
const TABLE = { from: 0, to: 0.03 };
const WANTED = { from: 0.03, to: 0.08 };
const REST = { from: 0.08, to: 1 };

/** The best order by an aim of one's own. */
export function* orderFor(question: OrderQuestion, aim: OrderAim): Generator<number, DayOrder> {
  const faults = orderFaults(question);
  if (faults.some(({ kind }) => STOPS_THE_DAY.includes(kind)))
    return {
      order: [],
      left: question.setups.map(({ id }) => ({ id, because: { kind: 'day-not-usable' } })),
      proven: false,
      worth: 0,
      endMs: null,
      faults,
    };
  yield 0;
  const usable = question.setups.filter((setup) => setupFaults(setup).length === 0);
  const table = yield* part(orderTableInSteps(question, usable, aim), TABLE);
  const proven = isExact(table);
  const wanted = proven ? [] : yield* part(wantedSequence(question, table, aim), WANTED);
  const found = yield* part(proven ? exactOrders(table) : searchedOrders(table, wanted), REST);

  const { path, withEach } = found;
  const slotOf = new Map(path.map(({ setup, slot }) => [table.setups[setup]?.id, slot]));
  const moves = dayMoves(question);
  const left = question.setups.flatMap((setup) => {
    if (slotOf.has(setup.id)) return [];
    const [fault] = setupFaults(setup);
    const at = table.setups.indexOf(setup);
    const because: LeftBecause =
      fault === undefined
        ? (excludedAlone(moves, setup, question.baseSpotId) ??
          leftOut(table, at, { path, withIt: withEach[at] ?? null }))
        : { kind: 'not-usable', field: fault.field, found: fault.found };
    return [{ id: setup.id, because }];
  });
  const last = path.at(-1);
  return {
    order: path.flatMap(({ setup, slot }) => {
      const placed = table.setups[setup];
      const startMs = question.startMs + MS_PER_MIN * START_STEP_MIN * (table.firstSlot + slot);
      return placed === undefined ? [] : [{ id: placed.id, startMs }];
    }),
    left,
    proven,
    worth: worthOfPath(table, path),
    endMs: last === undefined ? null : question.startMs + MS_PER_MIN * leaveMinOf(table, last),
    faults,
  };
}

/** The exact order of the wanted setups alone, so that the search begins with all of them placed. */
function* wantedSequence(
  question: OrderQuestion,
  table: OrderTable,
  aim: OrderAim,
): Generator<number, readonly number[]> {
  const wanted = table.setups.filter(({ id }) => aim.wanted.has(id));
  const alone = orderTable(question, wanted, aim);
  if (!isExact(alone)) return [];
  const { path } = yield* exactOrders(alone);
  return path.flatMap(({ setup }) => {
    const placed = alone.setups[setup];
    return placed === undefined ? [] : [table.setups.indexOf(placed)];
  });
}
