import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { OrderQuestion, OrderSetup } from '../../../src/core/plan/order-day.ts';
import { bestOrder, bestOrderInSteps } from '../../../src/core/plan/order.ts';
import { orderByBruteForce } from '../../support/order-by-brute-force.ts';
import { crowdedDay, DAY_START_MS, minMs } from '../../support/order-days.ts';
import { runThrough } from '../../support/run-through.ts';
import { seededRandom } from '../../support/seeded-framings.ts';

/** Times with no build and no strike, so that a trap can be worked on paper. */
const setup = (id: string, given: Partial<OrderSetup> = {}): OrderSetup => ({
  id,
  spotId: 'pier',
  buildMin: 0,
  shootMin: 10,
  strikeMin: 0,
  weight: 1,
  worth: [1],
  ...given,
});

/** Worth at single starts, in minutes from the day's start; nothing else is allowed. */
const worthAt = (starts: Readonly<Record<number, number>>): readonly number[] => {
  const last = Math.max(...Object.keys(starts).map(Number));
  return Array.from({ length: last / 5 + 1 }, (_, slot) => starts[5 * slot] ?? -Infinity);
};

const throughout = (fromMin: number, toMin: number, worth = 1): readonly number[] =>
  Array.from({ length: toMin / 5 + 1 }, (_, slot) => (5 * slot >= fromMin ? worth : -Infinity));

const day = (
  minutes: number,
  setups: readonly OrderSetup[],
  more: Partial<OrderQuestion> = {},
): OrderQuestion => ({
  startMs: DAY_START_MS,
  endMs: minMs(minutes),
  setups,
  travelMin: {},
  ...more,
});

const startsOf = (question: OrderQuestion): Readonly<Record<string, number>> =>
  Object.fromEntries(
    bestOrder(question).order.map(({ id, startMs }) => [id, (startMs - DAY_START_MS) / 60_000]),
  );

describe('traps, made by hand, in which the nearest good thing is wrong', () => {
  test('the window that opens first is passed over for the one sunset allows', () => {
    // Wall 0–30 for 30 min worth 2, then nothing can be at the pier at 20, which is worth 5.
    const question = day(60, [
      setup('wall', { shootMin: 30, worth: throughout(0, 30, 2) }),
      setup('sunset', { worth: worthAt({ 20: 5 }) }),
    ]);
    // Sunset 20–30, wall 30–60: 7, where earliest window first has wall 0–30 and 2 alone.
    expect(startsOf(question)).toEqual({ sunset: 20, wall: 30 });
    expect(bestOrder(question).worth).toBe(7);
  });

  test('two small pictures beat the one that is worth most by itself', () => {
    // Large 0–40 worth 5 fills the day; 3 + 3 = 6.
    const question = day(40, [
      setup('large', { shootMin: 40, worth: [5] }),
      setup('one', { shootMin: 20, worth: throughout(0, 20, 3) }),
      setup('other', { shootMin: 20, worth: throughout(0, 20, 3) }),
    ]);
    expect(Object.keys(startsOf(question)).toSorted()).toEqual(['one', 'other']);
  });

  test('a worse minute for the first picture lets two more follow', () => {
    // At 10 it brings 4 and is over at 20, too late for the second: 4 + 2 = 6. At 0: 3 + 2 + 2 = 7.
    const question = day(40, [
      setup('first', { worth: worthAt({ 0: 3, 10: 4 }) }),
      setup('second', { worth: worthAt({ 15: 2 }) }),
      setup('third', { worth: worthAt({ 25: 2 }) }),
    ]);
    expect(startsOf(question)).toEqual({ first: 0, second: 15, third: 25 });
  });

  test('the near spot first, or its light is gone, though the far one is worth more', () => {
    // Drive 30 either way, 10 to shoot. Far first: 0–10, then near at 40, allowed until 20: 5.
    // Near first: 0–10, far at 40: 1 + 5 = 6.
    const question = day(
      60,
      [
        setup('far', { spotId: 'cliff', worth: throughout(0, 45, 5) }),
        setup('near', { worth: throughout(0, 20) }),
      ],
      { travelMin: { pier: { cliff: 30 }, cliff: { pier: 30 } } },
    );
    expect(startsOf(question)).toEqual({ near: 0, far: 40 });
  });

  test('a way that is longer back than there is gone once, in the short direction', () => {
    const question = day(
      60,
      [
        setup('up', { spotId: 'hill', worth: throughout(0, 50) }),
        setup('down', { worth: throughout(0, 50) }),
      ],
      { travelMin: { pier: { hill: 45 }, hill: { pier: 15 } } },
    );
    // Up 0–10, drive 15, down at 25; the other way round it would be 55, past its last start.
    expect(startsOf(question)).toEqual({ up: 0, down: 25 });
  });

  test('a must-have worth little is placed before others worth much', () => {
    const question = day(20, [
      setup('must', { worth: worthAt({ 5: 0.1 }), mustHave: true }),
      setup('rich', { shootMin: 20, worth: [100] }),
    ]);
    expect(startsOf(question)).toEqual({ must: 5 });
  });
});

