import { describe, expect, test } from 'vitest';

import { holdWindows, leastShort } from '../../../src/core/plan/hold-windows.ts';
import { VERDICTS, type Verdict } from '../../../src/core/plan/verdicts.ts';

const MIN_MS = 60_000;
const START_MS = Date.UTC(2027, 4, 14);

/** A day in which a setup works where a rule says so, seen every ten minutes. */
const dayOf = (verdictAt: (minute: number) => Verdict): Parameters<typeof holdWindows> => {
  const instantMs = Float64Array.from({ length: 144 }, (_, step) => START_MS + step * 10 * MIN_MS);
  const at = (ms: number): Verdict => verdictAt((ms - START_MS) / MIN_MS);
  const verdict = Uint8Array.from(instantMs, (ms) => VERDICTS.indexOf(at(ms)));
  return [{ instantMs, verdict }, at];
};

const minutes = (ms: number): number => (ms - START_MS) / MIN_MS;

describe('when the lights hold the sky', () => {
  test('both ends are found between the steps, to within twenty seconds, and what ends it', () => {
    const windows = holdWindows(
      ...dayOf((minute) => {
        if (minute < 1187.3) return 'sky-above-reach';
        return minute < 1266.8 ? 'works' : 'too-dark';
      }),
    );
    expect(windows).toHaveLength(1);
    const [window] = windows;
    expect(minutes(window?.fromMs ?? NaN)).toBeGreaterThanOrEqual(1187.3);
    expect(minutes(window?.fromMs ?? NaN)).toBeLessThan(1187.3 + 0.34);
    expect(minutes(window?.toMs ?? NaN)).toBeLessThanOrEqual(1266.8);
    expect(minutes(window?.toMs ?? NaN)).toBeGreaterThan(1266.8 - 0.34);
    expect(window?.endedBy).toBe('too-dark');
  });

  test('a morning and an evening are two windows', () => {
    const windows = holdWindows(
      ...dayOf((minute) =>
        (minute > 308 && minute < 427) || (minute > 1186 && minute < 1266)
          ? 'works'
          : 'sky-above-reach',
      ),
    );
    expect(windows.map(({ fromMs }) => Math.round(minutes(fromMs)))).toEqual([308, 1186]);
    expect(windows.map(({ endedBy }) => endedBy)).toEqual(['sky-above-reach', 'sky-above-reach']);
  });

  test('a setup that works all day ends with the date, one that never works has no window', () => {
    expect(holdWindows(...dayOf(() => 'works'))).toEqual([
      { fromMs: START_MS, toMs: START_MS + 1430 * MIN_MS, endedBy: null },
    ]);
    expect(holdWindows(...dayOf(() => 'too-dark'))).toEqual([]);
  });
});

test('a setup that never works is least short where its shortage is smallest', () => {
  const [column] = dayOf(() => 'sky-above-reach');
  const shortByStops = Float64Array.from(column.instantMs, (_, step) => 1 + Math.abs(step - 120));
  expect(leastShort({ ...column, shortByStops })).toEqual({
    atMs: START_MS + 1200 * MIN_MS,
    shortByStops: 1,
    verdict: 'sky-above-reach',
  });
  expect(leastShort({ ...column, shortByStops: shortByStops.map(() => NaN) })).toBeNull();
});
