import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sunEvents } from '../../../src/core/sun-moon/sun-events.ts';
import type { SunEvents } from '../../../src/core/sun-moon/sun-events.ts';
import { sunPosition } from '../../../src/core/sun-moon/sun-position.ts';
import {
  addDays,
  civilDateOf,
  clockTime,
  dayBoundsMs,
} from '../../../src/core/units/civil-time.ts';
import { SUN_EVENT_TIMES } from '../../reference/sun-event-times.ts';
import { evenPlace, evenSpread } from '../../support/even-spread.ts';
import { largestError } from '../../support/largest-error.ts';
import {
  referenceCrossingMs,
  referenceDirection,
  referenceNoonMs,
} from '../../support/reference-sky.ts';

const HOUR_MS = 3_600_000;

const readUtc = (date: string, text: string | null): number | null => {
  if (text === null) return null;
  const [, sign, clock] = /^(?:([+-])1d )?(\d\d:\d\d(?::\d\d)?)$/.exec(text) ?? [];
  const shiftDays = sign === undefined ? 0 : Number(`${sign}1`);
  return Date.parse(`${addDays(date, shiftDays)}T${clock}Z`);
};

const expectTime = (
  found: number | null,
  expected: number | null,
  { withinS, record }: { withinS: number; record: (s: number) => number },
): void => {
  if (expected === null || found === null) expect(found).toBe(expected);
  else expect(record((found - expected) / 1000)).toBeLessThan(withinS);
};

describe('the events of a day agree with the computed tables', () => {
  const recordNoon = largestError('solar noon, tables', 's', {
    quantity: 'solar noon',
    method: 'suncalc 2, upper transit of the civil date',
    comparedWith: 'tables computed with astronomy-engine',
  });
  const recordLow = largestError('sun events below 60°, tables', 's', {
    quantity: 'sunrise, sunset, twilights',
    method: 'suncalc 2, crossings of true altitude on a level horizon',
    comparedWith: 'tables computed with astronomy-engine, below 60° latitude',
  });
  const recordHigh = largestError('sun events from 60°, tables', 's', {
    quantity: 'sunrise, sunset, twilights',
    method: 'suncalc 2, crossings of true altitude on a level horizon',
    comparedWith: 'tables computed with astronomy-engine, from 60° latitude',
  });
  test.each(SUN_EVENT_TIMES)('$where, $date', (row) => {
    const [latitudeDeg, longitudeDeg] = row.place;
    const events = sunEvents({
      date: row.date,
      zone: row.zone,
      place: { latitudeDeg, longitudeDeg },
    });
    // The series is good to 5 s below 60°; the sun grazes the horizon farther north.
    const tolerance =
      latitudeDeg < 60 ? { withinS: 10, record: recordLow } : { withinS: 30, record: recordHigh };
    const utc = (text: string | null): number | null => readUtc(row.date, text);
    expectTime(events.solarNoonMs, utc(row.noon), { withinS: 5, record: recordNoon });
    expectTime(events.sunriseMs, utc(row.riseSet[0]), tolerance);
    expectTime(events.sunsetMs, utc(row.riseSet[1]), tolerance);
    expectTime(events.civilDawnMs, utc(row.civil[0]), tolerance);
    expectTime(events.civilDuskMs, utc(row.civil[1]), tolerance);
    expectTime(events.nauticalDawnMs, utc(row.nautical[0]), tolerance);
    expectTime(events.nauticalDuskMs, utc(row.nautical[1]), tolerance);
    expectTime(events.astronomicalDawnMs, utc(row.astronomical[0]), tolerance);
    expectTime(events.astronomicalDuskMs, utc(row.astronomical[1]), tolerance);
  });
});

