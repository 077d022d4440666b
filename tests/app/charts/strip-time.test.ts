import { describe, expect, test } from 'vitest';

import {
  fullHours,
  heldMinute,
  minuteAtShare,
  minutesOfKey,
  shareOf,
} from '../../../src/app/charts/strip-time.ts';

const at = (text: string): number => Date.parse(text);
const day = { startMs: at('2027-05-14T04:00+02:00'), endMs: at('2027-05-14T22:00+02:00') };

describe('the day strip', () => {
  test('its top is the start, its foot the end, half way down the middle of the span', () => {
    expect(minuteAtShare(0, day)).toBe(day.startMs);
    expect(minuteAtShare(1, day)).toBe(day.endMs);
    expect(minuteAtShare(0.5, day)).toBe(at('2027-05-14T13:00+02:00'));
    expect(shareOf(at('2027-05-14T13:00+02:00'), day)).toBe(0.5);
  });

  test('a drag past either end stays at that end', () => {
    expect(minuteAtShare(-0.3, day)).toBe(day.startMs);
    expect(minuteAtShare(1.2, day)).toBe(day.endMs);
    expect(shareOf(at('2027-05-15T02:00+02:00'), day)).toBe(1);
  });

  test('it stands on whole minutes', () => {
    expect(heldMinute(at('2027-05-14T20:06:29+02:00'), day)).toBe(at('2027-05-14T20:06+02:00'));
    expect(minuteAtShare(0.123456, day) % 60_000).toBe(0);
  });

  test('arrows move a minute, with shift ten, the page keys an hour; down is later', () => {
    expect(minutesOfKey('ArrowDown', false)).toBe(1);
    expect(minutesOfKey('ArrowUp', false)).toBe(-1);
    expect(minutesOfKey('ArrowDown', true)).toBe(10);
    expect(minutesOfKey('PageUp', false)).toBe(-60);
    expect(minutesOfKey('PageDown', true)).toBe(60);
    expect(minutesOfKey('a', false)).toBeNull();
  });

  test('full hours are those of the zone’s clocks', () => {
    const hours = fullHours(day, 'Europe/Rome', 1);
    expect(hours.map(({ text }) => text)).toEqual([
      '04:00', '05:00', '06:00', '07:00', '08:00', '09:00', '10:00', '11:00', '12:00', '13:00',
      '14:00', '15:00', '16:00', '17:00', '18:00', '19:00', '20:00', '21:00', '22:00',
    ]); // prettier-ignore
    expect(hours[0]?.ms).toBe(day.startMs);
    // India keeps UTC+5:30, Nepal UTC+5:45: their full hours fall between those of others.
    expect(fullHours(day, 'Asia/Kolkata', 1)[0]).toEqual({
      ms: at('2027-05-14T08:00+05:30'),
      text: '08:00',
    });
    expect(fullHours(day, 'Asia/Kathmandu', 1)[0]?.ms).toBe(at('2027-05-14T08:00+05:45'));
  });

  test('where clocks go back an hour shows twice, where they go forward one is missing', () => {
    const back = {
      startMs: at('2026-10-25T00:00+02:00'),
      endMs: at('2026-10-25T05:00+01:00'),
    };
    expect(fullHours(back, 'Europe/Rome', 1).map(({ text }) => text)).toEqual([
      '00:00', '01:00', '02:00', '02:00', '03:00', '04:00', '05:00',
    ]); // prettier-ignore
    const forward = {
      startMs: at('2027-03-28T00:00+01:00'),
      endMs: at('2027-03-28T05:00+02:00'),
    };
    expect(fullHours(forward, 'Europe/Rome', 1).map(({ text }) => text)).toEqual([
      '00:00', '01:00', '03:00', '04:00', '05:00',
    ]); // prettier-ignore
  });
});
