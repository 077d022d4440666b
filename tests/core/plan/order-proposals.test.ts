import { describe, expect, test } from 'vitest';
import type { OrderQuestion, OrderSetup } from '../../../src/core/plan/order-day.ts';
import {
  orderProposals,
  orderProposalsInSteps,
  type OrderProposal,
  type ProposalKind,
} from '../../../src/core/plan/order-proposals.ts';
import { crowdedDay, DAY_START_MS, minMs } from '../../support/order-days.ts';
import { runThrough } from '../../support/run-through.ts';
import { seededRandom } from '../../support/seeded-framings.ts';

const between = (fromMin: number, toMin: number): readonly number[] =>
  Array.from({ length: toMin / 5 + 1 }, (_, slot) => (5 * slot >= fromMin ? 1 : -Infinity));

const setup = (
  id: string,
  given: Pick<OrderSetup, 'spotId' | 'weight' | 'worth'> & Partial<OrderSetup>,
): OrderSetup => ({ id, buildMin: 0, shootMin: 20, strikeMin: 0, ...given });

/** Pier, cliff, pier again, 20 min apart. */
const DAY: OrderQuestion = {
  startMs: DAY_START_MS,
  endMs: minMs(300),
  setups: [
    setup('first', { spotId: 'pier', weight: 2, worth: between(0, 20), mustHave: true }),
    setup('cliff', { spotId: 'cliff', weight: 3, worth: between(40, 60) }),
    setup('last', { spotId: 'pier', weight: 1, worth: between(80, 200) }),
  ],
  travelMin: { pier: { cliff: 20 }, cliff: { pier: 20 } },
};

const of = (proposals: readonly OrderProposal[], kind: ProposalKind): OrderProposal => {
  const found = proposals.find(({ kinds }) => kinds.includes(kind));
  if (found === undefined) throw new Error(`no proposal is ${kind}`);
  return found;
};

const startsOf = ({ order }: OrderProposal): Readonly<Record<string, number>> =>
  Object.fromEntries(order.map(({ id, startMs }) => [id, (startMs - DAY_START_MS) / 60_000]));

describe('proposals for one day', () => {
  const proposals = orderProposals(DAY);

  test('the best keeps a fifth of slack: 20 and 20 min are reckoned as 48', () => {
    // First 0–24, drive until 48, cliff at 50–74, drive until 98, last at 100.
    const best = of(proposals, 'best');
    expect(startsOf(best)).toEqual({ first: 0, cliff: 50, last: 100 });
    expect(best.slackShare).toBe(0.2);
    expect(best.moves).toBe(2);
    expect(best.givesUp).toEqual({ worth: 0, setups: [] });
    expect(proposals[0]).toBe(best);
  });

  test('without slack all comes sooner', () => {
    expect(startsOf(of(proposals, 'no-slack'))).toEqual({ first: 0, cliff: 40, last: 80 });
  });

  test('the fewest moves with the must-have are none: the cliff is given up, worth 3', () => {
    const fewest = of(proposals, 'fewest-moves');
    expect(startsOf(fewest)).toEqual({ first: 0, last: 80 });
    expect(fewest.moves).toBe(0);
    expect(fewest.givesUp).toEqual({ worth: 3, setups: ['cliff'] });
  });

  test('what is left for want of moves says how many more it takes', () => {
    const setups = DAY.setups.map((one) =>
      one.id === 'cliff' ? { ...one, worth: between(40, 120) } : one,
    );
    const fewest = of(orderProposals({ ...DAY, setups }), 'fewest-moves');
    expect(fewest.left).toEqual([{ id: 'cliff', because: { kind: 'takes-moves', moves: 1 } }]);
  });

  test('with all times doubled the must-have still stands, and the cliff no more', () => {
    // First 0–40, drive until 80: past 60. The same starts as with the fewest moves.
    const slack = of(proposals, 'most-slack');
    expect(slack.slackShare).toBe(1);
    expect(slack.givesUp.setups).toEqual(['cliff']);
    expect(slack.kinds).toEqual(['most-slack', 'fewest-moves']);
  });

  test('the same pictures are kept with fewer moves, at another minute worth less', () => {
    // End brings 4 around 100 and 2 from 200; swell, at the cliff, only from 110. Best goes there
    // and back twice: 2 + 3 + 4 + 1; with both pictures of the cliff in one go: 2 + 3 + 1 + 2.
    const end = between(95, 280).map((worth, slot) =>
      5 * slot > 100 && 5 * slot < 200 ? -Infinity : 5 * slot < 200 ? worth : worth / 2,
    );
    const question = {
      ...DAY,
      setups: [
        ...DAY.setups.filter(({ id }) => id !== 'last'),
        setup('end', { spotId: 'pier', weight: 4, worth: end }),
        setup('swell', { spotId: 'cliff', weight: 1, worth: between(110, 280) }),
      ],
    };
    const found = orderProposals(question);
    const [best, fewer] = [of(found, 'best'), of(found, 'fewer-moves')];
    expect([best.moves, fewer.moves]).toEqual([3, 2]);
    expect(Object.keys(startsOf(fewer)).toSorted()).toEqual(Object.keys(startsOf(best)).toSorted());
    expect(fewer.givesUp).toEqual({ worth: 2, setups: [] });
  });

  test('a must-have that a fifth of slack pushes out is held by the one with most slack', () => {
    // Two musts: 0–20, then 20 min by car, the other at 40 and not later: no slack at all.
    const setups = DAY.setups.map((one) =>
      one.id === 'cliff' ? { ...one, worth: between(40, 40), mustHave: true } : one,
    );
    const found = orderProposals({ ...DAY, setups });
    expect(of(found, 'best').order.map(({ id }) => id)).not.toContain('first');
    const slack = of(found, 'most-slack');
    expect(slack.slackShare).toBe(0);
    expect(startsOf(slack)).toMatchObject({ first: 0, cliff: 40 });
  });

  test('the slack is the one asked for', () => {
    expect(startsOf(of(orderProposals(DAY, { slackShare: 0.25 }), 'best'))).toEqual({
      first: 0,
      cliff: 50,
      last: 100,
    });
    expect(of(orderProposals(DAY, { slackShare: 0.6 }), 'best').givesUp.setups).toEqual(['cliff']);
  });

  test('the work tells how far it is, and none gives up less than nothing', () => {
    const question = crowdedDay(
      { setups: 9, spots: 3, hours: 8, longestShootMin: 40 },
      seededRandom(9),
    );
    const { answer, steps } = runThrough(orderProposalsInSteps(question));
    expect(answer.length).toBeGreaterThan(1);
    expect(answer.every(({ givesUp }) => givesUp.worth >= 0)).toBe(true);
    expect(answer.some(({ givesUp }) => givesUp.worth === 0)).toBe(true);
    expect(steps.every((share) => share >= 0 && share <= 1)).toBe(true);
  });
});
