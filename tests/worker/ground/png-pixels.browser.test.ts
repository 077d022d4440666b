import { expect, test } from 'vitest';
import { terrariumHeights } from '../../../src/exchange/elevation/terrarium.ts';
import { decodePng } from '../../../src/worker/ground/png-pixels.ts';

/**
 * Four pixels of the published coding, 2523.265625 m, −1 m, 0 m and 100.5 m, under a stated gamma
 * of 1.0 (gAMA), which a decoder that matches colours would turn into other numbers.
 */
const FOUR_HEIGHTS =
  'iVBORw0KGgoAAAANSUhEUgAAAAIAAAACCAIAAAD91JpzAAAABGdBTUEAAYagMeiWXwAAABZJREFUeJxj6LztUv+fgaGBgaEhpQEAJ+gFC+0C1MIAAAAASUVORK5CYII=';

const bytesOf = (base64: string): ArrayBuffer =>
  Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0)).buffer;

test('heights come out of the browser’s decoder as they were written', async () => {
  const decoded = await decodePng(bytesOf(FOUR_HEIGHTS));
  if (!decoded.ok) throw new Error(decoded.problem);
  expect(decoded.value).toMatchObject({ widthPx: 2, heightPx: 2 });
  expect(terrariumHeights(decoded.value.pixels)).toEqual(
    Float32Array.of(2523.265625, -1, 0, 100.5),
  );
});

test('what is no picture is said to be damaged', async () => {
  const cut = bytesOf(FOUR_HEIGHTS).slice(0, 60);
  for (const png of [cut, new ArrayBuffer(10)])
    expect(await decodePng(png)).toEqual({
      ok: false,
      problem: 'the picture is damaged or cut short',
    });
});
