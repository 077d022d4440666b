import { describe, expect, test } from 'vitest';

import { keepSmallPhoto, type SmallPhoto } from '../../../src/exchange/photo/keep-small-photo.ts';
import { readPhoto } from '../../../src/exchange/photo/read-photo.ts';
import {
  ascii,
  fileOf,
  heicWith,
  jpegWithInFront,
  jpegWithout,
  rational,
  short,
  tiffWith,
} from '../../support/exif-file.ts';

type Size = { readonly widthPx: number; readonly heightPx: number };

/** A picture drawn here, as a camera would hand it over. */
const picture = async (
  { widthPx, heightPx }: Size,
  draw: (context: OffscreenCanvasRenderingContext2D) => void,
  type = 'image/jpeg',
): Promise<Uint8Array<ArrayBuffer>> => {
  const canvas = new OffscreenCanvas(widthPx, heightPx);
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('no canvas');
  draw(context);
  const blob = await canvas.convertToBlob({ type, quality: 0.95 });
  return new Uint8Array(await blob.arrayBuffer());
};

/** Left half red, right half blue. */
const halves =
  ({ widthPx, heightPx }: Size) =>
  (context: OffscreenCanvasRenderingContext2D): void => {
    context.fillStyle = '#f00';
    context.fillRect(0, 0, widthPx / 2, heightPx);
    context.fillStyle = '#00f';
    context.fillRect(widthPx / 2, 0, widthPx / 2, heightPx);
  };

/** The worst there is to compress; a fixed sequence. */
const noise =
  ({ widthPx, heightPx }: Size) =>
  (context: OffscreenCanvasRenderingContext2D): void => {
    const image = context.createImageData(widthPx, heightPx);
    let seed = 1;
    for (let at = 0; at < image.data.length; at += 1) {
      seed = (seed * 48_271) % 2_147_483_647;
      image.data[at] = at % 4 === 3 ? 255 : seed & 255;
    }
    context.putImageData(image, 0, 0);
  };

const small = async (file: File): Promise<SmallPhoto> => {
  const facts = await readPhoto(file);
  if (!facts.ok) throw new Error(facts.problem);
  const kept = await keepSmallPhoto(file, facts.value);
  if (!kept.ok) throw new Error(kept.problem);
  return kept.value;
};

const refusal = async (file: File): Promise<string> => {
  const facts = await readPhoto(file);
  if (!facts.ok) throw new Error(facts.problem);
  const kept = await keepSmallPhoto(file, facts.value);
  if (kept.ok) throw new Error('a picture was made');
  return kept.problem;
};

const pixel = async (
  { bytes }: SmallPhoto,
  xFraction: number,
  yFraction: number,
): Promise<readonly number[]> => {
  const bitmap = await createImageBitmap(new Blob([bytes]));
  const context = new OffscreenCanvas(bitmap.width, bitmap.height).getContext('2d');
  if (context === null) throw new Error('no canvas');
  context.drawImage(bitmap, 0, 0);
  const at = [Math.floor(xFraction * bitmap.width), Math.floor(yFraction * bitmap.height)] as const;
  return [...context.getImageData(...at, 1, 1).data].slice(0, 3);
};

const isRed = ([red = 0, green = 0, blue = 0]: readonly number[]): boolean =>
  red > 200 && green < 60 && blue < 60;

const LARGE = { widthPx: 3000, heightPx: 2000 };