describe('rise and set agree with NREL’s solar position algorithm', () => {
  const record = largestError('sunrise and sunset, NREL', 's', {
    quantity: 'sunrise, sunset, twilights',
    method: 'suncalc 2, crossings of true altitude on a level horizon',
    comparedWith: 'worked examples of NREL/TP-560-34302',
  });

  test('in its worked example, and the set is the one of the local date', () => {
    const events = sunEvents({
      date: '2003-10-17',
      zone: 'America/Denver',
      place: { latitudeDeg: 39.742476, longitudeDeg: -105.1786 },
    });
    const tolerance = { withinS: 5, record };
    expectTime(events.sunriseMs, Date.parse('2003-10-17T13:12:43.460Z'), tolerance);
    expectTime(events.solarNoonMs, Date.parse('2003-10-17T18:46:04.960Z'), tolerance);
    // The published 17:20:19 is the evening before: the algorithm wraps within the UTC day.
    expectTime(events.sunsetMs, Date.parse('2003-10-18T00:18:51.100Z'), tolerance);
  });

  test.each([
    { place: [-35, 0], date: '1996-07-05', rise: '07:08:15', set: '17:01:04' },
    { place: [-35, 0], date: '2004-12-04', rise: '04:38:57', set: '19:02:02' },
    { place: [35, 0], date: '1994-01-02', rise: '07:08:12', set: '16:59:55' },
  ] as const)('at $place on $date (table A6)', ({ place, date, rise, set }) => {
    const [latitudeDeg, longitudeDeg] = place;
    const events = sunEvents({ date, zone: 'UTC', place: { latitudeDeg, longitudeDeg } });
    expectTime(events.sunriseMs, readUtc(date, rise), { withinS: 6, record });
    expectTime(events.sunsetMs, readUtc(date, set), { withinS: 6, record });
  });
});

describe('rise and set agree with the US Naval Observatory', () => {
  const record = largestError('sunrise and sunset, US Naval Observatory', 's', {
    quantity: 'sunrise, sunset, twilights',
    method: 'suncalc 2, crossings of true altitude on a level horizon',
    comparedWith: 'US Naval Observatory, tables of whole minutes',
  });
  test.each([
    { place: [39, -105], offsetH: -7, date: '2015-01-02', rise: '07:19', set: '16:49' },
    { place: [39, -105], offsetH: -7, date: '2015-04-02', rise: '05:43', set: '18:24' },
    { place: [39, -105], offsetH: -7, date: '2015-08-02', rise: '05:01', set: '19:10' },
    { place: [39, -105], offsetH: -7, date: '2015-12-02', rise: '07:01', set: '16:38' },
    { place: [39.917, 116.383], offsetH: 8, date: '2015-01-02', rise: '07:36', set: '17:00' },
    { place: [39.917, 116.383], offsetH: 8, date: '2015-04-02', rise: '05:58', set: '18:39' },
    { place: [39.917, 116.383], offsetH: 8, date: '2015-08-02', rise: '05:13', set: '19:28' },
    { place: [39.917, 116.383], offsetH: 8, date: '2015-12-02', rise: '07:17', set: '16:50' },
  ] as const)('at $place on $date', ({ place, offsetH, date, rise, set }) => {
    const [latitudeDeg, longitudeDeg] = place;
    const zone = offsetH > 0 ? `Etc/GMT-${offsetH}` : `Etc/GMT+${-offsetH}`;
    const events = sunEvents({ date, zone, place: { latitudeDeg, longitudeDeg } });
    const local = (text: string): number => Date.parse(`${date}T${text}Z`) - offsetH * HOUR_MS;
    // Half a minute of rounding in the table, a few seconds of model.
    expectTime(events.sunriseMs, local(rise), { withinS: 36, record });
    expectTime(events.sunsetMs, local(set), { withinS: 36, record });
  });
});

const noonOf = (date: string, zone: string, place: readonly [number, number]): string => {
  const [latitudeDeg, longitudeDeg] = place;
  const { solarNoonMs } = sunEvents({ date, zone, place: { latitudeDeg, longitudeDeg } });
  return solarNoonMs === null
    ? 'none'
    : `${civilDateOf(solarNoonMs, zone)} ${clockTime(solarNoonMs, zone).slice(0, 2)}h`;
};

