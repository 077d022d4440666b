import { START_STEP_MIN, type OrderSetup } from './order-day.ts';
import type { SetupField } from './order-faults.ts';
import type { DayMoves } from './order-moves.ts';
import { worthOfPath, type OrderPath } from './order-path.ts';
import { allowedFrom, playOf } from './order-play.ts';
import { plainGain, slotsFrom, type OrderTable } from './order-table.ts';

/** Why a setup is not in the order, and by how much. */
export type LeftBecause =
  | { readonly kind: 'day-not-usable' }
  | { readonly kind: 'not-usable'; readonly field: SetupField; readonly found: number }
  | { readonly kind: 'no-allowed-start' }
  /** Its last allowed start comes so long before it can be built as the first of the day. */
  | { readonly kind: 'ends-before-built'; readonly byMin: number }
  /** From its first allowed start it would be back in the car so long after the latest wrap. */
  | { readonly kind: 'past-wrap'; readonly byMin: number }
  /** At its best allowed start so much of it falls into a break. */
  | { readonly kind: 'in-a-break'; readonly byMin: number }
  | { readonly kind: 'travel-missing'; readonly fromSpotId: string; readonly toSpotId: string }
  /** Weight × worth of its best start is not above 0. */
  | { readonly kind: 'brings-nothing'; readonly bestWorth: number }
  /** Only fewest changes of spot are asked for, and it takes so many more. */
  | { readonly kind: 'takes-moves'; readonly moves: number }
  | ({ readonly kind: 'others-first' } & OthersFirst);

export type OthersFirst = {
  /** What the rest of the day would lose with it in. */
  readonly othersWorth: number;
  /** What it would bring. */
  readonly ownWorth: number;
  /** Those that would fall out. */
  readonly insteadOf: readonly string[];
  /** The must-haves among them. */
  readonly mustHavesOut: readonly string[];
  /** By how much it is too long to be put into the order as it stands; 0: it would only be in the way of better starts. */
  readonly shortByMin: number;
};

/** Why a setup could not even be the only one of the day; null: it could. */
export function excludedAlone(
  moves: DayMoves,
  setup: OrderSetup,
  baseSpotId: string | undefined,
): LeftBecause | null {
  const starts = setup.worth.flatMap((worth, slot) =>
    worth > -Infinity && START_STEP_MIN * slot < moves.dayMin ? [START_STEP_MIN * slot] : [],
  );
  const lastMin = starts.at(-1);
  if (lastMin === undefined) return { kind: 'no-allowed-start' };
  const earliestMin = moves.earliestMin(setup);
  if (earliestMin === null)
    return { kind: 'travel-missing', fromSpotId: baseSpotId ?? '', toSpotId: setup.spotId };
  const built = starts.filter((startMin) => slotsFrom(earliestMin) * START_STEP_MIN <= startMin);
  const [firstMin] = built;
  if (firstMin === undefined) return { kind: 'ends-before-built', byMin: earliestMin - lastMin };
  const wrapped = built.filter(
    (startMin) => slotsFrom(moves.leaveMin(setup, startMin) - moves.dayMin) <= 0,
  );
  if (wrapped.length === 0)
    return { kind: 'past-wrap', byMin: moves.leaveMin(setup, firstMin) - moves.dayMin };
  const byMin = Math.min(...wrapped.map((startMin) => moves.inBreakMin(setup, startMin)));
  return slotsFrom(byMin) > 0 ? { kind: 'in-a-break', byMin } : null;
}

/** Why a setup that could be in the day is not in its order. */
export function leftOut(
  table: OrderTable,
  left: number,
  orders: { readonly path: OrderPath; readonly withIt: OrderPath | null },
): LeftBecause {
  const { path, withIt } = orders;
  const fit = bestFit(table, path, left);
  if (fit.missing !== null && !(fit.shortByMin <= 0)) return fit.missing;
  const bestWorth = plainGains(table, left).reduce((most, one) => Math.max(most, one), -Infinity);
  if (bestWorth <= 0) return { kind: 'brings-nothing', bestWorth };
  const moves = pricedMoves(table, withIt ?? []) - pricedMoves(table, path);
  if (moves > 0) return { kind: 'takes-moves', moves };
  const ownWorth = worthOfPath(
    table,
    (withIt ?? []).filter((step) => step.setup === left),
  );
  const kept = new Set((withIt ?? []).map((step) => step.setup));
  const out = path.flatMap((step) =>
    kept.has(step.setup) ? [] : (table.setups[step.setup] ?? []),
  );
  return {
    kind: 'others-first',
    othersWorth: worthOfPath(table, path) - worthOfPath(table, withIt ?? []) + ownWorth,
    ownWorth,
    insteadOf: out.map(({ id }) => id),
    mustHavesOut: out.flatMap(({ id, mustHave }) => (mustHave === true ? [id] : [])),
    shortByMin: fit.shortByMin,
  };
}

const plainGains = ({ setups, slots, firstSlot, gain }: OrderTable, at: number) =>
  Array.from({ length: slots }, (_, slot) => {
    const setup = setups[at];
    const allowed = (gain[at * slots + slot] ?? -Infinity) > -Infinity;
    return setup !== undefined && allowed ? plainGain(setup, firstSlot + slot) : -Infinity;
  });

const pricedMoves = ({ price, count }: OrderTable, path: OrderPath): number =>
  path.filter(({ setup }, at) => {
    const before = path[at - 1];
    return before !== undefined && (price[before.setup * count + setup] ?? 0) > 0;
  }).length;

type Fit = {
  /** The least by which it is too long between two of the order; Infinity: no drive is known anywhere. */
  readonly shortByMin: number;
  /** Set where it would fit in if a drive that is not known took no time. */
  readonly missing: LeftBecause | null;
};

function bestFit(table: OrderTable, path: OrderPath, left: number): Fit {
  const { setups, moves, firstSlot, to } = table;
  const own = setups[left];
  if (own === undefined) return { shortByMin: Infinity, missing: null };
  const play = playOf(table, path);
  const stepMin = START_STEP_MIN;
  let shortByMin = Infinity;
  let missing: LeftBecause | null = null;
  for (let at = 0; at <= path.length; at += 1) {
    const before = setups[path[at - 1]?.setup ?? -1];
    const after = setups[path[at]?.setup ?? -1];
    const reached = before === undefined ? null : moves.moveMin(before, own);
    const onward = after === undefined ? null : moves.moveMin(own, after);
    const ready =
      before === undefined
        ? 0
        : slotsFrom(
            moves.workedMin(
              stepMin * (firstSlot + (play.earliest[at - 1] ?? 0)) + moves.shootMin(before),
              reached ?? 0,
            ),
          ) - firstSlot;
    const start = allowedFrom(table, left, ready);
    const free =
      after === undefined || start < 0
        ? 0
        : slotsFrom(
            moves.workedMin(stepMin * (firstSlot + start) + moves.shootMin(own), onward ?? 0),
          ) -
          firstSlot -
          (play.latest[at] ?? 0);
    const shortMin = stepMin * (start < 0 ? ready - (to[left] ?? 0) : Math.max(0, free));
    const gap =
      before !== undefined && reached === null
        ? { fromSpotId: before.spotId, toSpotId: own.spotId }
        : after !== undefined && onward === null
          ? { fromSpotId: own.spotId, toSpotId: after.spotId }
          : null;
    if (gap === null) shortByMin = Math.min(shortByMin, shortMin);
    else if (shortMin <= 0) missing ??= { kind: 'travel-missing', ...gap };
  }
  return { shortByMin, missing };
}
