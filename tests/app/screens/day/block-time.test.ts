import { describe, expect, test } from 'vitest';
import {
  blockFields,
  blockSpanText,
  blockTime,
  movedBlock,
  snapped,
  stretchedBlock,
} from '../../../../src/app/screens/day/block-time.ts';
import { dayBoundsMs } from '../../../../src/core/units/civil-time.ts';

const ROME = 'Europe/Rome';
const MINUTE_MS = 60_000;
const at = (iso: string): number => Date.parse(iso);

describe('a block stands where the clocks of its spot show its start', () => {
  test('20:00 in Rome in May is 18:00 UTC', () => {
    const block = blockTime({ startClock: '20:00', durationMin: 40 }, '2027-05-14', ROME);
    expect(block.startMs).toBe(at('2027-05-14T18:00Z'));
    expect(blockSpanText(block, ROME)).toBe('20:00 to 20:40');
    expect(blockFields(block, ROME)).toEqual({ startClock: '20:00', durationMin: 40 });
  });

  // Clocks in Italy go from 02:00 to 03:00 on 28 March 2027 (last Sunday of March, directive 2000/84/EC).
  test('a start that the clocks skip counts on from midnight: 02:30 is half past three', () => {
    const block = blockTime({ startClock: '02:30', durationMin: 30 }, '2027-03-28', ROME);
    expect(block.startMs).toBe(at('2027-03-28T01:30Z'));
    expect(blockFields(block, ROME).startClock).toBe('03:30');
  });

  // They go back from 03:00 to 02:00 on 31 October 2027.
  test('on a day of 25 hours a start after the change is nine hours after midnight at 08:00', () => {
    const block = blockTime({ startClock: '08:00', durationMin: 30 }, '2027-10-31', ROME);
    expect(block.startMs - dayBoundsMs('2027-10-31', ROME).startMs).toBe(9 * 60 * MINUTE_MS);
  });
});

describe('a block moves and stretches inside its date', () => {
  const day = dayBoundsMs('2027-05-14', ROME);
  const block = blockTime({ startClock: '20:00', durationMin: 40 }, '2027-05-14', ROME);

  test('five minutes later is five minutes later, as long as before', () => {
    expect(movedBlock(block, 5, day)).toEqual({
      startMs: block.startMs + 5 * MINUTE_MS,
      durationMin: 40,
    });
  });

  test('it starts neither before midnight nor in the last five minutes', () => {
    expect(movedBlock(block, -2000, day).startMs).toBe(day.startMs);
    expect(movedBlock(block, 2000, day).startMs).toBe(day.endMs - 5 * MINUTE_MS);
  });

  test('it lasts 5 minutes at least and 12 hours at most', () => {
    expect(stretchedBlock(block, -100).durationMin).toBe(5);
    expect(stretchedBlock(block, 10).durationMin).toBe(50);
    expect(stretchedBlock(block, 5000).durationMin).toBe(720);
  });

  test('a drag ends on full five minutes of the clock', () => {
    expect(snapped(at('2027-05-14T18:02:29Z'), 5)).toBe(at('2027-05-14T18:00Z'));
    expect(snapped(at('2027-05-14T18:02:31Z'), 5)).toBe(at('2027-05-14T18:05Z'));
  });
});
