import {
  MS_PER_MIN,
  START_STEP_MIN,
  type OrderQuestion,
  type OrderSetup,
  type PlacedSetup,
} from './order-day.ts';
import {
  orderFaults,
  setupFaults,
  STOPS_THE_DAY,
  type OrderFault,
  type SetupFault,
} from './order-faults.ts';
import { dayMoves, type DayMoves } from './order-moves.ts';
import { MINUTE_DUST } from './order-table.ts';

/** What does not hold in an order made by hand, each by how much. */
export type Break =
  /** Frames of two at once: the one before goes on so long into it. */
  | {
      readonly kind: 'collision';
      readonly id: string;
      readonly beforeId: string;
      readonly byMin: number;
    }
  /** Between the last frame of the one before and its first lies too little for the move. */
  | {
      readonly kind: 'move-too-short';
      readonly id: string;
      readonly beforeId: string;
      readonly needMin: number;
      readonly haveMin: number;
      readonly byMin: number;
    }
  | {
      readonly kind: 'travel-missing';
      readonly id: string;
      readonly fromSpotId: string;
      readonly toSpotId: string;
    }
  /** It cannot be built so early in the day. */
  | { readonly kind: 'before-built'; readonly id: string; readonly byMin: number }
  /** Its needs do not allow the start; the nearest that they allow lies so far off, later if positive; null: none. */
  | { readonly kind: 'need'; readonly id: string; readonly nearestMin: number | null }
  | { readonly kind: 'in-a-break'; readonly id: string; readonly byMin: number }
  | { readonly kind: 'past-wrap'; readonly id: string; readonly byMin: number }
  | { readonly kind: 'must-have-left'; readonly id: string }
  | { readonly kind: 'placed-twice'; readonly id: string }
  | { readonly kind: 'not-in-the-day'; readonly id: string }
  | SetupFault
  | Extract<
      OrderFault,
      { readonly kind: 'day-not-usable' | 'figure-not-usable' | 'too-many-setups' | 'same-id' }
    >;

type Standing = { readonly setup: OrderSetup; readonly startMin: number };

/** Everything that breaks in an order made by hand, in the order of the day; its starts need not lie on the grid. */
export function whatBreaks(
  question: OrderQuestion,
  placed: readonly PlacedSetup[],
): readonly Break[] {
  const stops = orderFaults(question).filter(isStop);
  if (stops.length > 0) return stops;
  const moves = dayMoves(question);
  const setupOf = new Map(question.setups.map((setup) => [setup.id, setup]));
  const ids = placed.map(({ id }) => id);
  const known = placed.flatMap(({ id, startMs }): readonly Standing[] => {
    const setup = setupOf.get(id);
    return setup === undefined || !Number.isFinite(startMs)
      ? []
      : [{ setup, startMin: (startMs - question.startMs) / MS_PER_MIN }];
  });
  const inDay = known
    .filter(({ setup }) => setupFaults(setup).length === 0)
    .toSorted((one, other) => one.startMin - other.startMin);
  return [
    ...placed.flatMap(({ id, startMs }): readonly Break[] =>
      setupOf.has(id) && Number.isFinite(startMs) ? [] : [{ kind: 'not-in-the-day', id }],
    ),
    ...[...new Set(ids.filter((id, at) => ids.indexOf(id) !== at))].map((id): Break => ({
      kind: 'placed-twice',
      id,
    })),
    ...known.flatMap(({ setup }) => setupFaults(setup)),
    ...inDay.flatMap((standing, at) => [
      ...breaksBetween(moves, inDay[at - 1] ?? null, standing, question.baseSpotId ?? null),
      ...breaksOfOne(moves, standing),
    ]),
    ...question.setups.flatMap(({ id, mustHave }): readonly Break[] =>
      mustHave === true && !ids.includes(id) ? [{ kind: 'must-have-left', id }] : [],
    ),
  ];
}

const isStop = (fault: OrderFault): fault is Extract<Break, OrderFault> & OrderFault =>
  STOPS_THE_DAY.includes(fault.kind);

function breaksBetween(
  moves: DayMoves,
  before: Standing | null,
  { setup, startMin }: Standing,
  baseSpotId: string | null,
): readonly Break[] {
  const { id, spotId } = setup;
  if (before === null) {
    const earliestMin = moves.earliestMin(setup);
    if (earliestMin === null)
      return [{ kind: 'travel-missing', id, fromSpotId: baseSpotId ?? '', toSpotId: spotId }];
    const byMin = earliestMin - startMin;
    return byMin > MINUTE_DUST ? [{ kind: 'before-built', id, byMin }] : [];
  }
  const beforeId = before.setup.id;
  const lastFrameMin = before.startMin + moves.shootMin(before.setup);
  const overlapMin = lastFrameMin - startMin;
  const collision: readonly Break[] =
    overlapMin > MINUTE_DUST ? [{ kind: 'collision', id, beforeId, byMin: overlapMin }] : [];
  const moveMin = moves.moveMin(before.setup, setup);
  if (moveMin === null)
    return [
      ...collision,
      { kind: 'travel-missing', id, fromSpotId: before.setup.spotId, toSpotId: spotId },
    ];
  const readyMin = moves.workedMin(lastFrameMin, moveMin);
  const needMin = readyMin - lastFrameMin;
  const haveMin = startMin - lastFrameMin;
  return collision.length > 0 || needMin - haveMin <= MINUTE_DUST
    ? collision
    : [{ kind: 'move-too-short', id, beforeId, needMin, haveMin, byMin: needMin - haveMin }];
}

function breaksOfOne(moves: DayMoves, { setup, startMin }: Standing): readonly Break[] {
  const { id } = setup;
  const lateMin = moves.leaveMin(setup, startMin) - moves.dayMin;
  const restMin = moves.inBreakMin(setup, startMin);
  return [
    ...brokenNeed(setup, startMin),
    ...(restMin > MINUTE_DUST ? [{ kind: 'in-a-break', id, byMin: restMin } as const] : []),
    ...(lateMin > MINUTE_DUST ? [{ kind: 'past-wrap', id, byMin: lateMin } as const] : []),
  ];
}

/** A start between two of the grid is judged by the one before it. */
function brokenNeed({ id, worth }: OrderSetup, startMin: number): readonly Break[] {
  const slot = Math.floor(startMin / START_STEP_MIN + MINUTE_DUST);
  if ((worth[slot] ?? -Infinity) > -Infinity) return [];
  const offsMin = worth.flatMap((here, at) =>
    here > -Infinity ? [START_STEP_MIN * at - startMin] : [],
  );
  const nearestMin = offsMin.reduce<number | null>(
    (nearest, offMin) =>
      nearest === null || Math.abs(offMin) < Math.abs(nearest) ? offMin : nearest,
    null,
  );
  return [{ kind: 'need', id, nearestMin }];
}
