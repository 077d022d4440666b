import { describe, expect, test } from 'vitest';
import { altitudeTrack, crossingsOf } from '../../../src/core/sun-moon/altitude-crossings.ts';

const HOUR_MS = 3_600_000;

/** A body that culminates at 45° at 12:20 every 24 h: altitude 45° × cos of its hour angle. */
const NOON_MS = 12 * HOUR_MS + 20 * 60_000;
const altitudeAt = (instantMs: number): number =>
  45 * Math.cos(((instantMs - NOON_MS) / (24 * HOUR_MS)) * 2 * Math.PI);

const day = { startMs: 0, endMs: 26 * HOUR_MS, stepMs: HOUR_MS };

describe('crossings of an altitude', () => {
  test('fall where the cosine has them, to the millisecond', () => {
    const found = crossingsOf(altitudeTrack(altitudeAt, day), 22.5);
    // 22.5° is half of 45°: hour angles of 60°, four hours to each side.
    expect(found).toHaveLength(2);
    expect(found[0]?.direction).toBe('rising');
    expect(Math.abs((found[0]?.instantMs ?? 0) - (NOON_MS - 4 * HOUR_MS))).toBeLessThanOrEqual(1);
    expect(found[1]?.direction).toBe('falling');
    expect(Math.abs((found[1]?.instantMs ?? 0) - (NOON_MS + 4 * HOUR_MS))).toBeLessThanOrEqual(1);
  });

  test('are both found where a body clears the altitude for half a minute between two samples', () => {
    // 15 s of time are 0.0625° of hour angle.
    const levelDeg = 45 * Math.cos((0.0625 * Math.PI) / 180);
    const found = crossingsOf(altitudeTrack(altitudeAt, day), levelDeg);
    expect(found.map(({ direction }) => direction)).toEqual(['rising', 'falling']);
    expect(Math.abs((found[0]?.instantMs ?? 0) - (NOON_MS - 15_000))).toBeLessThan(50);
    expect(Math.abs((found[1]?.instantMs ?? 0) - (NOON_MS + 15_000))).toBeLessThan(50);
  });

  test('are found where it dips below for three seconds at the bottom', () => {
    const levelDeg = -45 * Math.cos((0.00625 * Math.PI) / 180);
    const found = crossingsOf(altitudeTrack(altitudeAt, day), levelDeg);
    expect(found.map(({ direction }) => direction)).toEqual(['falling', 'rising']);
  });

  test('are none where it never gets there', () => {
    expect(crossingsOf(altitudeTrack(altitudeAt, day), 45.001)).toEqual([]);
    expect(crossingsOf(altitudeTrack(altitudeAt, day), -45.001)).toEqual([]);
  });
});
