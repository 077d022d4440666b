import { describe, expect, test } from 'vitest';

import { conditionSky } from '../../../src/core/sky/condition-sky.ts';
import type { SkyFilters } from '../../../src/core/sky/filtered-frame.ts';
import { lightAt } from '../../../src/core/spot/light-at.ts';
import { dayOfYear } from '../../../src/core/units/civil-time.ts';
import { defined } from '../../support/defined.ts';
import { largestError } from '../../support/largest-error.ts';

const RAD = Math.PI / 180;
const place = { latitudeDeg: 45.7, longitudeDeg: 13.7 };
const patch = { xFraction: 0.2, yFraction: 0.15, widthFraction: 0.1, heightFraction: 0.1 };
const framing = (bearingDeg: number, focalLengthMm = 35) => ({
  bearingDeg,
  tiltDeg: 8,
  focalLengthMm,
  sensorWidthMm: 36,
  sensorHeightMm: 24,
});

const EVENING = Date.UTC(2027, 4, 14, 17, 30);

const read = (
  at: ReturnType<typeof framing>,
  skyFilters: SkyFilters | null,
  condition: 'clear' | 'heavy-overcast' = 'clear',
  instantMs = EVENING,
) =>
  lightAt({
    instantMs,
    zone: 'Europe/Rome',
    place,
    framing: at,
    patch,
    skyline: [],
    groundReflectance: 0.2,
    condition,
    skyFilters,
  });

type Vector = readonly [east: number, north: number, up: number];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const minus = (a: Vector, b: Vector, times: number): Vector => [
  a[0] - times * b[0],
  a[1] - times * b[1],
  a[2] - times * b[2],
];
const unit = (a: Vector): Vector => {
  const length = Math.sqrt(dot(a, a));
  return [a[0] / length, a[1] / length, a[2] / length];
};
const vector = (azimuthDeg: number, altitudeDeg: number): Vector => [
  Math.cos(altitudeDeg * RAD) * Math.sin(azimuthDeg * RAD),
  Math.cos(altitudeDeg * RAD) * Math.cos(azimuthDeg * RAD),
  Math.sin(altitudeDeg * RAD),
];

type Pixel = {
  readonly y: number;
  readonly inPatch: boolean;
  readonly d: Vector;
  readonly cdM2: number;
};

/** Every pixel of 120 × 80 that is sky, by camera axes of its own. */
function pixels(at: ReturnType<typeof framing>): {
  readonly all: readonly Pixel[];
  readonly right: Vector;
  readonly up: Vector;
  readonly sun: Vector;
} {
  const { sun } = read(at, null);
  const sky = conditionSky({
    sun,
    condition: 'clear',
    dayOfYear: dayOfYear('2027-05-14'),
    elevationM: 0,
  });
  const forward = vector(at.bearingDeg, at.tiltDeg);
  const right = vector(at.bearingDeg + 90, 0);
  const up = cross(right, forward);
  const all: Pixel[] = [];
  for (let row = 0; row < 80; row += 1)
    for (let column = 0; column < 120; column += 1) {
      const [x, y] = [(column + 0.5) / 120 - 0.5, 0.5 - (row + 0.5) / 80];
      const ray = minus(
        minus(forward, right, (-x * 36) / at.focalLengthMm),
        up,
        (-y * 24) / at.focalLengthMm,
      );
      const d = unit(ray);
      if (d[2] <= 0) continue;
      const direction = {
        azimuthDeg: (Math.atan2(d[0], d[1]) / RAD + 360) % 360,
        altitudeDeg: Math.asin(d[2]) / RAD,
      };
      const inPatch = Math.abs(x - 0.2) < 0.05 && Math.abs(y - 0.15) < 0.05;
      all.push({ y, inPatch, d, cdM2: sky(direction) });
    }
  return { all, right, up, sun: vector(sun.azimuthDeg, sun.apparentAltitudeDeg) };
}

const mean = (all: readonly Pixel[], weight: (pixel: Pixel) => number): number =>
  all.reduce((sum, pixel) => sum + pixel.cdM2 * weight(pixel), 0) / all.length;
const evOf = (cdM2: number): number => Math.log2(cdM2 * 8);

