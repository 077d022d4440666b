import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Framing } from '../../../src/core/sky/framing.ts';
import { patchSkyShare, placePatch } from '../../../src/core/sky/patch.ts';
import { skylineAltitude } from '../../../src/core/skyline/skyline.ts';

const FRAMING: Framing = {
  bearingDeg: 250,
  tiltDeg: 0,
  focalLengthMm: 35,
  sensorWidthMm: 36,
  sensorHeightMm: 24,
};
const head = { xFraction: 0.1, yFraction: 0.2 };
const open = skylineAltitude([]);

describe('the patch beside the head', () => {
  test('lies a quarter of the width away, at the head’s height, away from the sun', () => {
    const sunRight = placePatch({
      framing: FRAMING,
      skylineAltitude: open,
      head,
      sun: { azimuthDeg: 290 },
    });
    expect(sunRight).toMatchObject({ widthFraction: 0.1, heightFraction: 0.1 });
    expect(sunRight?.xFraction).toBeCloseTo(-0.15, 9);
    expect(sunRight?.yFraction).toBeCloseTo(0.2, 9);
    const sunLeft = placePatch({
      framing: FRAMING,
      skylineAltitude: open,
      head,
      sun: { azimuthDeg: 120 },
    });
    expect(sunLeft?.xFraction).toBeCloseTo(0.35, 9);
  });

  test('changes side when that side has no room', () => {
    const placed = placePatch({
      framing: FRAMING,
      skylineAltitude: open,
      head: { xFraction: 0.3, yFraction: 0.2 },
      sun: { azimuthDeg: 230 },
    });
    expect(placed?.xFraction).toBeCloseTo(0.05, 9);
  });

  test('starts half on the sky where the horizon runs through its middle', () => {
    // A level camera has the horizon at the picture's centre.
    const placed = placePatch({
      framing: FRAMING,
      skylineAltitude: open,
      head: { xFraction: 0, yFraction: 0 },
      sun: { azimuthDeg: 0 },
    });
    expect(placed?.yFraction).toBeCloseTo(0, 9);
  });

  test('climbs in twentieths until half of it clears the ridge', () => {
    // A ridge whose edge lands at a quarter of the height above the centre: tan a = 0.25 · 24/35.
    const ridgeDeg = (Math.atan((0.25 * 24) / 35) * 180) / Math.PI;
    const placed = placePatch({
      framing: FRAMING,
      skylineAltitude: () => ridgeDeg,
      head: { xFraction: 0, yFraction: 0.01 },
      sun: { azimuthDeg: 0 },
    });
    expect(placed?.yFraction).toBeCloseTo(0.26, 9); // 0.01 + 5 × 0.05; at 0.21 under half is sky
  });

  test('takes nothing below the level for sky, whatever the skyline says', () => {
    const placed = placePatch({
      framing: FRAMING,
      skylineAltitude: () => -10,
      head: { xFraction: 0, yFraction: -0.12 },
      sun: { azimuthDeg: 0 },
    });
    expect(placed?.yFraction).toBeCloseTo(0.03, 9); // at −0.02 the level cuts it above its middle
  });

  test('is none when the wall fills the picture', () => {
    expect(
      placePatch({ framing: FRAMING, skylineAltitude: () => 40, head, sun: { azimuthDeg: 0 } }),
    ).toBeNull();
    expect(
      placePatch({
        framing: { ...FRAMING, tiltDeg: -60 },
        skylineAltitude: open,
        head,
        sun: { azimuthDeg: 0 },
      }),
    ).toBeNull();
  });

  test('lies in the picture and is at least half sky, wherever the head is', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.5, max: 0.5, noNaN: true }),
        fc.double({ min: -0.6, max: 0.6, noNaN: true }),
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.double({ min: 0, max: 25, noNaN: true }),
        fc.double({ min: -20, max: 60, noNaN: true }),
        (xFraction, yFraction, azimuthDeg, ridgeDeg, tiltDeg) => {
          const scene = { framing: { ...FRAMING, tiltDeg }, skylineAltitude: () => ridgeDeg };
          const patch = placePatch({
            ...scene,
            head: { xFraction, yFraction },
            sun: { azimuthDeg },
          });
          if (patch === null) return;
          expect(Math.abs(patch.xFraction)).toBeLessThanOrEqual(0.45 + 1e-6);
          expect(Math.abs(patch.yFraction)).toBeLessThanOrEqual(0.45 + 1e-6);
          expect(Math.abs(patch.xFraction - xFraction)).toBeCloseTo(0.25, 6);
          expect(patchSkyShare({ ...scene, patch })).toBeGreaterThanOrEqual(0.5);
        },
      ),
    );
  });
});
