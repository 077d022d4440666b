import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SKY_CONDITIONS } from '../../../src/core/daylight/sky-condition.ts';
import { frameSpreadStops, globalSpreadStops } from '../../../src/core/daylight/spread.ts';

/** 80 % spans of hourly values at five stations, stops; light at sun 5°, 10°, 20°, 30°, 45°, 60°. */
const STATIONS = {
  clear: [0.77, 0.71, 0.47, 0.31, 0.22, 0.16],
  'broken-cloud': [1.71, 1.21, 1.08, 0.96, 1.04, 0.63],
  'heavy-overcast': [1.19, 1.27, 1.13, 1.11, 1.07, 1.1],
} as const;
const ALTITUDES = [5, 10, 20, 30, 45, 60] as const;

describe('the spread of the global light', () => {
  test.each(Object.entries(STATIONS))(
    '%s: not narrower than half the span of hourly typical-year data of five stations',
    (name, spans) => {
      // TMY2, TMY3 and IWEC files of Greensboro, Sand Point, Miami, Chicago, Amsterdam.
      const condition = SKY_CONDITIONS.find((known) => known === name) ?? 'clear';
      for (const [index, sunTrueAltitudeDeg] of ALTITUDES.entries()) {
        const stops = globalSpreadStops({ condition, sunTrueAltitudeDeg });
        expect(stops).toBeGreaterThanOrEqual((spans[index] ?? NaN) / 2 - 0.06);
      }
    },
  );

  // Common practice, as stated with the conditions.
  test.each([
    ['clear', 30, 0.3],
    ['clear', 10, 0.3],
    ['clear', 9, 0.5],
    ['clear', -3, 0.7],
    ['haze', 30, 0.7],
    ['broken-cloud', 30, 1],
    ['bright-overcast', 30, 0.7],
    ['heavy-overcast', 30, 1],
    ['heavy-overcast', -5, 1],
  ] as const)('%s with the sun at %i°: ±%f', (condition, sunTrueAltitudeDeg, stops) => {
    expect(globalSpreadStops({ condition, sunTrueAltitudeDeg })).toBe(stops);
  });
});

describe('the spread of the sky in the frame', () => {
  // √(global² + direction²), common practice.
  test.each([
    ['clear', 30, 90, 'patch', Math.hypot(0.3, 0.3)],
    ['clear', 30, 15, 'frame', Math.hypot(0.3, 0.7)],
    ['clear', 0.5, 90, 'frame', Math.hypot(0.5, 1)],
    ['broken-cloud', 30, 90, 'frame', Math.hypot(1, 0.7)],
    ['broken-cloud', 30, 90, 'patch', Math.hypot(1, 1.2)],
    ['heavy-overcast', 30, 90, 'patch', Math.hypot(1, 0.5)],
  ] as const)(
    '%s, sun at %f°, %i° from it, %s',
    (condition, sunTrueAltitudeDeg, angleFromSunDeg, of, stops) => {
      expect(frameSpreadStops({ condition, sunTrueAltitudeDeg, angleFromSunDeg, of })).toBeCloseTo(
        stops,
        9,
      );
    },
  );

  test('is never narrower than that of the global light, nor a patch’s than its frame’s', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...SKY_CONDITIONS),
        fc.double({ min: -18, max: 90, noNaN: true }),
        fc.double({ min: 0, max: 180, noNaN: true }),
        (condition, sunTrueAltitudeDeg, angleFromSunDeg) => {
          const sky = { condition, sunTrueAltitudeDeg, angleFromSunDeg };
          const frame = frameSpreadStops({ ...sky, of: 'frame' });
          expect(frame).toBeGreaterThan(globalSpreadStops(sky));
          expect(frameSpreadStops({ ...sky, of: 'patch' })).toBeGreaterThanOrEqual(frame);
        },
      ),
    );
  });
});