/** First frame of a setup at the cliff after one at the pier, 40 min by car. */
const startAfter = (
  more: Partial<OrderQuestion>,
  one: Partial<OrderSetup> = {},
): number | undefined =>
  startsOf(
    day(
      600,
      [
        setup('one', { buildMin: 20, strikeMin: 15, worth: throughout(0, 120, 9), ...one }),
        setup('two', {
          spotId: 'cliff',
          buildMin: 25,
          worth: throughout(125, 500).map((worth, slot) => worth - slot / 1e4),
          ...(one.sharedKit && { sharedKit: one.sharedKit }),
          ...(one.kitKg !== undefined && { kitKg: one.kitKg }),
        }),
      ],
      { travelMin: { pier: { cliff: 40 } }, ...more },
    ),
  )['two'];

describe('a move', () => {
  const late = { worth: worthAt({ 120: 9 }) };

  test('is strike, drive and build: last frame at 130, 15 + 40 + 25 min, first frame at 210', () => {
    expect(startAfter({}, late)).toBe(210);
  });

  test('has a trip on foot at either end: 5 and 7 min more, so the first frame is at 225', () => {
    // 130 + 15 + 5 + 40 + 7 + 25 = 222, on the grid 225.
    expect(startAfter({ walkInMin: { pier: 5, cliff: 7 } }, late)).toBe(225);
  });

  test('50 kg at 20 kg a trip are three trips there and two back, five walks at either end', () => {
    // 130 + 15 + 5 × 5 + 40 + 5 × 7 + 25 = 270.
    expect(
      startAfter({ walkInMin: { pier: 5, cliff: 7 }, crewCarryKg: 20 }, { ...late, kitKg: 50 }),
    ).toBe(270);
  });

  test('costs what a shared piece takes to be taken over', () => {
    expect(startAfter({ sharedKitMin: { octabox: 10 } }, { ...late, sharedKit: ['octabox'] })).toBe(
      220,
    );
  });

  test('takes a fifth longer with a fifth of slack, the shooting too', () => {
    // 120 + 1.2 × (10 + 15 + 40 + 25) = 228, on the grid 230.
    expect(startAfter({ slackShare: 0.2 }, late)).toBe(230);
  });

  test('rests in a break: half an hour at noon comes on top', () => {
    expect(startAfter({ breaks: [{ startMs: minMs(150), endMs: minMs(180) }] }, late)).toBe(240);
  });

  test('waits for the break that is due after the setup before', () => {
    expect(startAfter({}, { ...late, breakAfterMin: 20 })).toBe(230);
  });
});

describe('the day has ends', () => {
  test('the first setup is built after the start, or driven to from the base first', () => {
    const one = setup('one', {
      buildMin: 20,
      worth: throughout(0, 100).map((w, s) => w - s / 100),
    });
    expect(startsOf(day(200, [one]))).toEqual({ one: 20 });
    expect(
      startsOf(day(200, [one], { baseSpotId: 'studio', travelMin: { studio: { pier: 25 } } })),
    ).toEqual({ one: 45 });
  });

  test('the last is struck by the latest wrap', () => {
    const rising = Array.from({ length: 30 }, (_, slot) => slot);
    const question = day(100, [setup('one', { strikeMin: 15, worth: rising })]);
    // 100 − 15 − 10 = 75.
    expect(startsOf(question)).toEqual({ one: 75 });
  });

  test('midnight is a minute like any other: of a window from 23:50 to 00:20 the best is its end', () => {
    const tenAtNight = Date.UTC(2027, 4, 14, 22);
    const stars = setup('stars', {
      buildMin: 20,
      worth: throughout(110, 140).map((worth, slot) => worth + slot / 100),
    });
    const { order } = bestOrder({
      ...day(0, [stars]),
      startMs: tenAtNight,
      endMs: Date.UTC(2027, 4, 15, 2),
    });
    expect(order).toEqual([{ id: 'stars', startMs: Date.UTC(2027, 4, 15, 0, 20) }]);
  });

  test('nobody shoots in a break', () => {
    const falling = throughout(0, 60).map((worth, slot) => worth - slot / 100);
    const question = day(100, [setup('one', { worth: falling })], {
      breaks: [{ startMs: minMs(5), endMs: minMs(35) }],
    });
    expect(startsOf(question)).toEqual({ one: 35 });
  });
});

