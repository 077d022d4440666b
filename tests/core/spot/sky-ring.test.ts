import { expect, test } from 'vitest';
import { skyRing } from '../../../src/core/spot/sky-ring.ts';

test('72 sectors; an even sky shades them all alike', () => {
  const ring = skyRing({ sky: () => 1000, skyline: [] });
  expect(ring.length).toBe(72);
  for (const ev of ring) expect(ev).toBeCloseTo(Math.log2(8000), 9); // K 12.5, ISO 2720
});

test('the first sector is centred on north, the nineteenth on east', () => {
  const ring = skyRing({
    sky: ({ azimuthDeg }) => (Math.abs(azimuthDeg - 90) < 2.5 ? 800 : 100),
    skyline: [],
  });
  expect(ring.indexOf(Math.max(...ring))).toBe(18);
  expect(ring[18]).toBeCloseTo(Math.log2(6400), 9);
});

test('it looks from 8° to 20° up, weighted by solid angle', () => {
  // ∫ altitude · cos over 8° to 20°, over ∫ cos: 13.92°.
  const ring = skyRing({ sky: ({ altitudeDeg }) => altitudeDeg, skyline: [] });
  expect(2 ** (ring[0] ?? NaN) * 0.125).toBeCloseTo(13.92, 1);
});

test('only what is above the skyline counts, and a sector wholly behind it is ground', () => {
  const skyline = [
    { azimuthDeg: 0, altitudeDeg: 25 },
    { azimuthDeg: 90, altitudeDeg: 25 },
    { azimuthDeg: 91, altitudeDeg: 14 },
    { azimuthDeg: 359, altitudeDeg: 14 },
  ];
  const ring = skyRing({ sky: ({ altitudeDeg }) => (altitudeDeg > 14 ? 1000 : NaN), skyline });
  expect(ring[9]).toBeNaN();
  expect(ring[36]).toBeCloseTo(Math.log2(8000), 9);
});