describe('events belong to the civil date of the zone', () => {
  test.each([
    { zone: 'Pacific/Kiritimati', place: [1.87, -157.4], hour: '12h' },
    { zone: 'Pacific/Apia', place: [-13.83, -171.76], hour: '12h' },
    { zone: 'Pacific/Pago_Pago', place: [-14.28, -170.7], hour: '12h' },
    { zone: 'Pacific/Auckland', place: [-36.85, 174.76], hour: '12h' },
    { zone: 'Asia/Kamchatka', place: [53.02, 158.65], hour: '13h' },
    { zone: 'Asia/Kashgar', place: [39.47, 75.99], hour: '12h' },
    { zone: 'Asia/Shanghai', place: [39.47, 75.99], hour: '14h' },
  ] as const)('$zone has its noon on the date asked for', ({ zone, place, hour }) => {
    expect(noonOf('2026-06-10', zone, place)).toBe(`2026-06-10 ${hour}`);
  });

  test('the date that Samoa skipped has no events, its neighbours have theirs', () => {
    const apia = [-13.83, -171.76] as const;
    expect(noonOf('2011-12-29', 'Pacific/Apia', apia)).toMatch(/^2011-12-29 1\dh$/);
    expect(noonOf('2011-12-30', 'Pacific/Apia', apia)).toBe('none');
    expect(noonOf('2011-12-31', 'Pacific/Apia', apia)).toMatch(/^2011-12-31 1\dh$/);
  });

  test('where clocks go forward, clock times jump by an hour and the sun does not', () => {
    const trieste = { latitudeDeg: 45.65, longitudeDeg: 13.76 };
    const zone = 'Europe/Rome';
    const [saturday, sunday] = ['2025-03-29', '2025-03-30'].map((date) =>
      sunEvents({ date, zone, place: trieste }),
    );
    const riseApartMs = (sunday?.sunriseMs ?? 0) - (saturday?.sunriseMs ?? 0);
    // Late March at 45°: rise comes about two minutes earlier every day.
    expect(riseApartMs / 60_000).toBeGreaterThan(24 * 60 - 2.5);
    expect(riseApartMs / 60_000).toBeLessThan(24 * 60 - 1.5);
    expect(clockTime(saturday?.solarNoonMs ?? 0, zone)).toBe('12:09');
    expect(clockTime(sunday?.solarNoonMs ?? 0, zone)).toBe('13:09');
  });

  test('in any zone each noon belongs to exactly one date', () => {
    const zones = Intl.supportedValuesOf('timeZone');
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.integer({ min: 0, max: 20_000 }),
        (zone, longitudeDeg, day) => {
          const first = addDays('1980-01-01', day);
          const place = { latitudeDeg: 20, longitudeDeg };
          const noons = [0, 1, 2, 3].flatMap((days) => {
            const date = addDays(first, days);
            const { solarNoonMs } = sunEvents({ date, zone, place });
            if (solarNoonMs === null) return [];
            expect(civilDateOf(solarNoonMs, zone)).toBe(date);
            return [solarNoonMs];
          });
          for (const [index, noonMs] of noons.slice(1).entries()) {
            const daysApart = (noonMs - (noons[index] ?? Number.NaN)) / (24 * HOUR_MS);
            // A solar day is 24 h within 31 s; a day is missed where noon falls on midnight.
            expect(Math.abs(daysApart - Math.round(daysApart))).toBeLessThan(0.001);
          }
          expect(noons.length).toBeGreaterThanOrEqual(2);
        },
      ),
    );
  });
});

const EVENTS = [
  { rise: 'sunriseMs', set: 'sunsetMs', altitudeDeg: -50 / 60 },
  { rise: 'civilDawnMs', set: 'civilDuskMs', altitudeDeg: -6 },
  { rise: 'nauticalDawnMs', set: 'nauticalDuskMs', altitudeDeg: -12 },
  { rise: 'astronomicalDawnMs', set: 'astronomicalDuskMs', altitudeDeg: -18 },
] as const satisfies readonly {
  rise: keyof SunEvents;
  set: keyof SunEvents;
  altitudeDeg: number;
}[];

/** Places and dates over fifty years, each in the zone of its longitude. */
const placeDay = (n: number, southDeg: number, northDeg: number) => {
  const place = evenPlace(n, { southDeg, northDeg });
  const date = addDays('2000-01-01', Math.floor(evenSpread(n, 0) * 18_262));
  const hours = Math.round(place.longitudeDeg / 15);
  const zone = hours === 0 ? 'UTC' : `Etc/GMT${hours > 0 ? '-' : '+'}${Math.abs(hours)}`;
  return { place, date, zone };
};