const smallDay = fc
  .record({
    seed: fc.integer({ min: 1, max: 1e9 }),
    setups: fc.constant(7),
    spots: fc.integer({ min: 1, max: 4 }),
    hours: fc.constantFrom(1.5, 2),
    longestShootMin: fc.constantFrom(10, 20, 50),
  })
  .map(({ seed, ...size }) => crowdedDay(size, seededRandom(seed)));

const mustsIn = (chosen: readonly OrderSetup[]): number =>
  chosen.filter(({ mustHave }) => mustHave).length;

const SEED = 20_270_514;
/** Sums of seven worths of 1 to 10 round off by less than 1e-13. */
const ROUNDING = 1e-9;

describe('every order, tried one by one', () => {
  test('is worth no more, and is over no earlier, in 200 random days of seven', () => {
    fc.assert(
      fc.property(smallDay, (question) => {
        const tried = orderByBruteForce(question);
        const found = bestOrder(question);
        expect(found.proven).toBe(true);
        expect(Math.abs(found.worth - tried.worth)).toBeLessThan(ROUNDING);
        expect(((found.endMs ?? question.startMs) - question.startMs) / 60_000).toBe(tried.endMin);
      }),
      { numRuns: 200, seed: SEED },
    );
  }, 120_000);

  test('holds no more must-haves, nor more worth beside them, in 40 random days of six', () => {
    const withMusts = fc.tuple(
      fc
        .integer({ min: 1, max: 1e9 })
        .map((seed) =>
          crowdedDay({ setups: 6, spots: 3, hours: 2, longestShootMin: 30 }, seededRandom(seed)),
        ),
      fc.subarray([0, 1, 2, 3, 4, 5], { minLength: 1, maxLength: 3 }),
    );
    fc.assert(
      fc.property(withMusts, ([plain, musts]) => {
        const setups = plain.setups.map((one, at) => ({ ...one, mustHave: musts.includes(at) }));
        const question = { ...plain, setups };
        const most = Math.max(
          ...Array.from({ length: musts.length + 1 }, (_, count) => count).filter(
            (count) =>
              orderByBruteForce(question, (chosen) => mustsIn(chosen) === count).worth > -Infinity,
          ),
        );
        const tried = orderByBruteForce(question, (chosen) => mustsIn(chosen) === most);
        const found = bestOrder(question);
        const placed = new Set(found.order.map(({ id }) => id));
        expect(setups.filter(({ id, mustHave }) => mustHave && placed.has(id)).length).toBe(most);
        expect(Math.abs(found.worth - tried.worth)).toBeLessThan(ROUNDING);
      }),
      { numRuns: 40, seed: SEED },
    );
  }, 120_000);
});

const anyDay = fc
  .record({
    seed: fc.integer({ min: 1, max: 1e9 }),
    setups: fc.integer({ min: 1, max: 10 }),
    spots: fc.integer({ min: 1, max: 5 }),
    hours: fc.constantFrom(3, 6, 9),
    longestShootMin: fc.constantFrom(20, 50),
  })
  .map(({ seed, ...size }) => crowdedDay(size, seededRandom(seed)));

