import { describe, expect, test } from 'vitest';

import { photoTakenAtMs } from '../../../src/exchange/photo/photo-time.ts';

const taken = (clockTime: string | null, zone: string): number | null =>
  photoTakenAtMs({ takenAtMs: null, clockTime }, zone);

describe('when a photo was taken', () => {
  test('the offset in the file counts before any zone', () => {
    expect(photoTakenAtMs({ takenAtMs: 5, clockTime: '2027-05-14T19:30:05' }, 'Asia/Tokyo')).toBe(
      5,
    );
  });

  // The tz database: Rome is two hours ahead of UTC in May, one in January; St John's 2.5 behind in May.
  test.each([
    ['2027-05-14T19:30:05', 'Europe/Rome', Date.UTC(2027, 4, 14, 17, 30, 5)],
    ['2027-01-14T19:30:05', 'Europe/Rome', Date.UTC(2027, 0, 14, 18, 30, 5)],
    ['2027-05-14T19:30:59', 'America/St_Johns', Date.UTC(2027, 4, 14, 22, 0, 59)],
  ])('without one, %s is on the clocks of %s', (clockTime, zone, atMs) => {
    expect(taken(clockTime, zone)).toBe(atMs);
  });

  test('a time that the zone’s clocks never show is none', () => {
    // The last Sunday of March 2027 is the 28th: 02:00 becomes 03:00 in Rome.
    expect(taken('2027-03-28T02:30:00', 'Europe/Rome')).toBeNull();
  });

  test('a photo without a time has none in any zone', () => {
    expect(taken(null, 'Europe/Rome')).toBeNull();
  });
});
