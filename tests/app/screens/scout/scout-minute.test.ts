import { expect, test } from 'vitest';

import {
  defaultMinuteMs,
  isOfDate,
  setupHere,
  stripRange,
} from '../../../../src/app/screens/scout/scout-minute.ts';
import { demoShoot } from '../../../../src/core/plan/demo-shoot.ts';
import { sunEvents } from '../../../../src/core/sun-moon/sun-events.ts';
import { dayBoundsMs } from '../../../../src/core/units/civil-time.ts';

const shoot = demoShoot();
const pier = shoot.spots['pier'] ?? null;
const quartet = shoot.setups['quartet'] ?? null;
const at = (text: string): number => Date.parse(text);

test('the first minute is the setup’s start, without a setup 19:00, without a spot 19:00 UTC', () => {
  expect(defaultMinuteMs('2027-05-14', pier, quartet)).toBe(at('2027-05-14T20:00+02:00'));
  expect(defaultMinuteMs('2027-05-14', pier, null)).toBe(at('2027-05-14T19:00+02:00'));
  expect(defaultMinuteMs('2027-05-14', null, null)).toBe(at('2027-05-14T19:00Z'));
});

test('a minute that clocks skip gives way to noon', () => {
  const skipped = quartet && { ...quartet, startClock: '02:30' };
  // Clocks go forward at 02:00 on 28 March 2027; twelve hours into that date it is 13:00.
  expect(defaultMinuteMs('2027-03-28', pier, skipped)).toBe(at('2027-03-28T13:00+02:00'));
});

test('a minute chosen for another date is not kept', () => {
  expect(isOfDate(at('2027-05-14T20:00+02:00'), '2027-05-14', 'Europe/Rome')).toBe(true);
  expect(isOfDate(at('2027-05-15T01:00+02:00'), '2027-05-14', 'Europe/Rome')).toBe(true);
  expect(isOfDate(at('2027-05-20T20:00+02:00'), '2027-05-14', 'Europe/Rome')).toBe(false);
});

test('a spot is looked at with the chosen setup where it stands there, else with its first', () => {
  expect(setupHere(shoot, 'pier', 'cello')?.[0]).toBe('quartet');
  expect(setupHere(shoot, 'pier', 'quartet')?.[0]).toBe('quartet');
  expect(setupHere({ ...shoot, setups: {} }, 'pier', 'quartet')).toBeNull();
});

test('the strip runs over full hours from first to last twilight and holds the minute', () => {
  const place = { latitudeDeg: 45.65, longitudeDeg: 13.76 };
  const events = sunEvents({ date: '2027-05-14', zone: 'Europe/Rome', place });
  const day = dayBoundsMs('2027-05-14', 'Europe/Rome');
  const range = stripRange(events, day, at('2027-05-14T20:00+02:00'));
  expect(range.startMs % 3_600_000).toBe(0);
  expect(range.startMs).toBeLessThanOrEqual(events.nauticalDawnMs ?? NaN);
  expect(range.endMs).toBeGreaterThanOrEqual(events.nauticalDuskMs ?? NaN);
  expect(stripRange(events, day, at('2027-05-14T23:30+02:00')).endMs).toBe(
    at('2027-05-15T00:00+02:00'),
  );
});

test('where twilight never ends the strip is the whole date', () => {
  const place = { latitudeDeg: 69.65, longitudeDeg: 18.96 };
  const events = sunEvents({ date: '2027-06-21', zone: 'Europe/Oslo', place });
  const day = dayBoundsMs('2027-06-21', 'Europe/Oslo');
  expect(stripRange(events, day, at('2027-06-21T19:00+02:00'))).toEqual(day);
});
