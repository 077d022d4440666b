import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { generalSky } from '../../../src/core/sky/general-sky.ts';
import type { GeneralSkyType } from '../../../src/core/sky/general-sky.data.ts';
import { skyInFrame } from '../../../src/core/sky/sky-in-frame.ts';
import { twilightSkyLuminance } from '../../../src/core/sky/twilight-sky.ts';
import type { Direction } from '../../../src/core/units/direction.ts';
import { largestError } from '../../support/largest-error.ts';
import { pixelSky } from '../../support/pixel-sky.ts';
import { seededRandom, seededScene } from '../../support/seeded-framings.ts';

const LOOKS = 208; // 13 of each kind: fifteen standard skies and the twilight shape
const OUTPUTS = ['minEv', 'darkEv', 'meanEv', 'brightEv', 'maxEv', 'patchEv'] as const;

describe('a look through every pixel of 720 × 480 finds the same, over 208 seeded framings', () => {
  const errors = compareWithPixels();
  const record = largestError('sky in frame, every pixel', 'stop', {
    quantity: 'sky in frame',
    method: 'sums over picture area: darkest, mean, brightest, patch',
    comparedWith: 'every pixel of 720 × 480, 208 framings, 16 skies',
  });

  test.each(OUTPUTS)('%s: 19 of 20 within 0.02 stop, the worst within 0.05', (output) => {
    const sorted = errors[output].toSorted((one, other) => other - one);
    const worst = sorted[0] ?? NaN;
    const at95 = sorted[Math.floor(sorted.length * 0.05)] ?? NaN;
    console.log(
      `${output}: ${sorted.length} looks, worst ${worst.toFixed(4)}, 95 % ${at95.toFixed(4)} stop`,
    );
    expect(sorted.length).toBeGreaterThan(100);
    sorted.forEach((error) => record(error));
    expect(worst).toBeLessThan(0.05);
    expect(at95).toBeLessThan(0.02);
  });

  test('the share of sky within a thousandth of the picture', () => {
    expect(Math.max(...errors.skyShare)).toBeLessThan(0.001);
  });
});

type Errors = Record<(typeof OUTPUTS)[number] | 'skyShare', number[]>;

function compareWithPixels(): Errors {
  const errors: Errors = {
    minEv: [],
    darkEv: [],
    meanEv: [],
    brightEv: [],
    maxEv: [],
    patchEv: [],
    skyShare: [],
  };
  const random = seededRandom(20270514);
  for (let look = 0; look < LOOKS;) {
    const { framing, skyline, patch, sun } = seededScene(random);
    const kind = look % 16;
    const duskSun = { ...sun, trueAltitudeDeg: -4, apparentAltitudeDeg: -4 };
    const lookSun = kind === 15 ? duskSun : sun;
    const sky =
      kind === 15
        ? (direction: Direction): number => twilightSkyLuminance(duskSun, direction)
        : generalSky((kind + 1) as GeneralSkyType, sun);
    const pixels = pixelSky({ sky, framing, skyline, patch });
    const read = skyInFrame({ sky, framing, skyline, patch, sun: lookSun });
    // A sliver narrower than the sampling may be seen by one of them alone.
    if (pixels === null || read === null) {
      errors.skyShare.push(pixels?.skyShare ?? read?.skyShare ?? 0);
      continue;
    }
    look += 1;
    errors.skyShare.push(Math.abs(read.skyShare - pixels.skyShare));
    for (const output of OUTPUTS) {
      if (output === 'patchEv' && (read.patchIsFrame || pixels.patchPixels === 0)) continue;
      errors[output].push(Math.abs(read[output] - pixels[output]));
    }
  }
  return errors;
}

const LEVEL = {
  bearingDeg: 90,
  tiltDeg: 0,
  focalLengthMm: 50,
  sensorWidthMm: 36,
  sensorHeightMm: 24,
} as const;

test('an even sky reads as itself in any framing: darkest, mean, brightest and patch', () => {
  const random = fc.integer({ min: 1, max: 1_000_000 }).map(seededRandom);
  fc.assert(
    fc.property(random, fc.double({ min: 0.01, max: 30_000, noNaN: true }), (seeded, luminance) => {
      const read = skyInFrame({ ...seededScene(seeded), sky: () => luminance });
      if (read === null) return;
      const ev = Math.log2(luminance / 0.125); // K 12.5, ISO 2720
      for (const output of OUTPUTS) expect(read[output]).toBeCloseTo(ev, 9);
    }),
    { numRuns: 60 },
  );
});

test('from dark to bright the figures never cross', () => {
  const random = fc.integer({ min: 1, max: 1_000_000 }).map(seededRandom);
  fc.assert(
    fc.property(random, fc.integer({ min: 1, max: 15 }), (seeded, type) => {
      const scene = seededScene(seeded);
      const read = skyInFrame({ ...scene, sky: generalSky(type as GeneralSkyType, scene.sun) });
      if (read === null) return;
      const slack = 1e-9;
      expect(read.minEv).toBeLessThanOrEqual(read.darkEv + slack);
      expect(read.darkEv).toBeLessThanOrEqual(read.brightEv + slack);
      expect(read.brightEv).toBeLessThanOrEqual(read.maxEv + slack);
      expect(read.meanEv).toBeGreaterThanOrEqual(read.minEv - slack);
      expect(read.meanEv).toBeLessThanOrEqual(read.maxEv + slack);
    }),
    { numRuns: 60 },
  );
});

