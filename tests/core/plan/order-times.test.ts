import { describe, expect, test } from 'vitest';
import type { OrderQuestion, OrderSetup } from '../../../src/core/plan/order-day.ts';
import { setupTimes } from '../../../src/core/plan/order-times.ts';
import { bestOrder } from '../../../src/core/plan/order.ts';
import { crowdedDay, DAY_START_MS, minMs } from '../../support/order-days.ts';
import { seededRandom } from '../../support/seeded-framings.ts';

const throughout = (fromMin: number, toMin: number): readonly number[] =>
  Array.from({ length: toMin / 5 + 1 }, (_, slot) => (5 * slot >= fromMin ? 1 : -Infinity));

const setup = (id: string, given: Partial<OrderSetup>): OrderSetup => ({
  id,
  spotId: 'pier',
  buildMin: 20,
  shootMin: 30,
  strikeMin: 10,
  weight: 1,
  worth: throughout(0, 300),
  ...given,
});

/** Pier, 5 min on foot, then 40 min by car to the cliff, 5 min on foot: a move of 80 min. */
const twoSpots = (pier: Partial<OrderSetup>, more: Partial<OrderQuestion> = {}): OrderQuestion => ({
  startMs: DAY_START_MS,
  endMs: minMs(400),
  setups: [setup('pier', pier), setup('cliff', { spotId: 'cliff', weight: 5 })],
  travelMin: { pier: { cliff: 40 }, cliff: { pier: 40 } },
  walkInMin: { pier: 5, cliff: 5 },
  ...more,
});

const PLACED = [
  { id: 'cliff', startMs: minMs(200) },
  { id: 'pier', startMs: minMs(60) },
];

const inMinutes = (ms: number | null): number | null =>
  ms === null ? null : (ms - DAY_START_MS) / 60_000;

const timesOf = (question: OrderQuestion): Readonly<Record<string, readonly (number | null)[]>> =>
  Object.fromEntries(
    setupTimes(question, PLACED).map((times) => [
      times.id,
      [
        times.arriveMs,
        times.standsUpMs,
        times.headsOffMs,
        times.firstFrameMs,
        times.lastFrameMs,
        times.struckMs,
        times.leaveMs,
        times.leaveByMs,
      ].map(inMinutes),
    ]),
  );

describe('counted backward from the first frame and on from it', () => {
  test('arrive, stands up, heads off, first and last frame, struck, leave, leave by', () => {
    expect(timesOf(twoSpots({}))).toEqual({
      // 60 − 20 − 5, 60 − 20, 60 − 5, 60, + 30, + 10, + 5; at the cliff by 200 − 20 − 5 − 40.
      pier: [35, 40, 55, 60, 90, 100, 105, 135],
      cliff: [175, 180, 195, 200, 230, 240, 245, null],
    });
  });

  test('a fifth of slack begins earlier and ends later by a fifth of each', () => {
    expect(timesOf(twoSpots({}, { slackShare: 0.2 }))['pier']).toEqual([
      30, 36, 55, 60, 96, 108, 114, 122,
    ]);
  });

  test('a break of 10 min in the build puts the stands up 10 min earlier', () => {
    const breaks = [{ startMs: minMs(45), endMs: minMs(55) }];
    expect(timesOf(twoSpots({}, { breaks }))['pier']?.slice(0, 4)).toEqual([25, 30, 55, 60]);
  });

  test('a second setup at the same spot is not carried in again, nor the first one out', () => {
    const question = twoSpots({});
    const here = question.setups.map((one) => ({ ...one, spotId: 'pier' }));
    const times = timesOf({ ...question, setups: here });
    expect(times['pier']?.slice(5)).toEqual([100, 100, 180]);
    expect(times['cliff']?.slice(0, 2)).toEqual([180, 180]);
  });

  test('times of a proposed order follow one another without a gap in time turned back', () => {
    const question = crowdedDay(
      { setups: 10, spots: 4, hours: 10, longestShootMin: 40 },
      seededRandom(11),
    );
    const times = setupTimes(question, bestOrder(question).order);
    expect(times.length).toBeGreaterThan(4);
    for (const [at, one] of times.entries()) {
      const line = [
        times[at - 1]?.leaveMs ?? question.startMs,
        one.arriveMs,
        one.standsUpMs,
        one.headsOffMs,
        one.firstFrameMs,
        one.lastFrameMs,
        one.struckMs,
        one.leaveMs,
        one.leaveByMs ?? question.endMs,
      ];
      expect(line).toEqual(line.toSorted((first, second) => first - second));
      expect(one.cut?.allUntilMs).toBeGreaterThanOrEqual(one.firstFrameMs);
      expect(one.cut?.cutAfterMs).toBeGreaterThanOrEqual(one.firstFrameMs);
      expect(one.cut?.goesFirst.length).toBeGreaterThan(0);
    }
  });
});

const cutOf = (question: OrderQuestion): unknown => {
  const cut = setupTimes(question, PLACED).find(({ id }) => id === 'pier')?.cut;
  return (
    cut && {
      allUntil: inMinutes(cut.allUntilMs),
      goesFirst: cut.goesFirst,
      cutAfter: inMinutes(cut.cutAfterMs),
    }
  );
};

describe('when a first frame is late', () => {
  test('all stands up to the end of its own window, after which it goes itself', () => {
    // At 120 the cliff can still be had at 120 + 30 + 80 = 230, allowed until 300.
    expect(cutOf(twoSpots({ worth: throughout(0, 120) }))).toEqual({
      allUntil: 120,
      goesFirst: ['pier'],
      cutAfter: 120,
    });
  });

  test('after 190 the cliff, 110 min on, would be past 300: the pier goes, worth 1 against 5', () => {
    // Without a frame at the pier the cliff is 80 min away: 195 + 80 = 275.
    expect(cutOf(twoSpots({}))).toEqual({ allUntil: 190, goesFirst: ['pier'], cutAfter: 190 });
  });

  test('worth 9 against 5 the cliff goes first, and the pier only when its own window ends', () => {
    expect(cutOf(twoSpots({ weight: 9 }))).toEqual({
      allUntil: 190,
      goesFirst: ['cliff'],
      cutAfter: 300,
    });
  });

  test('a must-have is kept whatever the other is worth', () => {
    expect(cutOf(twoSpots({ mustHave: true }))).toMatchObject({
      goesFirst: ['cliff'],
      cutAfter: 300,
    });
  });

  test('an order that cannot be done has no such minute', () => {
    const question = twoSpots({}, { travelMin: {} });
    expect(setupTimes(question, PLACED).map(({ cut }) => cut)).toEqual([null, null]);
  });
});
