import { describe, expect, test } from 'vitest';
import { moonEvents } from '../../../src/core/sun-moon/moon-events.ts';
import { addDays, civilDateOf, dayBoundsMs } from '../../../src/core/units/civil-time.ts';
import { evenPlace, evenSpread } from '../../support/even-spread.ts';
import { largestError } from '../../support/largest-error.ts';
import { referenceMoonLimbMs } from '../../support/reference-sky.ts';

const seconds = (found: number | null, expected: string): number =>
  Math.abs((found ?? Number.NaN) - Date.parse(expected)) / 1000;

describe('moonrise and moonset agree with astronomy-engine and PyEphem, which agree to 1 s', () => {
  test('London, 2025-01-13', () => {
    const events = moonEvents({
      date: '2025-01-13',
      zone: 'Europe/London',
      place: { latitudeDeg: 51.5, longitudeDeg: -0.1257 },
    });
    expect(seconds(events.moonriseMs, '2025-01-13T15:21:42Z')).toBeLessThan(15);
    expect(seconds(events.moonsetMs, '2025-01-13T08:20:45Z')).toBeLessThan(15);
  });

  test('Sydney, 2025-10-07, whose moonset falls on the UTC day before', () => {
    const events = moonEvents({
      date: '2025-10-07',
      zone: 'Australia/Sydney',
      place: { latitudeDeg: -33.8688, longitudeDeg: 151.2093 },
    });
    expect(seconds(events.moonsetMs, '2025-10-06T19:06:59Z')).toBeLessThan(15);
    expect(seconds(events.moonriseMs, '2025-10-07T08:13:44Z')).toBeLessThan(15);
  });

  test('New York, 2025-03-14', () => {
    const events = moonEvents({
      date: '2025-03-14',
      zone: 'America/New_York',
      place: { latitudeDeg: 40.7128, longitudeDeg: -74.006 },
    });
    expect(seconds(events.moonsetMs, '2025-03-14T11:17:53Z')).toBeLessThan(15);
    expect(seconds(events.moonriseMs, '2025-03-14T23:37:35Z')).toBeLessThan(15);
  });
});

describe('over 300 days between 60° south and north they agree with astronomy-engine', () => {
  const record = largestError('moonrise and moonset to 60°, astronomy-engine', 's', {
    quantity: 'moonrise and moonset',
    method: 'suncalc 2, the limb on a level horizon',
    comparedWith: 'astronomy-engine, 300 days to 60° latitude',
  });
  test('missing ones too', () => {
    let missing = 0;
    for (let n = 0; n < 300; n += 1) {
      const place = evenPlace(n, { southDeg: -60, northDeg: 60 });
      const date = addDays('2000-01-01', Math.floor(evenSpread(n, 0) * 18_262));
      const hours = Math.round(place.longitudeDeg / 15);
      const zone = hours === 0 ? 'UTC' : `Etc/GMT${hours > 0 ? '-' : '+'}${Math.abs(hours)}`;
      const events = moonEvents({ date, zone, place });
      const { startMs, endMs } = dayBoundsMs(date, zone);
      for (const [found, direction] of [
        [events.moonriseMs, 'rising'],
        [events.moonsetMs, 'falling'],
      ] as const) {
        const expected = referenceMoonLimbMs(direction, { place, startMs, days: 2 });
        const onDate = expected !== null && expected < endMs;
        // Within a minute of midnight either date may own it.
        if (expected !== null && Math.abs(expected - endMs) < 60_000) continue;
        if (!onDate) {
          expect(found).toBeNull();
          missing += 1;
        } else {
          // 0.02° of position take 5 s on the equator and twice that at 60°, more at a slant.
          expect(record(((found ?? 0) - expected) / 1000)).toBeLessThan(20);
        }
      }
    }
    expect(missing).toBeGreaterThan(5);
  });
});

test('about once a month a date has no moonrise, and rises come in order', () => {
  const trieste = { latitudeDeg: 45.65, longitudeDeg: 13.76 };
  const dates = Array.from({ length: 59 }, (_, day) => addDays('2027-05-01', day));
  const rises = dates.map((date) => moonEvents({ date, zone: 'Europe/Rome', place: trieste }));
  expect(rises.filter(({ moonriseMs }) => moonriseMs === null)).toHaveLength(2);
  for (const [index, { moonriseMs }] of rises.entries())
    if (moonriseMs !== null) expect(civilDateOf(moonriseMs, 'Europe/Rome')).toBe(dates[index]);
});

test('close to the pole the moon stays up or down for days', () => {
  const days = Array.from({ length: 28 }, (_, day) =>
    moonEvents({
      date: addDays('2027-05-01', day),
      zone: 'UTC',
      place: { latitudeDeg: 88, longitudeDeg: 0 },
    }),
  );
  expect(days.filter(({ moonriseMs }) => moonriseMs !== null).length).toBeLessThan(6);
});
