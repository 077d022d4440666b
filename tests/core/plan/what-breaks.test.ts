import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { OrderQuestion, OrderSetup } from '../../../src/core/plan/order-day.ts';
import { bestOrder } from '../../../src/core/plan/order.ts';
import { breakSentence } from '../../../src/core/plan/what-breaks-words.ts';
import { whatBreaks } from '../../../src/core/plan/what-breaks.ts';
import { crowdedDay, DAY_START_MS, minMs } from '../../support/order-days.ts';
import { seededRandom } from '../../support/seeded-framings.ts';

const throughout = (fromMin: number, toMin: number): readonly number[] =>
  Array.from({ length: toMin / 5 + 1 }, (_, slot) => (5 * slot >= fromMin ? 1 : -Infinity));

const setup = (id: string, given: Partial<OrderSetup> = {}): OrderSetup => ({
  id,
  spotId: id,
  buildMin: 20,
  shootMin: 30,
  strikeMin: 10,
  weight: 1,
  worth: throughout(0, 300),
  ...given,
});

const question = (
  pier: Partial<OrderSetup> = {},
  more: Partial<OrderQuestion> = {},
): OrderQuestion => ({
  startMs: DAY_START_MS,
  endMs: minMs(300),
  setups: [setup('pier', pier), setup('cliff')],
  travelMin: { pier: { cliff: 40 }, cliff: { pier: 40 } },
  ...more,
});

const NAMES = { setup: (id: string) => `‘${id}’`, spot: (id: string) => `the ${id}` };

const said = (asked: OrderQuestion, starts: Readonly<Record<string, number>>): readonly string[] =>
  whatBreaks(
    asked,
    Object.entries(starts).map(([id, minutes]) => ({ id, startMs: minMs(minutes) })),
  ).map((broken) => breakSentence(broken, NAMES));

describe('an order made by hand', () => {
  test('in which all holds breaks nothing: 60 + 30, 10 + 40 + 20 to move, 160', () => {
    expect(said(question(), { pier: 60, cliff: 160 })).toEqual([]);
  });

  test.each<[string, OrderQuestion, Readonly<Record<string, number>>, string]>([
    [
      'a collision',
      question(),
      { pier: 60, cliff: 78 },
      'Starts 12 min before the last frame of ‘pier’.',
    ],
    [
      'a move too short',
      question(),
      { pier: 60, cliff: 145 },
      'The move from ‘pier’ takes 70 min, 55 min are left: 15 min short.',
    ],
    ['a start before the build', question(), { pier: 12 }, 'Starts 8 min before it can be built.'],
    [
      'a start after its window',
      question({ worth: throughout(50, 100) }),
      { pier: 118 },
      'Its needs do not allow this start; the nearest they allow is 18 min earlier.',
    ],
    [
      'a start before its window',
      question({ worth: throughout(50, 100) }),
      { pier: 30 },
      'Its needs do not allow this start; the nearest they allow is 20 min later.',
    ],
    [
      'no window at all',
      question({ worth: [] }),
      { pier: 30 },
      'Its needs allow no start in the day.',
    ],
    [
      'an end past the wrap',
      question(),
      { pier: 275 },
      'Back in the car 15 min after the latest wrap.',
    ],
    [
      'frames in a break',
      question({}, { breaks: [{ startMs: minMs(80), endMs: minMs(110) }] }),
      { pier: 60 },
      'A break takes 10 min of it.',
    ],
    [
      'a drive not known',
      question({}, { travelMin: {} }),
      { pier: 60, cliff: 200 },
      'Travel time missing from the pier to the cliff.',
    ],
    [
      'a must-have not placed',
      question({ mustHave: true }),
      { cliff: 60 },
      '‘pier’ is a must-have and not placed.',
    ],
    [
      'a setup not of the day',
      question(),
      { attic: 60 },
      '‘attic’: found no such setup with a start in this day.',
    ],
    [
      'a duration of nothing',
      question({ shootMin: 0 }),
      { pier: 60 },
      '‘pier’: duration: found 0 min, expected more than 0; it is left out.',
    ],
    [
      'a day turned round',
      question({}, { endMs: minMs(-60) }),
      { pier: 60 },
      'Day: found −1 h from start to latest wrap, expected more than 0 and at most 48 h.',
    ],
  ])('%s is named with by how much', (_, asked, starts, sentence) => {
    expect(said(asked, starts)).toEqual([sentence]);
  });

  test('one setup twice is named, and its copies collide', () => {
    const twice = [60, 70].map((minutes) => ({ id: 'pier', startMs: minMs(minutes) }));
    expect(whatBreaks(question(), twice).map(({ kind }) => kind)).toEqual([
      'placed-twice',
      'collision',
    ]);
  });

  test('a start that is no time is named', () => {
    expect(whatBreaks(question(), [{ id: 'pier', startMs: Number.NaN }])).toEqual([
      { kind: 'not-in-the-day', id: 'pier' },
    ]);
  });
});

const anyDay = fc
  .record({
    seed: fc.integer({ min: 1, max: 1e9 }),
    setups: fc.integer({ min: 2, max: 9 }),
    spots: fc.integer({ min: 1, max: 4 }),
    hours: fc.constantFrom(4, 8),
    longestShootMin: fc.constantFrom(20, 45),
  })
  .map(({ seed, ...size }) => crowdedDay(size, seededRandom(seed)));

test('a proposed order breaks nothing, with walks, loads, breaks, shared kit and slack', () => {
  fc.assert(
    fc.property(anyDay, fc.constantFrom(0, 0.2, 0.5), (plain, slackShare) => {
      const asked: OrderQuestion = {
        ...plain,
        setups: plain.setups.map((one, at) => ({
          ...one,
          kitKg: 10 * at,
          sharedKit: at % 2 === 0 ? ['octabox'] : [],
          breakAfterMin: at % 3 === 0 ? 10 : 0,
        })),
        walkInMin: { 'spot 0': 3, 'spot 1': 6 },
        crewCarryKg: 25,
        sharedKitMin: { octabox: 5 },
        breaks: [{ startMs: minMs(100), endMs: minMs(130) }],
        slackShare,
      };
      expect(whatBreaks(asked, bestOrder(asked).order)).toEqual([]);
    }),
    { numRuns: 60, seed: 20_270_514 },
  );
});
