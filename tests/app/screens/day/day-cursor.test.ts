import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { dayCursor } from '../../../../src/app/screens/day/day-cursor.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

test('a cursor that passes is on its way until it has stood still for 150 ms', () => {
  const cursor = dayCursor(0);
  cursor.pass(60_000);
  expect(cursor.state()).toEqual({ minuteMs: 60_000, moving: true });
  vi.advanceTimersByTime(149);
  expect(cursor.state().moving).toBe(true);
  vi.advanceTimersByTime(1);
  expect(cursor.state()).toEqual({ minuteMs: 60_000, moving: false });
});

test('moving on starts the 150 ms anew', () => {
  const cursor = dayCursor(0);
  cursor.pass(60_000);
  vi.advanceTimersByTime(100);
  cursor.pass(120_000);
  vi.advanceTimersByTime(100);
  expect(cursor.state()).toEqual({ minuteMs: 120_000, moving: true });
});

test('a release rests at once, and no earlier move comes after it', () => {
  const cursor = dayCursor(0);
  cursor.pass(60_000);
  cursor.rest(180_000);
  vi.advanceTimersByTime(1000);
  expect(cursor.state()).toEqual({ minuteMs: 180_000, moving: false });
});

test('listeners hear of a change once, and of standing on the same minute not at all', () => {
  const cursor = dayCursor(0);
  const heard = vi.fn<() => void>();
  const stop = cursor.subscribe(heard);
  cursor.pass(60_000);
  cursor.pass(60_000);
  cursor.rest(60_000);
  cursor.rest(60_000);
  expect(heard).toHaveBeenCalledTimes(2);
  stop();
  cursor.pass(0);
  expect(heard).toHaveBeenCalledTimes(2);
});
