import { describe, expect, test } from 'vitest';
import type { OrderQuestion, OrderSetup } from '../../../src/core/plan/order-day.ts';
import type { LeftBecause } from '../../../src/core/plan/order-left.ts';
import { leftSentence } from '../../../src/core/plan/order-words.ts';
import { bestOrder } from '../../../src/core/plan/order.ts';
import { DAY_START_MS, minMs } from '../../support/order-days.ts';

const setup = (id: string, given: Partial<OrderSetup> = {}): OrderSetup => ({
  id,
  spotId: 'pier',
  buildMin: 20,
  shootMin: 30,
  strikeMin: 10,
  weight: 1,
  worth: throughout(0, 240),
  ...given,
});

const throughout = (fromMin: number, toMin: number, worth = 1): readonly number[] =>
  Array.from({ length: toMin / 5 + 1 }, (_, slot) => (5 * slot >= fromMin ? worth : -Infinity));

const day = (setups: readonly OrderSetup[], more: Partial<OrderQuestion> = {}): OrderQuestion => ({
  startMs: DAY_START_MS,
  endMs: minMs(240),
  setups,
  travelMin: {},
  ...more,
});

const NAMES = { setup: (id: string) => `‘${id}’`, spot: (id: string) => `the ${id}` };

const whyLeft = (question: OrderQuestion, id: string): LeftBecause | undefined =>
  bestOrder(question).left.find((one) => one.id === id)?.because;

const said = (question: OrderQuestion, id: string): string => {
  const because = whyLeft(question, id);
  return because === undefined ? 'placed' : leftSentence(because, NAMES);
};

describe('a setup that could not even be alone in the day', () => {
  test('has no allowed start', () => {
    const never = setup('blue hour', { worth: throughout(0, 240, -Infinity) });
    expect(said(day([never]), 'blue hour')).toBe('no allowed start in the day.');
    expect(said(day([setup('blue hour', { worth: [] })]), 'blue hour')).toBe(
      'no allowed start in the day.',
    );
  });

  test('may start at 15 min at the latest and takes 35 to be built: 20 min short', () => {
    const early = setup('dawn', { buildMin: 35, worth: throughout(0, 15) });
    expect(whyLeft(day([early]), 'dawn')).toEqual({ kind: 'ends-before-built', byMin: 20 });
    expect(said(day([early]), 'dawn')).toBe('its window ends 20 min before it can be built.');
  });

  test('may start at 215 at the earliest and takes 40: over 15 min after the wrap at 240', () => {
    const late = setup('dusk', { worth: throughout(215, 240) });
    expect(whyLeft(day([late]), 'dusk')).toEqual({ kind: 'past-wrap', byMin: 15 });
    expect(said(day([late]), 'dusk')).toContain('15 min after the latest wrap');
  });

  test('may start between 100 and 110 and lunch is from 120 to 150: 10 of 30 min at the least', () => {
    const noon = setup('noon', { worth: throughout(100, 110) });
    const question = day([noon], { breaks: [{ startMs: minMs(120), endMs: minMs(150) }] });
    expect(whyLeft(question, 'noon')).toEqual({ kind: 'in-a-break', byMin: 10 });
    expect(said(question, 'noon')).toBe('a break takes 10 min of it at its best start.');
  });

  test('is worth nothing at its best', () => {
    const dull = setup('dull', { worth: throughout(0, 240, -2) });
    expect(said(day([dull]), 'dull')).toBe('its best start is worth −2; expected more than 0.');
  });
});

/** Both need the quarter hour at 100. */
const rivals = (more: Partial<OrderSetup> = {}): OrderQuestion =>
  day([
    setup('rich', { weight: 12, worth: throughout(100, 115) }),
    setup('poor', { weight: 9, worth: throughout(100, 115), ...more }),
  ]);

describe('a setup that the others leave no room for', () => {
  test('is left for others worth more: 12 against 9, and 45 min too long to follow', () => {
    // Rich at 100 ends at 130, + 10 + 20 = 160; poor may start until 115.
    expect(whyLeft(rivals(), 'poor')).toEqual({
      kind: 'others-first',
      othersWorth: 12,
      ownWorth: 9,
      insteadOf: ['rich'],
      mustHavesOut: [],
      shortByMin: 45,
    });
    expect(said(rivals(), 'poor')).toBe(
      'left for others worth more (‘rich’): 12 against 9. It is 45 min too long to go between the others.',
    );
  });

  test('is told by how much the gap that comes nearest is too short: 10 min', () => {
    // One may start at 40, two at 150, three at 240: between their frames 80 and 60 min. In the
    // first gap 20 min to build, 30 to shoot, 10 to strike and 20 to build again are 80, with the
    // strike of one 90: 10 short; in the second 30 short; before the first 40, after the last 90.
    const tight = (id: string, atMin: number): OrderSetup =>
      setup(id, { weight: 9, worth: throughout(atMin, atMin) });
    const question = day(
      [tight('one', 40), tight('two', 150), tight('three', 240), setup('fourth')],
      { endMs: minMs(280) },
    );
    expect(whyLeft(question, 'fourth')).toMatchObject({ shortByMin: 10 });
  });

  test('is left for a must-have, whatever it is worth', () => {
    const question = rivals({ weight: 90 });
    const setups = question.setups.map((one) => ({ ...one, mustHave: one.id === 'rich' }));
    expect(said({ ...question, setups }, 'poor')).toContain(
      'left for must-haves that would fall out: ‘rich’.',
    );
  });

  test('is left for one worth as much that is over earlier', () => {
    expect(said(rivals({ weight: 12, strikeMin: 15 }), 'poor')).toContain(
      'left for others worth as much (‘rich’): 12 against 12, and over earlier.',
    );
  });

  test('travel time is missing, both ways or the one that would be needed', () => {
    const setups = [
      setup('one', { weight: 2, worth: throughout(0, 30) }),
      setup('other', { spotId: 'cliff', worth: throughout(120, 240) }),
    ];
    expect(said(day(setups), 'other')).toBe('travel time missing from the pier to the cliff.');
    const oneWay = day(setups, { travelMin: { cliff: { pier: 15 } } });
    expect(said(oneWay, 'other')).toBe('travel time missing from the pier to the cliff.');
    expect(bestOrder(oneWay).faults).toEqual([
      { kind: 'travel-one-way', fromSpotId: 'pier', toSpotId: 'cliff' },
    ]);
  });
});