test('events agree with astronomy-engine on 300 days between 60° south and north', () => {
  const record = { worstS: 0, noonS: 0 };
  for (let n = 0; n < 300; n += 1) {
    const day = placeDay(n, -60, 60);
    const events = sunEvents(day);
    const noonMs = referenceNoonMs(day.place, dayBoundsMs(day.date, day.zone).startMs);
    record.noonS = Math.max(record.noonS, Math.abs((events.solarNoonMs ?? 0) - noonMs) / 1000);
    for (const { rise, set, altitudeDeg } of EVENTS) {
      const lowestDeg = Math.min(
        ...[-12, 12].map(
          (hours) => referenceDirection('Sun', noonMs + hours * HOUR_MS, day.place).altitudeDeg,
        ),
      );
      // Where the sun only grazes the altitude, seconds mean nothing.
      if (Math.abs(lowestDeg - altitudeDeg) < 0.5) continue;
      const search = { place: day.place, altitudeDeg, days: 0.5 };
      const expectedRise = referenceCrossingMs('Sun', {
        ...search,
        direction: 'rising',
        startMs: noonMs - 12 * HOUR_MS,
      });
      const expectedSet = referenceCrossingMs('Sun', {
        ...search,
        direction: 'falling',
        startMs: noonMs,
      });
      for (const [found, expected] of [
        [events[rise], expectedRise],
        [events[set], expectedSet],
      ] as const) {
        if (found === null || expected === null) expect(found).toBe(expected);
        else record.worstS = Math.max(record.worstS, Math.abs(found - expected) / 1000);
      }
    }
  }
  console.log('sun events to 60°, astronomy-engine: largest errors in 300 days', record);
  expect(record.noonS).toBeLessThan(5);
  // 0.015° of position take 4 s on the equator and twice that at 60°.
  expect(record.worstS).toBeLessThan(10);
});

test('beyond 60° the sun stands at the event’s altitude in astronomy-engine too, and missing events are missing', () => {
  let worstDeg = 0;
  let missing = 0;
  for (let n = 0; n < 400; n += 1) {
    const day = placeDay(n, n % 2 ? 60 : -89.9, n % 2 ? 89.9 : -60);
    const events = sunEvents(day);
    const noonMs = events.solarNoonMs ?? Number.NaN;
    const altitudesDeg = (fromH: number): readonly number[] =>
      Array.from(
        { length: 145 },
        (_, step) =>
          referenceDirection('Sun', noonMs + (fromH + step / 12) * HOUR_MS, day.place).altitudeDeg,
      );
    const [before, after] = [altitudesDeg(-12), altitudesDeg(0)];
    for (const { rise, set, altitudeDeg } of EVENTS)
      for (const [found, risingTrack] of [
        [events[rise], before],
        [events[set], after.toReversed()],
      ] as const) {
        if (found !== null) {
          const at = referenceDirection('Sun', found, day.place).altitudeDeg;
          worstDeg = Math.max(worstDeg, Math.abs(at - altitudeDeg));
          continue;
        }
        missing += 1;
        const passes = risingTrack.some(
          (altitude, index) =>
            altitude - altitudeDeg > 0.02 &&
            (risingTrack[index - 1] ?? Number.NaN) - altitudeDeg < -0.02,
        );
        expect(passes).toBe(false);
      }
  }
  console.log(
    `sun at events beyond 60°, astronomy-engine: largest error ${worstDeg.toFixed(4)}°, ${missing} missing of 3200`,
  );
  expect(missing).toBeGreaterThan(500);
  expect(worstDeg).toBeLessThan(0.015);
});

test('at the poles and for nonsense there are no events, and nothing breaks', () => {
  const north = sunEvents({
    date: '2026-06-21',
    zone: 'UTC',
    place: { latitudeDeg: 90, longitudeDeg: 0 },
  });
  expect(north.sunriseMs).toBeNull();
  expect(north.sunsetMs).toBeNull();
  const nonsense = sunEvents({
    date: '2026-02-30',
    zone: 'UTC',
    place: { latitudeDeg: 45, longitudeDeg: 13 },
  });
  expect(Object.values(nonsense).every((value) => value === null)).toBe(true);
});

test('the day is longer the farther north, in June', () => {
  const lengths = [-60, -30, 0, 30, 60].map((latitudeDeg) => {
    const { sunriseMs, sunsetMs } = sunEvents({
      date: '2026-06-21',
      zone: 'UTC',
      place: { latitudeDeg, longitudeDeg: 0 },
    });
    return (sunsetMs ?? Number.NaN) - (sunriseMs ?? Number.NaN);
  });
  expect(lengths).toEqual(lengths.toSorted((one, other) => one - other));
  expect(new Set(lengths).size).toBe(5);
});

test('at sunrise and sunset the sun’s upper limb is on the horizon: −34′ −16′', () => {
  const place = { latitudeDeg: -33.87, longitudeDeg: 151.21 };
  const events = sunEvents({ date: '2026-01-05', zone: 'Australia/Sydney', place });
  for (const instantMs of [events.sunriseMs, events.sunsetMs])
    expect(sunPosition(instantMs ?? Number.NaN, place).trueAltitudeDeg).toBeCloseTo(-0.8333, 3);
});
