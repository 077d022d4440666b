import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { DARK_STOPS, offAxisStops, type BeamShape } from '../../../src/core/strobe/beam.ts';

const FLAT: BeamShape = { diffuse: true, coreDeg: null };

describe('a flat diffuse face, by Lambert’s cosine (IESNA Lighting Handbook, ch. 9)', () => {
  test.each([
    [0, 0],
    [45, -0.5],
    [60, -1],
    // cos 75.52° is a quarter.
    [75.5225, -2],
  ])('%d° off its axis: %d stops', (offAxisDeg, stops) => {
    expect(offAxisStops(FLAT, offAxisDeg)).toBeCloseTo(stops, 5);
  });

  test('behind it there is no light', () => {
    expect([90, 120, 180].map((offAxisDeg) => offAxisStops(FLAT, offAxisDeg))).toEqual([
      DARK_STOPS,
      DARK_STOPS,
      DARK_STOPS,
    ]);
  });
});

describe('a reflector of 64°, even inside and a stop per quarter of its half beam outside (common practice)', () => {
  const reflector: BeamShape = { diffuse: false, coreDeg: 64 };
  test.each([
    [0, 0],
    [32, 0],
    [40, -1],
    [48, -2],
    [64, -4],
  ])('%d° off its axis: %d stops', (offAxisDeg, stops) => {
    expect(offAxisStops(reflector, offAxisDeg)).toBeCloseTo(stops, 9);
  });

  test('a grid before a diffuser takes what its own edge takes, and the cosine stays', () => {
    const gridded: BeamShape = { diffuse: true, coreDeg: 40 };
    expect(offAxisStops(gridded, 30)).toBeCloseTo(-2 + Math.log2(Math.sqrt(3) / 2), 9);
  });
});

test('no light is gained off the axis, and farther off there is never more', () => {
  const drawn = fc.record({
    diffuse: fc.boolean(),
    coreDeg: fc.option(fc.double({ min: 2, max: 180, noNaN: true }), { nil: null }),
  });
  const angle = fc.double({ min: 0, max: 180, noNaN: true });
  fc.assert(
    fc.property(drawn, angle, angle, (beam, one, other) => {
      const near = offAxisStops(beam, Math.min(one, other));
      const far = offAxisStops(beam, Math.max(one, other));
      expect(near).toBeLessThanOrEqual(0);
      expect(far).toBeLessThanOrEqual(near);
      expect(far).toBeGreaterThanOrEqual(DARK_STOPS);
    }),
  );
});
