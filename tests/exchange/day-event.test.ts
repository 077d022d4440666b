import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { checkedDay, type DayEvent } from '../../src/exchange/day-event.ts';
import { dayArbitrary, plainEvent } from '../support/day-event-arbitrary.ts';

const problem = (...events: readonly DayEvent[]): string => {
  const day = checkedDay(events);
  if (day.ok) throw new Error('the day was taken');
  return day.problem;
};

describe('a day is told to others only when it is sound', () => {
  test.each<[string, Partial<DayEvent>, string]>([
    [
      'an end before its start',
      { endMs: Date.UTC(2027, 4, 14, 14) },
      '“Quartet on the pier”: it ends at 2027-05-14T14:00:00.000Z, before it starts at 2027-05-14T14:30:00.000Z.',
    ],
    [
      'a time that is none',
      { endMs: Number.NaN },
      '“Quartet on the pier”: expected times of the years 1900 to 2199, found NaN ms.',
    ],
    [
      'a time of another age',
      { endMs: Date.UTC(2200, 0) },
      '“Quartet on the pier”: expected times of the years 1900 to 2199, found 2200-01-01T00:00:00.000Z.',
    ],
    [
      'a zone that is none',
      { zone: 'Europe/Nowhere' },
      '“Quartet on the pier”: expected a time zone such as Europe/Rome, found “Europe/Nowhere”.',
    ],
    [
      'a place that is none',
      { position: { latitudeDeg: 45, longitudeDeg: 190 } },
      '“Quartet on the pier”: expected a latitude of −90° to 90° and a longitude of −180° to 180°, found 45° and 190°.',
    ],
    [
      'an id with a line end',
      { id: 'a\r\nb', title: '' },
      'The entry a\r\nb: expected an id of up to 80 letters, digits, - and _, found “a\r\nb”.',
    ],
    [
      'an id that every object answers to',
      { id: '__proto__' },
      '“Quartet on the pier”: expected an id of up to 80 letters, digits, - and _, found “__proto__”.',
    ],
  ])('%s', (_, changes, words) => {
    expect(problem(plainEvent(changes))).toBe(words);
  });

  test('two entries of one id', () => {
    expect(problem(plainEvent(), plainEvent({ title: 'Other' }))).toBe(
      '“Other”: the id pier-shoot is that of another entry; expected one of its own.',
    );
  });

  test('sound entries come in the order of the day, none lost', () => {
    fc.assert(
      fc.property(dayArbitrary(), (events) => {
        const day = checkedDay(events);
        if (!day.ok) throw new Error(day.problem);
        expect(new Set(day.value)).toEqual(new Set(events));
        const starts = day.value.map(({ startMs }) => startMs);
        expect(starts).toEqual(starts.toSorted((one, other) => one - other));
      }),
    );
  });
});