const levelSkyShare = (tiltDeg: number): number =>
  skyInFrame({ sky: () => 1000, framing: { ...LEVEL, tiltDeg }, skyline: [] })?.skyShare ?? NaN;

test('a level camera over a flat horizon sees sky in half the picture, a tilted one by its height', () => {
  const tolerance = 0.001; // a twentieth of a cell along the whole horizon
  expect(Math.abs(levelSkyShare(0) - 0.5)).toBeLessThan(tolerance);
  // The horizon lies f · tan(tilt) under the centre: 4.374 mm of 24 at 5°.
  expect(Math.abs(levelSkyShare(5) - (0.5 + 4.374 / 24))).toBeLessThan(tolerance);
});

test('a ground that fills the frame leaves no sky', () => {
  const down = { ...LEVEL, tiltDeg: -30 };
  expect(skyInFrame({ sky: () => 1000, framing: down, skyline: [] })).toBeNull();
  const behindWall = [{ azimuthDeg: 0, altitudeDeg: 60 }];
  expect(skyInFrame({ sky: () => 1000, framing: LEVEL, skyline: behindWall })).toBeNull();
});

test('what lies below the level is never looked at, and the sky above by at least 700 directions', () => {
  for (const tiltDeg of [-10, 0, 20]) {
    let looks = 0;
    const sky = ({ altitudeDeg }: Direction): number => {
      looks += 1;
      return altitudeDeg > 0 ? 1000 : NaN;
    };
    const read = skyInFrame({ sky, framing: { ...LEVEL, tiltDeg }, skyline: [] });
    expect(read?.meanEv).toBeCloseTo(Math.log2(8000), 9);
    expect(looks).toBeGreaterThanOrEqual(700);
  }
});

const sunAt = (azimuthDeg: number, altitudeDeg: number) => ({
  azimuthDeg,
  trueAltitudeDeg: altitudeDeg,
  apparentAltitudeDeg: altitudeDeg,
});

const readWithSun = (
  sun: ReturnType<typeof sunAt>,
  skyline: readonly { azimuthDeg: number; altitudeDeg: number }[] = [],
) => skyInFrame({ sky: generalSky(12, sun), framing: LEVEL, skyline, sun });

describe('the sun in the frame', () => {
  test('50 mm on 36 mm sees 19.8° to each side', () => {
    expect(readWithSun(sunAt(90 + 19.7, 0.5))?.sunInFrame).toBe(true);
    expect(readWithSun(sunAt(90 + 19.9, 0.5))?.sunInFrame).toBe(false);
    expect(readWithSun(sunAt(270, 5))?.sunInFrame).toBe(false);
  });

  test('it does not count behind a hill or under the horizon', () => {
    const hill = [{ azimuthDeg: 90, altitudeDeg: 6 }];
    expect(readWithSun(sunAt(90, 5), hill)?.sunInFrame).toBe(false);
    expect(readWithSun(sunAt(90, 7), hill)?.sunInFrame).toBe(true);
    expect(readWithSun(sunAt(90, -0.1))?.sunInFrame).toBe(false);
  });

  test('the brightest sky is then the sky in its own direction', () => {
    const sun = sunAt(94, 5);
    const sky = generalSky(12, sun);
    const expected = Math.log2(sky({ azimuthDeg: 94, altitudeDeg: 5 }) / 0.125);
    expect(readWithSun(sun)?.maxEv).toBeCloseTo(expected, 9);
  });
});

const brighterUp = ({ altitudeDeg }: Direction): number => 1000 + 100 * altitudeDeg;

const patchAt = (yFraction: number, xFraction = 0) => ({
  xFraction,
  yFraction,
  widthFraction: 0.1,
  heightFraction: 0.1,
});

describe('the patch', () => {
  test('reads the sky where it lies', () => {
    // 0.3 of 24 mm over the centre with 50 mm: 8.19° up.
    const read = skyInFrame({ sky: brighterUp, framing: LEVEL, skyline: [], patch: patchAt(0.3) });
    expect(read?.patchEv).toBeCloseTo(Math.log2(1819 / 0.125), 2);
    expect(read?.patchIsFrame).toBe(false);
  });

  test.each([
    ['none', null],
    ['below the horizon', patchAt(-0.3)],
    ['outside the picture', patchAt(0.3, 0.8)],
  ])('without sky (%s) the whole frame stands in', (_, patch) => {
    const read = skyInFrame({ sky: brighterUp, framing: LEVEL, skyline: [], patch });
    expect(read?.patchEv).toBe(read?.meanEv);
    expect(read?.patchIsFrame).toBe(true);
  });
});
