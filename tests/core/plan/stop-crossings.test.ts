import { Body, Equator, Horizon, MakeTime, Observer } from 'astronomy-engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { stopCrossings } from '../../../src/core/plan/stop-crossings.ts';

const MIN = 60_000;
const BEGAN = Date.UTC(2027, 4, 14, 17, 0);

/** Explanatory Supplement 1992, the two segments from −0.8° down to −12°. */
const log10Lux = (deg: number): number => {
  const x = deg / 90;
  return deg >= -5
    ? 2.88 + 21.81 * x - 258.11 * x ** 2 - 858.36 * x ** 3
    : 2.7 + 12.17 * x - 431.69 * x ** 2 - 1899.83 * x ** 3;
};

describe('the moments at which a level is a further stop away', () => {
  test('of a sky that loses a stop every five minutes come every five minutes', () => {
    const found = stopCrossings((ms) => 12 - (ms - BEGAN) / (5 * MIN), {
      fromMs: BEGAN,
      toMs: BEGAN + 21 * MIN,
    });
    expect(found.map(({ stops }) => stops)).toEqual([-1, -2, -3, -4]);
    found.forEach(({ atMs, stops }) => {
      expect(Math.abs(atMs - BEGAN + stops * 5 * MIN)).toBeLessThanOrEqual(1000);
    });
  });

  test('rise again where the sky rises again, and none is named twice', () => {
    // Down 1.5 stops in ten minutes, up again in the next ten.
    const found = stopCrossings((ms) => 12 - 1.5 + 1.5 * Math.abs((ms - BEGAN) / (10 * MIN) - 1), {
      fromMs: BEGAN,
      toMs: BEGAN + 20 * MIN,
    });
    expect(found.map(({ stops }) => stops)).toEqual([-1, 0]);
  });

  test('a swing of nine tenths of a stop makes none', () => {
    expect(
      stopCrossings((ms) => 12 + 0.45 * Math.sin(ms / (3 * MIN)), {
        fromMs: Math.round(3 * MIN * 2 * Math.PI * 1e4),
        toMs: Math.round(3 * MIN * 2 * Math.PI * 1e4) + 60 * MIN,
      }),
    ).toEqual([]);
  });

  test('two stops within one minute are two, and a minute without a figure is passed over', () => {
    const drop = (ms: number): number => (ms < BEGAN + 90_000 ? 12 : 9.5);
    expect(
      stopCrossings(drop, { fromMs: BEGAN, toMs: BEGAN + 5 * MIN }).map(({ stops }) => stops),
    ).toEqual([-1, -2]);
    const holed = (ms: number): number => (ms === BEGAN + MIN ? NaN : 12 - (ms - BEGAN) / MIN);
    expect(stopCrossings(holed, { fromMs: BEGAN, toMs: BEGAN + 3 * MIN })).toHaveLength(3);
    expect(stopCrossings(() => NaN, { fromMs: BEGAN, toMs: BEGAN + 3 * MIN })).toEqual([]);
  });

  test('lie where the level has just passed, however steep it is', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 3, noNaN: true }),
        fc.double({ min: 0, max: 0.02, noNaN: true }),
        (stopsPerMin, bend) => {
          const evAt = (ms: number): number => {
            const minutes = (ms - BEGAN) / MIN;
            return 12 - stopsPerMin * minutes - bend * minutes ** 2;
          };
          const found = stopCrossings(evAt, { fromMs: BEGAN, toMs: BEGAN + 30 * MIN });
          expect(found).toHaveLength(Math.floor(12 - evAt(BEGAN + 30 * MIN) + 1e-6));
          for (const { atMs, stops } of found) {
            expect(evAt(atMs)).toBeLessThanOrEqual(12 + stops + 1e-6);
            expect(evAt(atMs - 1001)).toBeGreaterThan(12 + stops);
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  // Explanatory Supplement 1992, segments below −0.8° (E2), the sun by another library.
  test('from −4° down lie within 20 s of the published twilight polynomial at 45.6° north', () => {
    const place = new Observer(45.65, 13.75, 0);
    const altitudeDeg = (ms: number): number => {
      const time = MakeTime(new Date(ms));
      const { ra, dec } = Equator(Body.Sun, time, place, true, true);
      return Horizon(time, place, ra, dec).altitude;
    };
    const evAt = (ms: number): number => log10Lux(altitudeDeg(ms)) * Math.log2(10);
    let fromMs = BEGAN;
    while (altitudeDeg(fromMs) > -4) fromMs += 1000;
    const toMs = fromMs + 45 * MIN;
    const found = stopCrossings(evAt, { fromMs, toMs });
    // 29.9 lx at −4° and 0.348 lx at −8° are 6.4 stops apart (E3).
    expect(found.filter(({ atMs }) => altitudeDeg(atMs) > -8)).toHaveLength(6);
    for (const { atMs, stops } of found) {
      let plainMs = fromMs;
      while (evAt(plainMs) > evAt(fromMs) + stops) plainMs += 1000;
      expect(Math.abs(atMs - plainMs)).toBeLessThan(20_000);
    }
  });
});
