import {
  Body,
  Observer,
  SearchAltitude,
  SearchHourAngle,
  Equator,
  Horizon,
} from 'astronomy-engine';
import { describe, expect, test } from 'vitest';
import { daySpan } from '../../../../src/app/screens/day/day-span.ts';
import { sunMarks } from '../../../../src/app/screens/day/sun-marks.ts';
import { dayBoundsMs } from '../../../../src/core/units/civil-time.ts';

const MINUTE_MS = 60_000;
const trieste = { place: { latitudeDeg: 45.65, longitudeDeg: 13.76 }, zone: 'Europe/Rome' };
const tromso = { place: { latitudeDeg: 69.65, longitudeDeg: 18.96 }, zone: 'Europe/Oslo' };
const DATE = '2027-05-14';
const nothing = { least: 'civil', instantsMs: [] } as const;

/** Astronomy Engine, an independent library: when the sun's centre, without refraction, passes an altitude. */
const passes = (altitudeDeg: number, direction: 1 | -1, fromIso: string): number => {
  const observer = new Observer(trieste.place.latitudeDeg, trieste.place.longitudeDeg, 0);
  const found = SearchAltitude(Body.Sun, observer, direction, new Date(fromIso), 1, altitudeDeg);
  if (found === null) throw new Error('the sun does not pass there');
  return found.date.getTime();
};

describe('the day runs from civil twilight to civil twilight', () => {
  const span = daySpan([trieste], DATE, nothing);

  test('both lie inside, less than 40 minutes from its ends (10 of margin, rounded to half hours)', () => {
    const dawn = passes(-6, 1, '2027-05-13T23:00Z');
    const dusk = passes(-6, -1, '2027-05-14T16:00Z');
    expect(span.startMs).toBeLessThan(dawn);
    expect(dawn - span.startMs).toBeLessThanOrEqual(40 * MINUTE_MS);
    expect(span.endMs).toBeGreaterThan(dusk);
    expect(span.endMs - dusk).toBeLessThanOrEqual(40 * MINUTE_MS);
  });

  test('a setup after civil twilight brings nautical twilight in, one after that the astronomical, one in the night the whole date', () => {
    const until = (iso: string): number =>
      daySpan([trieste], DATE, { least: 'civil', instantsMs: [Date.parse(iso)] }).endMs;
    const nautical = passes(-12, -1, '2027-05-14T16:00Z');
    const astronomical = passes(-18, -1, '2027-05-14T16:00Z');
    expect(Math.abs(until('2027-05-14T19:40Z') - nautical)).toBeLessThanOrEqual(40 * MINUTE_MS);
    expect(until('2027-05-14T20:25Z')).toBeGreaterThan(astronomical);
    expect(until('2027-05-14T00:10Z')).toBe(dayBoundsMs(DATE, 'Europe/Rome').endMs);
  });

  test('asked for the night, it runs to nautical twilight', () => {
    const nautical = passes(-12, -1, '2027-05-14T16:00Z');
    const { endMs } = daySpan([trieste], DATE, { least: 'nautical', instantsMs: [] });
    expect(endMs).toBeGreaterThan(nautical);
    expect(endMs - nautical).toBeLessThanOrEqual(40 * MINUTE_MS);
  });
});

test('under the midnight sun the whole civil date is shown', () => {
  expect(daySpan([tromso], '2027-06-21', nothing)).toEqual(
    dayBoundsMs('2027-06-21', 'Europe/Oslo'),
  );
});

test('over spots far apart it runs from the first dawn to the last dusk', () => {
  const west = { place: { latitudeDeg: 40.7, longitudeDeg: -74 }, zone: 'America/New_York' };
  const both = daySpan([trieste, west], DATE, nothing);
  expect(both.startMs).toBe(daySpan([trieste], DATE, nothing).startMs);
  expect(both.endMs).toBe(daySpan([west], DATE, nothing).endMs);
});

describe('the sun’s events in the gutter', () => {
  const marks = sunMarks(trieste.place, DATE, trieste.zone);
  // suncalc and Astronomy Engine agree to 0.014° (measured against JPL DE405); the sun sinks a degree in 6 minutes here.
  const toleranceMs = 20_000;

  test('the sun passes 6° where an independent library has it, morning and evening', () => {
    const low = marks.filter(({ text }) => text === 'sun 6°').map(({ ms }) => ms);
    expect(low).toHaveLength(2);
    expect(Math.abs((low[0] ?? 0) - passes(6, 1, '2027-05-14T02:00Z'))).toBeLessThan(toleranceMs);
    expect(Math.abs((low[1] ?? 0) - passes(6, -1, '2027-05-14T12:00Z'))).toBeLessThan(toleranceMs);
  });

  test('solar noon carries the altitude that the same library gives for the upper transit', () => {
    const observer = new Observer(trieste.place.latitudeDeg, trieste.place.longitudeDeg, 0);
    const transit = SearchHourAngle(Body.Sun, observer, 0, new Date('2027-05-14T06:00Z'));
    const sun = Equator(Body.Sun, transit.time, observer, true, true);
    const { altitude } = Horizon(transit.time, observer, sun.ra, sun.dec);
    expect(marks.map(({ text }) => text)).toContain(`solar noon ${Math.round(altitude)}°`);
  });

  test('they stand in order of time, from the first twilight to the last', () => {
    const times = marks.map(({ ms }) => ms);
    expect(times).toEqual(times.toSorted((one, other) => one - other));
    expect(marks.map(({ text }) => text)).toContain('civil twilight ends −6°');
  });

  test('under the midnight sun there is no rise and no set, and noon keeps its altitude', () => {
    const texts = sunMarks(tromso.place, '2027-06-21', tromso.zone).map(({ text }) => text);
    expect(texts).not.toContain('sunrise');
    expect(texts).not.toContain('sunset');
    // 90° − 69.65° + 23.44°, the obliquity at the solstice.
    expect(texts).toContain('solar noon 44°');
  });
});
