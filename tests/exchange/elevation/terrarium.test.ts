import { expect, test } from 'vitest';
import { VOID_HEIGHT_M } from '../../../src/core/skyline/elevation-grid.ts';
import { terrariumHeights } from '../../../src/exchange/elevation/terrarium.ts';

// red · 256 + green + blue/256 − 32768, by the published description of the scheme.
test.each([
  { heightM: 0, rgb: [128, 0, 0] },
  { heightM: 2523.265625, rgb: [137, 219, 68] },
  { heightM: -1, rgb: [127, 255, 0] },
  { heightM: 100.5, rgb: [128, 100, 128] },
  { heightM: 8848.859375, rgb: [162, 144, 220] },
])('$rgb is $heightM m', ({ heightM, rgb }) => {
  expect(terrariumHeights(Uint8Array.of(...rgb, 255))).toEqual(Float32Array.of(heightM));
});

test('the deepest sea bed, 85, 14, 0 at −10994 m, is seen as the surface of the sea', () => {
  expect(terrariumHeights(Uint8Array.of(85, 14, 0, 255))).toEqual(Float32Array.of(0));
});

test('above all mountains, and where a pixel is see-through, there is no height', () => {
  const pixels = Uint8Array.of(255, 255, 255, 255, 128, 100, 0, 0);
  expect(terrariumHeights(pixels)).toEqual(Float32Array.of(VOID_HEIGHT_M, VOID_HEIGHT_M));
});
