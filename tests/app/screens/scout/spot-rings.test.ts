import { describe, expect, test } from 'vitest';

import { ringKeeper, ringRange } from '../../../../src/app/screens/scout/spot-rings.ts';
import { demoShoot } from '../../../../src/core/plan/demo-shoot.ts';
import type { Spot } from '../../../../src/core/plan/shoot.ts';

const { pier, arches } = demoShoot().spots as Record<string, Spot> & { pier: Spot; arches: Spot };
const flat: Spot = { ...pier, skyline: {} };
const EVENING_MS = Date.parse('2027-05-14T20:00:00+02:00');

describe('sky rings', () => {
  test('a heavy overcast is the same all round [ISO 15469: type 3 has azimuthal uniformity]', () => {
    const ring = ringKeeper()(flat, 'heavy-overcast', EVENING_MS);
    expect(ring).toHaveLength(72);
    expect(Math.max(...ring) - Math.min(...ring)).toBeLessThan(0.001);
  });

  test('under a clear sky with the sun 4° up the sky under the sun is about 3 stops brighter than across', () => {
    // 16.2 towards the sun and 13.1 across at 10° up, in the chosen model's table for sun +4°;
    // the ring takes 8° to 20°, hence half a stop of room.
    const ring = ringKeeper()(flat, 'clear', EVENING_MS);
    const towards = ring[58] ?? NaN;
    const across = ring[(58 + 18) % 72] ?? NaN;
    expect(towards - across).toBeGreaterThan(2.3);
    expect(towards - across).toBeLessThan(3.6);
    expect(ring.indexOf(Math.max(...ring))).toBeGreaterThan(56);
    expect(ring.indexOf(Math.max(...ring))).toBeLessThan(61);
  });

  test('a sector wholly below the skyline is ground', () => {
    const ring = ringKeeper()(arches, 'clear', EVENING_MS);
    // 34° of wall at 60°, 7° at 190°.
    expect(ring[12]).toBeNaN();
    expect(ring[38]).toBeGreaterThan(5);
  });

  test('the same spot at the same minute gives the same array, another minute another', () => {
    const ringOf = ringKeeper();
    const ring = ringOf(pier, 'clear', EVENING_MS);
    expect(ringOf({ ...pier, name: 'Other name' }, 'clear', EVENING_MS)).toBe(ring);
    expect(ringOf(pier, 'haze', EVENING_MS)).not.toEqual(ring);
    expect(ringOf(pier, 'clear', EVENING_MS + 600_000)).not.toEqual(ring);
  });

  test('the range is whole EV round all rings and at least three wide', () => {
    expect(ringRange([[12.2, NaN, 14.9], [13]])).toEqual({ minEv: 12, maxEv: 15 });
    expect(ringRange([[13.2, 13.3]])).toEqual({ minEv: 13, maxEv: 16 });
    expect(ringRange([[NaN]])).toEqual({ minEv: 8, maxEv: 14 });
  });
});
