import { describe, expect, test } from 'vitest';
import { RING_HOLE, ringSectorPaths } from '../../../src/app/map/ring-sectors.ts';
import { ringTone, toneSteps } from '../../../src/app/map/ring-tone.ts';

const channels = (tone: string): readonly number[] => (tone.match(/\d+/g) ?? []).map(Number);

/** Relative luminance of an sRGB colour as WCAG 2.2 defines it. */
const luminance = (tone: string): number => {
  const [red = 0, green = 0, blue = 0] = channels(tone).map((channel) => {
    const share = channel / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
};

describe('the tone of a sector', () => {
  const range = { minEv: 12, maxEv: 16 };

  test('a brighter sky is always a lighter shade', () => {
    const shades = Array.from({ length: 41 }, (_, step) => ringTone(12 + step / 10, range) ?? '');
    const lights = shades.map(luminance);
    expect(lights).toEqual(lights.toSorted((one, other) => one - other));
    expect(new Set(shades).size).toBe(41);
  });

  test('goes from dark to near white, and every shade between is blue', () => {
    expect(luminance(ringTone(12, range) ?? '')).toBeLessThan(0.05);
    expect(luminance(ringTone(16, range) ?? '')).toBeGreaterThan(0.9);
    for (const tone of toneSteps(20)) {
      const [red = 0, green = 0, blue = 0] = channels(tone);
      expect(blue).toBeGreaterThan(green);
      expect(green).toBeGreaterThan(red);
    }
  });

  test('stays at the end tone outside the range', () => {
    expect(ringTone(3, range)).toBe(ringTone(12, range));
    expect(ringTone(21, range)).toBe(ringTone(16, range));
  });

  test('is none where there is only ground', () => {
    expect(ringTone(Number.NaN, range)).toBeNull();
  });

  test('is a middle one for a sky that is the same all round', () => {
    expect(ringTone(14, { minEv: 14, maxEv: 14 })).toBe(ringTone(14, range));
  });
});

const corners = (path: string): readonly (readonly number[])[] =>
  [...path.matchAll(/(-?\d+\.\d{4}),(-?\d+\.\d{4})/g)].map(([, x, y]) => [Number(x), Number(y)]);

describe('the sectors of the ring', () => {
  test('72 of them, and all lie between the hole and the rim', () => {
    const paths = ringSectorPaths(72);
    expect(paths).toHaveLength(72);
    for (const [x = 0, y = 0] of paths.flatMap(corners)) {
      // Corners are written to four decimals.
      expect(Math.hypot(x, y)).toBeGreaterThan(RING_HOLE - 1e-4);
      expect(Math.hypot(x, y)).toBeLessThan(1 + 1e-4);
    }
  });

  test.each([
    { azimuth: 'north', index: 0, x: 0, y: -1 },
    { azimuth: 'east', index: 18, x: 1, y: 0 },
    { azimuth: 'south', index: 36, x: 0, y: 1 },
    { azimuth: 'west', index: 54, x: -1, y: 0 },
  ])('sector $index is centred on $azimuth', ({ index, x, y }) => {
    const [from = [], to = []] = corners(ringSectorPaths(72)[index] ?? '');
    // Half a sector is 2.5°, and each runs up to a degree under the next.
    expect(Math.abs(((from[0] ?? 9) + (to[0] ?? 9)) / 2 - x)).toBeLessThan(0.01);
    expect(Math.abs(((from[1] ?? 9) + (to[1] ?? 9)) / 2 - y)).toBeLessThan(0.01);
  });
});