describe('a graduated filter on the sky in the frame', () => {
  const error = largestError('sky behind a graduated filter against every pixel', 'stop', {
    quantity: 'sky behind filters',
    method: 'graduated filter',
    comparedWith: 'every pixel',
  });

  test.each([
    [300, 2, 0],
    [300, 3, 0.2],
    [60, 2, -0.2],
    [200, 4, 0.1],
  ])(
    'bearing %d°, %d stops, its middle at %d: as pixel by pixel',
    (bearingDeg, stops, fraction) => {
      const at = framing(bearingDeg);
      const found = defined(
        read(at, { graduation: { stops, fraction }, polariser: false }).filteredSky,
      );
      // The smooth step over a quarter of the height, written anew.
      const passed = ({ y }: Pixel): number => {
        const t = Math.min(1, Math.max(0, (y - fraction) * 4 + 0.5));
        return 0.5 ** (stops * (3 * t ** 2 - 2 * t ** 3));
      };
      const { all } = pixels(at);
      // 120 × 80 pixels and 740 cells of the reading: two hundredths.
      expect(error(found.reading.meanEv - evOf(mean(all, passed)))).toBeLessThan(0.02);
      const inPatch = all.filter((pixel) => pixel.inPatch);
      expect(error(found.reading.patchEv - evOf(mean(inPatch, passed)))).toBeLessThan(0.03);
      expect(found.polariser).toBeNull();
    },
  );

  test('far above the picture it takes nothing, far below all of its stops', () => {
    const at = framing(300);
    const plain = defined(read(at, null).skyInFrame);
    const behind = (fraction: number) =>
      defined(read(at, { graduation: { stops: 2, fraction }, polariser: false }).filteredSky)
        .reading;
    expect(behind(2).meanEv).toBeCloseTo(plain.meanEv, 9);
    expect(plain.patchEv - behind(-2).patchEv).toBeCloseTo(2, 9);
    expect(plain.brightEv - behind(-2).brightEv).toBeCloseTo(2, 9);
  });

  test('the sky itself is read as it is, filters or none', () => {
    const at = framing(300);
    const filters = { graduation: { stops: 2, fraction: 0 }, polariser: true };
    expect(read(at, filters).skyInFrame).toEqual(read(at, null).skyInFrame);
    expect(read(at, null).filteredSky).toBeNull();
  });
});

/** Of a filter turned in steps of two degrees before every pixel: Malus on the polarised part. */
function turned(
  at: ReturnType<typeof framing>,
  of: (pixel: Pixel) => boolean,
): readonly [number, number] {
  const { all, right, up, sun } = pixels(at);
  const seen = all.filter(of);
  let [least, most] = [Infinity, -Infinity];
  for (let turn = 0; turn < 180; turn += 2) {
    const axis = minus(minus([0, 0, 0], right, -Math.cos(turn * RAD)), up, -Math.sin(turn * RAD));
    const left = mean(seen, ({ d }) => {
      const cosine = dot(d, sun);
      const share = (0.75 * (1 - cosine ** 2)) / (1 + cosine ** 2);
      const swing = unit(cross(sun, d));
      const along = unit(minus(axis, d, dot(axis, d)));
      return (1 - share) / 2 + share * dot(swing, along) ** 2;
    });
    const taken = -Math.log2(left / mean(seen, () => 0.5));
    least = Math.min(least, taken);
    most = Math.max(most, taken);
  }
  return [least, most];
}

describe('a polariser on the sky in the frame', () => {
  const error = largestError('polariser on the sky against turning it pixel by pixel', 'stop', {
    quantity: 'sky behind filters',
    method: 'polariser, its best and worst turn',
    comparedWith: 'an ideal filter turned before every pixel',
  });

  test.each([
    [200, 85],
    [200, 35],
    [30, 50],
    [260, 35],
    [300, 24],
  ])(
    'bearing %d° at %d mm: least and most as turned before every pixel',
    (bearingDeg, focalLengthMm) => {
      const at = framing(bearingDeg, focalLengthMm);
      const range = defined(
        defined(read(at, { graduation: null, polariser: true }).filteredSky).polariser,
      );
      const [frameLeast, frameMost] = turned(at, () => true);
      // Rays across a wide picture meet the filter aslant, which is left out: a hundredth.
      expect(error(range.frame.leastStops - frameLeast)).toBeLessThan(0.01);
      expect(error(range.frame.mostStops - frameMost)).toBeLessThan(0.01);
      const [patchLeast, patchMost] = turned(at, ({ inPatch }) => inPatch);
      expect(error(range.patch.leastStops - patchLeast)).toBeLessThan(0.01);
      expect(error(range.patch.mostStops - patchMost)).toBeLessThan(0.01);
    },
  );

  test('does more across the sun than towards it, and nothing under an overcast', () => {
    const most = (bearingDeg: number, condition?: 'heavy-overcast'): number =>
      defined(
        defined(
          read(framing(bearingDeg, 85), { graduation: null, polariser: true }, condition)
            .filteredSky,
        ).polariser,
      ).frame.mostStops;
    const { azimuthDeg } = read(framing(0), null).sun;
    expect(most(azimuthDeg + 90)).toBeGreaterThan(1.6);
    expect(most(azimuthDeg)).toBeLessThan(0.2);
    expect(most(azimuthDeg + 90, 'heavy-overcast')).toBe(0);
  });

  test('recipes count on the middle of what it does', () => {
    const at = framing(200, 85);
    const { skyInFrame, filteredSky } = read(at, { graduation: null, polariser: true });
    const { reading, polariser } = defined(filteredSky);
    const { patch: onPatch, frame: onFrame } = defined(polariser);
    const taken = defined(skyInFrame).patchEv - reading.patchEv;
    expect(taken).toBeCloseTo((onPatch.leastStops + onPatch.mostStops) / 2, 9);
    expect(defined(skyInFrame).meanEv - reading.meanEv).toBeCloseTo(onFrame.middleStops, 9);
  });
});