describe('laws of an order', () => {
  test('two setups never overlap, and no move is shorter than strike, drive and build', () => {
    fc.assert(
      fc.property(anyDay, (question) => {
        const { order, left } = bestOrder(question);
        expect(order.length + left.length).toBe(question.setups.length);
        const of = new Map(question.setups.map((one) => [one.id, one]));
        const travel = question.travelMin as Record<string, Record<string, number>>;
        let freeMin = 0;
        let spot: string | null = null;
        for (const { id, startMs } of order) {
          const one = of.get(id);
          if (one === undefined) throw new Error(id);
          const startMin = (startMs - question.startMs) / 60_000;
          const drive = spot === null ? 0 : (travel[spot]?.[one.spotId] ?? Infinity);
          expect(startMin).toBeGreaterThanOrEqual(freeMin + drive + one.buildMin);
          expect(startMin % 5).toBe(0);
          expect(one.worth[startMin / 5]).toBeGreaterThan(-Infinity);
          freeMin = startMin + one.shootMin + one.strikeMin;
          spot = one.spotId;
        }
        expect(freeMin).toBeLessThanOrEqual((question.endMs - question.startMs) / 60_000);
      }),
      { numRuns: 100, seed: SEED },
    );
  });

  test('one more setup that brings something never lowers the worth of a day', () => {
    fc.assert(
      fc.property(anyDay, (question) => {
        const fewer = { ...question, setups: question.setups.slice(1) };
        expect(bestOrder(question).worth).toBeGreaterThanOrEqual(bestOrder(fewer).worth - ROUNDING);
      }),
      { numRuns: 60, seed: SEED },
    );
  });

  test('weights all times as large make the worth so much larger and leave the order', () => {
    fc.assert(
      fc.property(anyDay, fc.constantFrom(0.25, 2, 8), (question, times) => {
        const setups = question.setups.map((one) => ({ ...one, weight: times * one.weight }));
        const [plain, scaled] = [bestOrder(question), bestOrder({ ...question, setups })];
        expect(scaled.worth).toBeCloseTo(times * plain.worth, 9);
        expect(scaled.order).toEqual(plain.order);
      }),
      { numRuns: 60, seed: SEED },
    );
  });

  test('the sum of weight × worth over the order is the worth that is told', () => {
    fc.assert(
      fc.property(anyDay, (question) => {
        const { order, worth } = bestOrder(question);
        const of = new Map(question.setups.map((one) => [one.id, one]));
        const sum = order.reduce((total, { id, startMs }) => {
          const one = of.get(id);
          return (
            total + (one?.weight ?? NaN) * (one?.worth[(startMs - question.startMs) / 3e5] ?? NaN)
          );
        }, 0);
        expect(Math.abs(sum - worth)).toBeLessThan(ROUNDING);
      }),
      { numRuns: 60, seed: SEED },
    );
  });

  test('of two starts worth the same the earlier is taken, and of two orders that over earlier', () => {
    expect(startsOf(day(100, [setup('one', { worth: throughout(20, 80) })]))).toEqual({ one: 20 });
    const question = day(100, [
      setup('long', { shootMin: 20, strikeMin: 0, worth: throughout(0, 60) }),
      setup('short', { shootMin: 10, strikeMin: 10, worth: throughout(0, 60) }),
    ]);
    const apart = {
      ...question,
      setups: question.setups.map((one) => ({ ...one, spotId: one.id })),
      travelMin: { long: { short: 15 }, short: { long: 5 } },
    };
    // Long first: 20 + 15 = 35, short 35–45, struck 55. Short first: struck 20, + 5, long 25–45.
    expect(startsOf(apart)).toEqual({ short: 0, long: 25 });
  });
});

describe('work in steps', () => {
  test('tells how far it is, from 0 up to 1, and answers as the plain function', () => {
    const question = crowdedDay(
      { setups: 11, spots: 4, hours: 10, longestShootMin: 50 },
      seededRandom(3),
    );
    const { answer, steps } = runThrough(bestOrderInSteps(question));
    expect(answer).toEqual(bestOrder(question));
    expect(steps.length).toBeGreaterThan(20);
    expect(steps.every((share, at) => share >= (steps[at - 1] ?? 0) && share <= 1)).toBe(true);
  });

  test('a question and its answer can cross to a worker', () => {
    const question = crowdedDay(
      { setups: 5, spots: 2, hours: 4, longestShootMin: 50 },
      seededRandom(5),
    );
    expect(bestOrder(structuredClone(question))).toEqual(structuredClone(bestOrder(question)));
  });
});
