import { START_STEP_MIN, type OrderQuestion, type OrderSetup } from './order-day.ts';
import { dayMoves, type DayMoves } from './order-moves.ts';
import { runOrder } from './order-steps.ts';

/**
 * A day as numbers. Setups are counted from 0, starts by slots of five minutes from
 * `firstSlot`; rows of `slots` numbers lie one after the other.
 */
export type OrderTable = {
  readonly setups: readonly OrderSetup[];
  readonly moves: DayMoves;
  readonly count: number;
  readonly firstSlot: number;
  readonly slots: number;
  /** What a start brings: weight × worth, and the prize where there is one; −Infinity: not allowed. */
  readonly gain: Float64Array;
  /** By setup before and setup: the latest start of the one before for each start, or −1. */
  readonly latest: Int16Array;
  /** By setup before and setup: the earliest start after each start of the one before, or `slots`. */
  readonly next: Int16Array;
  /** What going from one setup to another costs beside its time. */
  readonly price: Float64Array;
  /** Most that all setups together could bring, prizes not counted. */
  readonly reach: number;
  /** First and last allowed slot of each setup; first > last: none. */
  readonly from: Int16Array;
  readonly to: Int16Array;
  /** Two sums that differ by less are equal: far above rounding, far below any worth that counts. */
  readonly tieWidth: number;
};

/** What an order is judged by, beside its worth. */
export type OrderAim = {
  /** Placed before all that is not in it. */
  readonly wanted: ReadonlySet<string>;
  /** Then as few changes of spot as can be, whatever worth that costs. */
  readonly fewestMoves: boolean;
};

/** Minutes may come out of a sum of fractions. */
export const MINUTE_DUST = 1e-6;
const TIE_SHARE = 1e-12;

export const slotsFrom = (minutes: number): number =>
  Math.ceil((minutes - MINUTE_DUST) / START_STEP_MIN);

/** What a start would bring if everything could be there in time; −Infinity: not allowed. */
export const plainGain = ({ weight, worth }: OrderSetup, slot: number): number => {
  const here = worth[slot] ?? -Infinity;
  return here === -Infinity ? here : weight * here;
};

/** Whether a first frame at the slot lies inside the day and outside every break. */
export function fitsDay(moves: DayMoves, setup: OrderSetup, slot: number): boolean {
  const startMin = START_STEP_MIN * slot;
  const earliestMin = moves.earliestMin(setup);
  return (
    earliestMin !== null &&
    startMin >= earliestMin - MINUTE_DUST &&
    moves.leaveMin(setup, startMin) <= moves.dayMin + MINUTE_DUST &&
    moves.inBreakMin(setup, startMin) <= MINUTE_DUST
  );
}

/** Every allowed slot of a setup, were it alone in the day. */
export const allowedSlots = (moves: DayMoves, setup: OrderSetup): readonly number[] =>
  Array.from(setup.worth.keys()).filter(
    (slot) => plainGain(setup, slot) > -Infinity && fitsDay(moves, setup, slot),
  );

/** The day of those setups that can stand in it alone; the others are left out of the table. */
export const orderTable = (
  question: OrderQuestion,
  setups: readonly OrderSetup[],
  aim: OrderAim,
): OrderTable => runOrder(orderTableInSteps(question, setups, aim));

/** The same, telling how far it is, 0 to 1. */
export function* orderTableInSteps(
  question: OrderQuestion,
  setups: readonly OrderSetup[],
  aim: OrderAim,
): Generator<number, OrderTable> {
  const moves = dayMoves(question);
  const placeable = setups
    .map((setup) => ({ setup, allowed: allowedSlots(moves, setup) }))
    .filter(({ allowed }) => allowed.length > 0);
  const count = placeable.length;
  const firsts = placeable.map(({ allowed }) => allowed[0] ?? 0);
  const lasts = placeable.map(({ allowed }) => allowed.at(-1) ?? 0);
  const firstSlot = count === 0 ? 0 : Math.min(...firsts);
  const slots = count === 0 ? 0 : Math.max(...lasts) - firstSlot + 1;

  const plain = placeable.map(({ setup, allowed }) =>
    allowed.map((slot) => plainGain(setup, slot)),
  );
  const reach = plain.reduce(
    (sum, gains) => sum + Math.max(0, ...gains) - Math.min(0, ...gains),
    0,
  );
  const movePrice = aim.fewestMoves ? reach + 1 : 0;
  const prize = reach + 1 + count * movePrice;
  const gain = new Float64Array(count * slots).fill(-Infinity);
  for (const [at, { setup, allowed }] of placeable.entries())
    for (const [which, slot] of allowed.entries())
      gain[at * slots + slot - firstSlot] =
        (plain[at]?.[which] ?? 0) + (aim.wanted.has(setup.id) ? prize : 0);

  const between = yield* startsBetween(
    placeable.map(({ setup }) => setup),
    moves,
    { firstSlot, slots },
  );
  return {
    setups: placeable.map(({ setup }) => setup),
    moves,
    count,
    firstSlot,
    slots,
    gain,
    ...between,
    price: Float64Array.from({ length: count * count }, (_, pair) => {
      const before = placeable[Math.floor(pair / count)]?.setup.spotId;
      return before === placeable[pair % count]?.setup.spotId ? 0 : movePrice;
    }),
    reach,
    from: Int16Array.from(firsts, (slot) => slot - firstSlot),
    to: Int16Array.from(lasts, (slot) => slot - firstSlot),
    tieWidth: TIE_SHARE * (reach + count * (prize + movePrice)),
  };
}

function* startsBetween(
  setups: readonly OrderSetup[],
  moves: DayMoves,
  { firstSlot, slots }: { readonly firstSlot: number; readonly slots: number },
): Generator<number, Pick<OrderTable, 'latest' | 'next'>> {
  const count = setups.length;
  const latest = new Int16Array(count * count * slots).fill(-1);
  const next = new Int16Array(count * count * slots).fill(slots);
  for (const [one, before] of setups.entries()) {
    yield one / count;
    for (const [other, setup] of setups.entries()) {
      const moveMin = one === other ? null : moves.moveMin(before, setup);
      if (moveMin === null) continue;
      const row = (one * count + other) * slots;
      for (let slot = 0, told = 0; slot < slots; slot += 1) {
        const lastFrameMin = START_STEP_MIN * (firstSlot + slot) + moves.shootMin(before);
        const start = slotsFrom(moves.workedMin(lastFrameMin, moveMin)) - firstSlot;
        next[row + slot] = Math.min(slots, Math.max(0, start));
        for (; told < Math.min(start, slots); told += 1) latest[row + told] = slot - 1;
        if (slot === slots - 1) latest.fill(slot, row + Math.max(told, start), row + slots);
      }
    }
  }
  return { latest, next };
}