describe('the small copy of a photo', () => {
  test('its long side is 1600 pixels, its shape that of the photo', async () => {
    const kept = await small(fileOf(await picture(LARGE, halves(LARGE))));
    expect([kept.widthPx, kept.heightPx]).toEqual([1600, 1067]);
    expect(isRed(await pixel(kept, 0.1, 0.5))).toBe(true);
    expect(isRed(await pixel(kept, 0.9, 0.5))).toBe(false);
  });

  // Exif 2.32, tag 0x0112: 6 is ‘row 0 at the right’, turned a quarter clockwise to stand upright.
  test('a camera held upright gives an upright copy', async () => {
    const jpeg = jpegWithInFront(await picture(LARGE, halves(LARGE)), {
      main: { 0x0112: short(6) },
    });
    const kept = await small(fileOf(jpeg));
    expect([kept.widthPx, kept.heightPx]).toEqual([1067, 1600]);
    expect(isRed(await pixel(kept, 0.5, 0.1))).toBe(true);
    expect(isRed(await pixel(kept, 0.5, 0.9))).toBe(false);
  });

  test('a photo smaller than that keeps its size', async () => {
    const size = { widthPx: 640, heightPx: 480 };
    const kept = await small(fileOf(await picture(size, halves(size))));
    expect([kept.widthPx, kept.heightPx]).toEqual([640, 480]);
  });

  test('it holds nothing of what the camera wrote', async () => {
    const jpeg = jpegWithInFront(await picture(LARGE, halves(LARGE)), {
      exif: { 0x9003: ascii('2027:05:14 19:30:05'), 0x829d: rational([8, 1]) },
      gps: {
        1: ascii('N'),
        2: rational([45, 1], [39, 1], [1, 1]),
        3: ascii('E'),
        4: rational([13, 1], [45, 1], [25, 1]),
      },
    });
    const before = await readPhoto(fileOf(jpeg));
    expect(before.ok && before.value.latitudeDeg).toBeCloseTo(45.65, 2);
    const { bytes } = await small(fileOf(jpeg));
    const after = await readPhoto(fileOf(bytes));
    expect(after).toMatchObject({
      ok: true,
      value: { latitudeDeg: null, longitudeDeg: null, clockTime: null, fNumber: null },
    });
    expect(new TextDecoder('latin1').decode(bytes)).not.toMatch(/Exif|GPS|http/);
  });

  test('even noise fits into 300 kB', async () => {
    const kept = await small(fileOf(await picture(LARGE, noise(LARGE))));
    expect(kept.bytes.length).toBeLessThanOrEqual(300e3);
    expect(Math.max(kept.widthPx, kept.heightPx)).toBeGreaterThanOrEqual(600);
  });

  test('what a PNG leaves transparent is white', async () => {
    const size = { widthPx: 100, heightPx: 100 };
    const png = await picture(size, () => undefined, 'image/png');
    const kept = await small(fileOf(png, 'plan.png', 'image/png'));
    expect(await pixel(kept, 0.5, 0.5)).toEqual([255, 255, 255]);
    expect([...kept.bytes.subarray(0, 3)]).toEqual([0xff, 0xd8, 0xff]);
  });
});

describe('where there can be no picture, it is said, and the rest of the photo stays', () => {
  const exif = { exif: { 0x829d: rational([8, 1]) } } as const;

  test('a kind that this browser does not show', async () => {
    expect(await refusal(fileOf(heicWith(exif), 'pier.heic'))).toBe(
      'pier.heic: this browser shows no HEIC pictures; kept without its picture.',
    );
    expect(await refusal(fileOf(tiffWith(exif), 'pier.tif'))).toBe(
      'pier.tif: this browser shows no TIFF pictures; kept without its picture.',
    );
  });

  test('a damaged picture', async () => {
    expect(await refusal(fileOf(jpegWithout(), 'pier.jpg'))).toBe(
      'pier.jpg: the JPEG is damaged or was cut short; kept without its picture.',
    );
  });

  test('a picture of 900 million pixels is not even opened', async () => {
    const facts = { name: 'wall.png', kind: 'PNG', widthPx: 30_000, heightPx: 30_000 } as const;
    expect(await keepSmallPhoto(new Blob([]), facts)).toEqual({
      ok: false,
      problem:
        'wall.png: found 900 million pixels, expected at most 150 million; kept without its picture.',
    });
  });
});
