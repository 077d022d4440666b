import { mustHaves } from './order-aims.ts';
import type { OrderQuestion } from './order-day.ts';
import { part, runOrder } from './order-steps.ts';
import { orderFor, type DayOrder } from './order.ts';

export type ProposalKind =
  /** The most worth with the slack asked for. */
  | 'best'
  /** The most worth with no slack at all. */
  | 'no-slack'
  /** All must-haves, or without any all of the best, with as much slack as they leave. */
  | 'most-slack'
  /** What the best holds, with as few changes of spot as that allows. */
  | 'fewer-moves'
  /** As few changes of spot as the must-haves allow, and what can be had at those spots. */
  | 'fewest-moves';

export type OrderProposal = DayOrder & {
  /** All that it answers: one order may be the best and have the fewest moves. */
  readonly kinds: readonly ProposalKind[];
  /** Share by which every duration may be longer and its starts still hold. */
  readonly slackShare: number;
  /** Changes of spot. */
  readonly moves: number;
  /** Against the proposal that is worth most. */
  readonly givesUp: { readonly worth: number; readonly setups: readonly string[] };
};

export type ProposalWish = { readonly slackShare: number };

/** A fifth. */
export const USUAL_SLACK: ProposalWish = { slackShare: 0.2 };
const SLACK_STEPS_A_WHOLE = 20;
/** Twice the time for everything. */
const MOST_SLACK_STEPS = 20;

/**
 * Several orders of one day, the best first, those with the same starts as one; each with what it gives up against the one that is worth most.
 */
export const orderProposals = (
  question: OrderQuestion,
  wish: ProposalWish = USUAL_SLACK,
): readonly OrderProposal[] => runOrder(orderProposalsInSteps(question, wish));

/** The same, telling how far it is, 0 to 1. */
export function* orderProposalsInSteps(
  question: OrderQuestion,
  { slackShare }: ProposalWish = USUAL_SLACK,
): Generator<number, readonly OrderProposal[]> {
  const withSlack = (share: number): OrderQuestion => ({ ...question, slackShare: share });
  const musts = mustHaves(question);
  const best = yield* part(orderFor(withSlack(slackShare), { wanted: musts, fewestMoves: false }), {
    from: 0,
    to: 0.2,
  });
  const ofBest = new Set([...musts, ...best.order.map(({ id }) => id)]);
  const noSlack = yield* part(orderFor(withSlack(0), { wanted: musts, fewestMoves: false }), {
    from: 0.2,
    to: 0.4,
  });
  const fewer = yield* part(
    orderFor(withSlack(slackShare), { wanted: ofBest, fewestMoves: true }),
    { from: 0.4, to: 0.6 },
  );
  const fewest = yield* part(
    orderFor(withSlack(slackShare), { wanted: musts, fewestMoves: true }),
    { from: 0.6, to: 0.8 },
  );
  const wanted = musts.size > 0 ? musts : ofBest;
  const mostShare = yield* part(mostSlack(question, wanted), { from: 0.8, to: 0.9 });
  const slack =
    mostShare === null
      ? null
      : yield* part(orderFor(withSlack(mostShare), { wanted, fewestMoves: false }), {
          from: 0.9,
          to: 1,
        });
  return compared(question, [
    { kind: 'best', slackShare, found: best },
    ...(slack === null || mostShare === null
      ? []
      : [{ kind: 'most-slack', slackShare: mostShare, found: slack } as const]),
    { kind: 'fewer-moves', slackShare, found: fewer },
    { kind: 'fewest-moves', slackShare, found: fewest },
    { kind: 'no-slack', slackShare: 0, found: noSlack },
  ]);
}

/** The largest share, in steps of a twentieth, at which all wanted can be placed; null: none. */
function* mostSlack(
  question: OrderQuestion,
  wanted: ReadonlySet<string>,
): Generator<number, number | null> {
  const setups = question.setups.filter(({ id }) => wanted.has(id));
  let fits = -1;
  let tooMuch = MOST_SLACK_STEPS + 1;
  while (setups.length > 0 && tooMuch - fits > 1) {
    const step = Math.floor((fits + tooMuch) / 2);
    const slackShare = step / SLACK_STEPS_A_WHOLE;
    const { order } = yield* part(
      orderFor({ ...question, setups, slackShare }, { wanted, fewestMoves: false }),
      { from: 0, to: 1 },
    );
    if (order.length === setups.length) fits = step;
    else tooMuch = step;
  }
  return fits < 0 ? null : fits / SLACK_STEPS_A_WHOLE;
}

type Found = {
  readonly kind: ProposalKind;
  readonly slackShare: number;
  readonly found: DayOrder;
};

function compared(question: OrderQuestion, all: readonly Found[]): readonly OrderProposal[] {
  const spotOf = new Map(question.setups.map(({ id, spotId }) => [id, spotId]));
  const most = all.reduce((one, other) => (other.found.worth > one.found.worth ? other : one));
  const proposals = new Map<string, OrderProposal>();
  for (const { kind, slackShare, found } of all) {
    const starts = found.order.map(({ id, startMs }) => `${startMs} ${id}`).join('\n');
    const earlier = proposals.get(starts);
    if (earlier !== undefined) {
      const share = Math.max(earlier.slackShare, slackShare);
      proposals.set(starts, { ...earlier, kinds: [...earlier.kinds, kind], slackShare: share });
      continue;
    }
    const placed = new Set(found.order.map(({ id }) => id));
    const spots = found.order.map(({ id }) => spotOf.get(id));
    proposals.set(starts, {
      ...found,
      kinds: [kind],
      slackShare,
      moves: spots.filter((spot, at) => at > 0 && spot !== spots[at - 1]).length,
      givesUp: {
        worth: most.found.worth - found.worth,
        setups: most.found.order.flatMap(({ id }) => (placed.has(id) ? [] : [id])),
      },
    });
  }
  return [...proposals.values()];
}
