import { describe, expect, test } from 'vitest';
import { generalSkyRelativeLuminance } from '../../../src/core/sky/general-sky.ts';
import type { GeneralSkyType } from '../../../src/core/sky/general-sky.data.ts';
import { skyInFrame } from '../../../src/core/sky/sky-in-frame.ts';
import { twilightSkyLuminance } from '../../../src/core/sky/twilight-sky.ts';
import { pixelSky } from '../../support/pixel-sky.ts';
import { seededRandom, seededScene } from '../../support/seeded-framings.ts';

describe('against a look through every pixel of 720 × 480, 208 seeded framings', () => {
  const errors: Record<string, { error: number; at: string }[]> = {};
  const random = seededRandom(20270514);
  let looks = 0;
  for (let scene = 0; looks < 208 && scene < 1000; scene += 1) {
    const { framing, skyline, patch, sun } = seededScene(random);
    const kind = looks % 16;
    const duskSun = { ...sun, trueAltitudeDeg: -4, apparentAltitudeDeg: -4 };
    const sky =
      kind === 15
        ? (d: { azimuthDeg: number; altitudeDeg: number }) => twilightSkyLuminance(duskSun, d)
        : (d: { azimuthDeg: number; altitudeDeg: number }) =>
            4000 * generalSkyRelativeLuminance((kind + 1) as GeneralSkyType, sun, d);
    const pixels = pixelSky({ sky, framing, skyline, patch });
    const t0 = performance.now();
    const read = skyInFrame({ sky, framing, skyline, patch });
    void t0;
    if (pixels === null || read === null) {
      if ((pixels === null) !== (read === null)) console.log('null mismatch', pixels?.skyShare, read?.skyShare);
      continue;
    }
    looks += 1;
    for (const key of ['minEv', 'darkEv', 'meanEv', 'brightEv', 'maxEv', 'patchEv'] as const) {
      if (key === 'patchEv' && (read.patchIsFrame || pixels.patchPixels === 0)) continue;
      (errors[key] ??= []).push({ error: Math.abs(read[key] - pixels[key]), at: `${kind + 1} f${framing.focalLengthMm.toFixed(0)} share ${pixels.skyShare.toFixed(4)} patch ${pixels.patchPixels} sunalt ${sun.apparentAltitudeDeg.toFixed(1)}` });
    }
    (errors['skyShare'] ??= []).push({ error: Math.abs(read.skyShare - pixels.skyShare), at: '' });
  }
  test('x', () => {
    for (const [key, list] of Object.entries(errors)) {
      list.sort((a, b) => b.error - a.error);
      console.log(key, list.length, 'worst', list.slice(0, 6).map((e) => `${e.error.toFixed(4)} (${e.at})`).join('; '), '95 %', list[Math.floor(list.length * 0.05)]?.error.toFixed(4));
    }
    expect(looks).toBe(208);
  });
});
