import { expect, test } from 'vitest';

import { stopLevel, stopTone } from '../../../src/app/charts/stop-tone.ts';

test('a grey card of 18 % is sRGB 118, as the standard encodes it (IEC 61966-2-1)', () => {
  expect(stopLevel(0)).toBe(118);
});

/** Levels of powers of two of 18 %, worked out by hand from the standard's two branches. */
test.each([
  [1, 162],
  [2, 221],
  [-1, 85],
  [-2, 60],
  [-3, 41],
  [-4, 27],
])('%s stops from the card is level %s, within one level of rounding', (stops, level) => {
  expect(Math.abs(stopLevel(stops) - level)).toBeLessThanOrEqual(1);
});

test('white clips hard at log2(1 / 0.18) = 2.47 stops, not before', () => {
  expect(stopLevel(2.44)).toBeLessThan(255);
  expect(stopLevel(2.475)).toBe(255);
  expect(stopLevel(Infinity)).toBe(255);
});

test('no light is black', () => {
  expect(stopTone(-Infinity)).toBe('rgb(0 0 0)');
});
