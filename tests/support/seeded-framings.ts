import type { SkylinePoint } from '../../src/core/skyline/skyline.ts';
import type { Framing } from '../../src/core/sky/framing.ts';
import type { Patch } from '../../src/core/sky/patch.ts';
import type { SunPosition } from '../../src/core/sun-moon/sun-position.ts';

/** Mulberry32: the same numbers from 0 to 1 on every machine. */
export const seededRandom = (seed: number): (() => number) => {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
};

export type SeededScene = {
  readonly framing: Framing;
  readonly skyline: readonly SkylinePoint[];
  readonly patch: Patch;
  readonly sun: SunPosition;
};

/**
 * A camera with 14 to 200 mm on 36 × 24 mm, level or upright, tilted −20° to +40°, a ragged
 * skyline of 36 points up to 15°, sometimes 30°, and a sun, half the time near the frame.
 */
export const seededScene = (random: () => number): SeededScene => {
  const between = (least: number, most: number): number => least + (most - least) * random();
  const upright = random() < 0.5;
  const bearingDeg = between(0, 360);
  const height = random() < 0.2 ? 30 : 15;
  const sunAltitudeDeg = between(0.5, 70);
  const sunAzimuthDeg = random() < 0.5 ? bearingDeg + between(-40, 40) : between(0, 360);
  return {
    framing: {
      bearingDeg,
      tiltDeg: between(-20, 40),
      focalLengthMm: 14 * (200 / 14) ** random(),
      sensorWidthMm: upright ? 24 : 36,
      sensorHeightMm: upright ? 36 : 24,
    },
    skyline: Array.from({ length: 36 }, (_, at) => ({
      azimuthDeg: 10 * at + between(0, 5),
      altitudeDeg: between(0, height),
    })),
    patch: {
      xFraction: between(-0.45, 0.45),
      yFraction: between(-0.45, 0.45),
      widthFraction: 0.1,
      heightFraction: 0.1,
    },
    sun: {
      azimuthDeg: (sunAzimuthDeg + 360) % 360,
      trueAltitudeDeg: sunAltitudeDeg,
      apparentAltitudeDeg: sunAltitudeDeg,
    },
  };
};
