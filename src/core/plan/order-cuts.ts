import { MS_PER_MIN, START_STEP_MIN, type OrderQuestion, type OrderSetup } from './order-day.ts';
import { orderChain } from './order-chain.ts';
import { setupFaults } from './order-faults.ts';
import { mustHaves } from './order-aims.ts';
import { playOf } from './order-play.ts';
import { orderTable, slotsFrom, type OrderTable } from './order-table.ts';

/** What happens to an order when a setup's first frame is late. */
export type CutMinute = {
  /** Up to this first frame it and all after it can still be done, one after the other. */
  readonly allUntilMs: number;
  /** What goes first when its first frame comes later than that, or than `cutAfterMs`; in the order of the day. */
  readonly goesFirst: readonly string[];
  /** With a first frame after this one it is cut itself: going on without it is worth more. May come before `allUntilMs`, where the next would only lose its good light. */
  readonly cutAfterMs: number;
};

type Standing = { readonly id: string; readonly slot: number };

/** By setup of an order that holds together; setups where it does not are not in the map. */
export function cutMinutes(
  question: OrderQuestion,
  order: readonly Standing[],
): ReadonlyMap<string, CutMinute> {
  const cuts = new Map<string, CutMinute>();
  const usable = order.flatMap(({ id }) => {
    const setup = question.setups.find((one) => one.id === id);
    return setup !== undefined && setupFaults(setup).length === 0 ? [setup] : [];
  });
  const table = orderTable(question, usable, { wanted: mustHaves(question), fewestMoves: false });
  if (table.count < order.length || new Set(usable).size < order.length) return cuts;

  const sequence = table.setups.map((_, setup) => setup);
  const play = playOf(
    table,
    sequence.map((setup) => ({ setup, slot: 0 })),
  );
  const chain = orderChain(table);
  chain.readBackward(sequence, sequence.length - 1);
  const { slots, tieWidth, firstSlot, setups } = table;
  const keep = (at: number, slot: number): number => chain.onward[at * slots + slot] ?? -Infinity;
  const msOf = (slot: number): number =>
    question.startMs + MS_PER_MIN * START_STEP_MIN * (firstSlot + slot);

  for (const [at, setup] of setups.entries()) {
    const planned = (order[at]?.slot ?? 0) - firstSlot;
    const until = play.latest[at] ?? -1;
    const earliest = play.earliest[at] ?? -1;
    if (earliest < 0 || planned < earliest || planned > until) continue;
    const skip = (slot: number): number => withoutIt(table, chain.onward, { at, slot }).sum;
    const last = table.to[at] ?? -1;
    let cutAfter = planned;
    while (cutAfter < last && keep(at, cutAfter + 1) >= skip(cutAfter + 1) - tieWidth)
      cutAfter += 1;
    cuts.set(setup.id, {
      allUntilMs: msOf(until),
      goesFirst: droppedFrom(table, chain.onward, { at, slot: Math.min(until, cutAfter) + 1 }),
      cutAfterMs: msOf(cutAfter),
    });
  }
  return cuts;
}

type Late = { readonly at: number; readonly slot: number };
type Onward = { readonly sum: number; readonly at: number; readonly slot: number };
const NOTHING: Onward = { sum: 0, at: -1, slot: -1 };

/** The best that can follow a setup, work to be done first. */
function bestAfter(
  { setups, moves, slots, firstSlot }: OrderTable,
  onward: Float64Array,
  { at, freeMin }: { readonly at: number; readonly freeMin: number },
): Onward {
  const setup = setups[at];
  if (setup === undefined) return NOTHING;
  let found = NOTHING;
  for (const [later, target] of setups.entries()) {
    const moveMin = later <= at ? null : moves.moveMin(setup, target);
    if (moveMin === null) continue;
    const ready = slotsFrom(moves.workedMin(freeMin, moveMin)) - firstSlot;
    const sum = ready < slots ? (onward[later * slots + ready] ?? -Infinity) : -Infinity;
    if (sum <= found.sum) continue;
    const slot = bestStart(onward, { row: later * slots, slots, ready });
    found = { sum, at: later, slot };
  }
  return found;
}

/** The start that gives the best sum from a slot on: behind it that sum falls. */
function bestStart(
  onward: Float64Array,
  { row, slots, ready }: { readonly row: number; readonly slots: number; readonly ready: number },
): number {
  const sum = onward[row + ready];
  let slot = ready;
  while (slot + 1 < slots && onward[row + slot + 1] === sum) slot += 1;
  return slot;
}

/** Standing at a setup's spot at a slot and going on without having shot it. */
const withoutIt = (table: OrderTable, onward: Float64Array, { at, slot }: Late): Onward =>
  bestAfter(table, onward, { at, freeMin: START_STEP_MIN * (table.firstSlot + slot) });

/** Which of a setup and those after it are not in the best that can be made of so late a start. */
function droppedFrom(
  table: OrderTable,
  onward: Float64Array,
  { at, slot }: Late,
): readonly string[] {
  const { setups, moves, slots, firstSlot, tieWidth } = table;
  const skip = withoutIt(table, onward, { at, slot });
  const keeps = slot < slots && (onward[at * slots + slot] ?? -Infinity) >= skip.sum - tieWidth;
  const kept = new Set<OrderSetup>();
  let step: Onward = keeps
    ? { sum: 0, at, slot: bestStart(onward, { row: at * slots, slots, ready: slot }) }
    : skip;
  for (;;) {
    const setup = setups[step.at];
    if (setup === undefined) break;
    kept.add(setup);
    const freeMin = START_STEP_MIN * (firstSlot + step.slot) + moves.shootMin(setup);
    step = bestAfter(table, onward, { at: step.at, freeMin });
  }
  return setups.slice(at).flatMap((setup) => (kept.has(setup) ? [] : [setup.id]));
}
