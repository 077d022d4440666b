import { describe, expect, test } from 'vitest';

import type { FramePixels } from '../../../src/core/plan/frame-pixels.ts';
import { reExposedPhoto, type ReExposure } from '../../../src/core/plan/re-exposed-photo.ts';

const grey = (level: number, widthPx = 8, heightPx = 8): FramePixels => ({
  widthPx,
  heightPx,
  rgba: Uint8ClampedArray.from({ length: widthPx * heightPx * 4 }, (_, at) =>
    at % 4 === 3 ? 255 : level,
  ),
});

const daylight = { kelvin: 5600, tint: 0 };
const as = (change: Partial<ReExposure>): ReExposure => ({
  photoEv: 12,
  photoWhiteBalance: daylight,
  cameraEv: 12,
  whiteBalance: daylight,
  figure: null,
  ...change,
});

/** sRGB (IEC 61966-2-1) of linear light, written here again. */
const encoded = (linear: number): number =>
  255 * (linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055);

describe('a scouting photo as the recipe would have taken it', () => {
  test('at the same settings it is the same picture, level for level', () => {
    const photo = grey(0);
    photo.rgba.forEach((_, at) => {
      if (at % 4 !== 3) photo.rgba[at] = (at * 7) % 256;
    });
    const again = reExposedPhoto(photo, as({}));
    again.rgba.forEach((value, at) =>
      expect(Math.abs(value - (photo.rgba[at] ?? NaN))).toBeLessThanOrEqual(1),
    );
  });

  test('metered at EV 12 and taken two stops darker, a mid-grey of 118 becomes 59', () => {
    // 0.18 / 4 = 0.045 linear.
    const [level] = reExposedPhoto(grey(118), as({ cameraEv: 14 })).rgba;
    expect(Math.abs((level ?? NaN) - encoded(0.045))).toBeLessThanOrEqual(1);
  });

  test('three stops brighter it clips at white', () => {
    expect(reExposedPhoto(grey(118), as({ cameraEv: 9 })).rgba[0]).toBe(255);
  });

  test('a tungsten setting turns a daylight photo blue and keeps its green light', () => {
    const [r, g, b] = reExposedPhoto(
      grey(118),
      as({ whiteBalance: { kelvin: 3200, tint: 0 } }),
    ).rgba;
    expect(b).toBeGreaterThan(150);
    expect(r).toBeLessThan(100);
    expect(Math.abs((g ?? NaN) - 118)).toBeLessThan(20);
  });

  test('to another setting and back is the photo again', () => {
    const tungsten = { kelvin: 3800, tint: 4 };
    const there = reExposedPhoto(grey(90), as({ whiteBalance: tungsten }));
    const back = reExposedPhoto(there, as({ photoWhiteBalance: tungsten }));
    // A level each way of rounding.
    [0, 1, 2].forEach((channel) =>
      expect(Math.abs((back.rgba[channel] ?? NaN) - 90)).toBeLessThanOrEqual(2),
    );
  });

  test('inside the mask the figure stands under the key, outside the sky is held down', () => {
    const photo = grey(60, 40, 40);
    const mask = { xFraction: 0, yFraction: 0, halfWidthFraction: 0.25, halfHeightFraction: 0.25 };
    const shown = reExposedPhoto(photo, as({ cameraEv: 14, figure: { mask, keyStops: 0 } }));
    const at = (x: number, y: number): number => shown.rgba[(y * 40 + x) * 4] ?? NaN;
    expect(Math.abs(at(20, 20) - 118)).toBeLessThanOrEqual(1);
    // 60 is 0.0452 linear; two stops under it.
    expect(Math.abs(at(2, 2) - encoded(0.0452 / 4))).toBeLessThanOrEqual(1);
  });

  test('a black mask has no light to scale and is left as exposed', () => {
    const mask = { xFraction: 0, yFraction: 0, halfWidthFraction: 0.4, halfHeightFraction: 0.4 };
    const shown = reExposedPhoto(grey(0), as({ figure: { mask, keyStops: 0 } }));
    expect(shown.rgba[0]).toBe(0);
  });
});
