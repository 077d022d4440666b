import { DateTime } from 'luxon';
import { describe, expect, test } from 'vitest';

import { localTimeText } from '../../src/exchange/local-time-text.ts';

/** An instant by its clock time and offset, so that no zone has a say in it. */
const at = (iso: string): number => DateTime.fromISO(iso, { setZone: true }).toMillis();

describe('times as the clocks at the place show them', () => {
  test.each([
    [
      'an afternoon',
      '2027-05-14T16:30+02:00',
      '2027-05-14T17:10+02:00',
      'Europe/Rome',
      'Fri 14 May 2027, 16:30 to 17:10, Europe/Rome (UTC+2)',
    ],
    [
      'a moment',
      '2027-05-14T16:30+02:00',
      '2027-05-14T16:30+02:00',
      'Europe/Rome',
      'Fri 14 May 2027, 16:30, Europe/Rome (UTC+2)',
    ],
    [
      'over midnight',
      '2027-05-14T23:30+02:00',
      '2027-05-15T00:10+02:00',
      'Europe/Rome',
      'Fri 14 May 2027, 23:30 to Sat 15 May 2027, 00:10, Europe/Rome (UTC+2)',
    ],
    [
      // The last Sunday of October, 01:00 UTC: Directive 2000/84/EC.
      'forty minutes in which clocks go back an hour, so that the end stands before the start',
      '2027-10-31T02:30+02:00',
      '2027-10-31T02:10+01:00',
      'Europe/Rome',
      'Sun 31 Oct 2027, 02:30 (UTC+2) to 02:10 (UTC+1), Europe/Rome',
    ],
    [
      'the night in which clocks go forward',
      '2027-03-28T01:30+01:00',
      '2027-03-28T03:30+02:00',
      'Europe/Rome',
      'Sun 28 Mar 2027, 01:30 (UTC+1) to 03:30 (UTC+2), Europe/Rome',
    ],
    [
      'an offset of no whole hours',
      '2027-01-14T16:30-03:30',
      '2027-01-14T17:10-03:30',
      'America/St_Johns',
      'Thu 14 Jan 2027, 16:30 to 17:10, America/St_Johns (UTC−3:30)',
    ],
  ])('%s', (_, start, end, zone, words) => {
    expect(localTimeText({ startMs: at(start), endMs: at(end), zone })).toBe(words);
  });
});
