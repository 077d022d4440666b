import { describe, expect, test } from 'vitest';
import type { OrderQuestion, OrderSetup } from '../../../src/core/plan/order-day.ts';
import { leftSentence, orderFaultSentence } from '../../../src/core/plan/order-words.ts';
import { bestOrder } from '../../../src/core/plan/order.ts';
import { DAY_START_MS, minMs } from '../../support/order-days.ts';

const setup = (id: string, given: Partial<OrderSetup> = {}): OrderSetup => ({
  id,
  spotId: 'pier',
  buildMin: 20,
  shootMin: 30,
  strikeMin: 10,
  weight: 1,
  worth: Array.from({ length: 40 }, () => 1),
  ...given,
});

const day = (setups: readonly OrderSetup[], more: Partial<OrderQuestion> = {}): OrderQuestion => ({
  startMs: DAY_START_MS,
  endMs: minMs(240),
  setups,
  travelMin: {},
  ...more,
});

const NAMES = { setup: (id: string) => `‘${id}’`, spot: (id: string) => `the ${id}` };

const faultsOf = (question: OrderQuestion): readonly string[] =>
  bestOrder(question).faults.map((fault) => orderFaultSentence(fault, NAMES));

describe('a figure of a setup that cannot be used leaves that setup out and says so', () => {
  test.each([
    [{ shootMin: 0 }, 'duration: found 0 min, expected more than 0'],
    [{ shootMin: -10 }, 'duration: found −10 min, expected more than 0'],
    [{ shootMin: Number.NaN }, 'duration: found no number min, expected more than 0'],
    [{ buildMin: -5 }, 'build: found −5 min, expected 0 or more'],
    [{ strikeMin: Infinity }, 'strike: found ∞ min, expected 0 or more'],
    [{ weight: -1 }, 'weight: found −1, expected 0 or more'],
    [
      { worth: [1, Number.NaN] },
      'worth: found no number among its starts, expected numbers, or −∞ where it is not allowed',
    ],
    [
      { worth: [Infinity] },
      'worth: found ∞ among its starts, expected numbers, or −∞ where it is not allowed',
    ],
    [{ kitKg: -3 }, 'kit: found −3 kg, expected 0 or more'],
    [{ breakAfterMin: -3 }, 'break after it: found −3 min, expected 0 or more'],
  ])('%o', (given, sentence) => {
    const question = day([setup('good'), setup('bad', given)]);
    const { order, left, faults } = bestOrder(question);
    expect(order.map(({ id }) => id)).toEqual(['good']);
    expect(left.map(({ because }) => leftSentence(because, NAMES))).toEqual([`${sentence}.`]);
    expect(faults.map((fault) => orderFaultSentence(fault, NAMES))).toEqual([
      `‘bad’: ${sentence}; it is left out.`,
    ]);
  });
});

describe('a day that cannot be used gives no order and says why', () => {
  test.each([
    [
      { endMs: DAY_START_MS },
      'Day: found 0 h from start to latest wrap, expected more than 0 and at most 48 h.',
    ],
    [
      { endMs: minMs(-120) },
      'Day: found −2 h from start to latest wrap, expected more than 0 and at most 48 h.',
    ],
    [
      { startMs: Number.NaN },
      'Day: found no number h from start to latest wrap, expected more than 0 and at most 48 h.',
    ],
    [
      { endMs: minMs(60 * 72) },
      'Day: found 72 h from start to latest wrap, expected more than 0 and at most 48 h.',
    ],
    [{ slackShare: -0.2 }, 'Slack: found −0.2 as the share, expected 0 or more.'],
    [{ crewCarryKg: 0 }, 'What the crew carries in one trip: found 0 kg, expected more than 0.'],
    [{ walkInMin: { pier: -4 } }, 'Walk-in to the pier: found −4 min, expected 0 or more.'],
    [
      { sharedKitMin: { octabox: Number.NaN } },
      'Taking over octabox: found no number min, expected 0 or more.',
    ],
    [
      { breaks: [{ startMs: minMs(60), endMs: minMs(30) }] },
      'Break: found one of −30 min, expected 0 or more.',
    ],
  ])('%o', (more, sentence) => {
    const { order, left, proven } = bestOrder(day([setup('one')], more));
    expect(order).toEqual([]);
    expect(left).toEqual([{ id: 'one', because: { kind: 'day-not-usable' } }]);
    expect(proven).toBe(false);
    expect(faultsOf(day([setup('one')], more))).toEqual([sentence]);
  });

  test('more than sixty setups, or one of them twice', () => {
    const many = Array.from({ length: 61 }, (_, at) => setup(`setup ${at}`));
    expect(faultsOf(day(many))).toEqual(['Setups: found 61, expected at most 60 in one day.']);
    expect(faultsOf(day([setup('one'), setup('one')]))).toEqual([
      'Setups: found ‘one’ twice, expected each once.',
    ]);
  });

  test('a day without setups has an empty order, and that is proven', () => {
    expect(bestOrder(day([]))).toMatchObject({ order: [], left: [], proven: true, worth: 0 });
  });
});

describe('travel that cannot be used is never guessed', () => {
  const apart = [
    setup('one'),
    setup('two', { spotId: 'cliff' }),
    setup('three', { spotId: 'hill' }),
  ];

  test.each([
    [{}, 'Travel time missing from the cliff to the pier: no order goes that way.'],
    [
      { pier: { cliff: 10 } },
      'Travel time missing from the cliff to the pier: only the way back has one; no order goes that way.',
    ],
    [
      { pier: { cliff: -10 }, cliff: { pier: 10 } },
      'Travel from the pier to the cliff: found −10 min, expected 0 or more; no order goes that way.',
    ],
    [
      { pier: { cliff: Number.NaN }, cliff: { pier: 10 } },
      'Travel from the pier to the cliff: found no number min, expected 0 or more; no order goes that way.',
    ],
  ])('%o', (travelMin, sentence) => {
    expect(faultsOf(day(apart.slice(0, 2), { travelMin }))).toContain(sentence);
  });

  test('a negative drive is not taken, so the order goes the way that is known', () => {
    const travelMin = { pier: { cliff: -10 }, cliff: { pier: 10 } };
    const { order } = bestOrder(day(apart.slice(0, 2), { travelMin }));
    expect(order.map(({ id }) => id)).toEqual(['two', 'one']);
  });

  test('a drive that is longer than by way of a third spot is named and taken as given', () => {
    const travelMin = {
      pier: { cliff: 60, hill: 10 },
      cliff: { pier: 20, hill: 10 },
      hill: { pier: 10, cliff: 10 },
    };
    expect(faultsOf(day(apart, { travelMin }))).toEqual([
      'Travel from the pier to the cliff: found 60 min, but by way of the hill it is 20 min; taken as given.',
    ]);
  });

  test('drives may be a function, and within a spot nothing is driven', () => {
    const question = day(apart, { travelMin: (from, to) => (from === to ? null : 5) });
    expect(faultsOf(question)).toEqual([]);
    expect(bestOrder(question).order).toHaveLength(3);
  });
});

test('weights to carry and shared pieces without their figure are named', () => {
  const shared = { sharedKit: ['octabox'], kitKg: 40 };
  const question = day([setup('one', shared), setup('two', { sharedKit: ['octabox'] })], {
    walkInMin: { pier: 5 },
  });
  expect(faultsOf(question)).toEqual([
    '‘one’: 40 kg to carry in and nothing said of what the crew carries; one trip is reckoned.',
    'octabox: used by several setups and no time given for taking it over; 0 min is reckoned.',
  ]);
});
