import { sinDeg } from '../units/angle.ts';
import type { Direction } from '../units/direction.ts';
import { projection, type Framing, type PicturePoint } from './framing.ts';

/** A rectangle of the picture that the sky is judged by. */
export type Patch = PicturePoint & {
  /** Of the picture's width. */
  readonly widthFraction: number;
  /** Of the picture's height. */
  readonly heightFraction: number;
};

export const DEFAULT_PATCH_SIZE = { widthFraction: 0.1, heightFraction: 0.1 } as const;

const BESIDE_HEAD_FRACTION = 0.25;
/** With less room than this between head and edge the patch goes to the other side. */
const CLEAR_OF_HEAD_FRACTION = 0.2;
const STEP_UP_FRACTION = 0.05;
const LEAST_SKY_SHARE = 0.5;
const SAMPLES_ACROSS = 16;
const ROUNDING = 1e-9;

/**
 * The patch beside the subject's head: a quarter of the picture away from it, on the side away
 * from the sun where there is room for it, and no lower than the head, moved up until at
 * least half of it is sky. Null when no height in the picture gives that. With the sun straight
 * ahead or behind it goes to the left.
 */
export const placePatch = (scene: {
  readonly framing: Framing;
  readonly skylineAltitude: (azimuthDeg: number) => number;
  /** Of the subject's head in the picture. */
  readonly head: PicturePoint;
  readonly sun: Pick<Direction, 'azimuthDeg'>;
}): Patch | null => {
  const xFraction = besideHead(scene);
  const { heightFraction } = DEFAULT_PATCH_SIZE;
  const lowest = -0.5 + heightFraction / 2;
  const highest = 0.5 - heightFraction / 2;
  const startFraction = Math.min(Math.max(scene.head.yFraction, lowest), highest);
  for (let step = 0; startFraction + step * STEP_UP_FRACTION <= highest + ROUNDING; step += 1) {
    const yFraction = startFraction + step * STEP_UP_FRACTION;
    const patch = { ...DEFAULT_PATCH_SIZE, xFraction, yFraction };
    if (patchSkyShare({ ...scene, patch }) >= LEAST_SKY_SHARE) return patch;
  }
  return null;
};

/** Share of the patch's picture area that is above the skyline and above the level, 0 to 1. */
export const patchSkyShare = (scene: {
  readonly framing: Framing;
  readonly skylineAltitude: (azimuthDeg: number) => number;
  readonly patch: Patch;
}): number => {
  const { patch, skylineAltitude } = scene;
  const { toDirection } = projection(scene.framing);
  let inSky = 0;
  for (let row = 0; row < SAMPLES_ACROSS; row += 1) {
    for (let column = 0; column < SAMPLES_ACROSS; column += 1) {
      const { azimuthDeg, altitudeDeg } = toDirection({
        xFraction: patch.xFraction + patch.widthFraction * fromCentre(column),
        yFraction: patch.yFraction + patch.heightFraction * fromCentre(row),
      });
      if (altitudeDeg > 0 && altitudeDeg > skylineAltitude(azimuthDeg)) inSky += 1;
    }
  }
  return inSky / SAMPLES_ACROSS ** 2;
};

const fromCentre = (sample: number): number => (sample + 0.5) / SAMPLES_ACROSS - 0.5;

const besideHead = (scene: {
  readonly framing: Framing;
  readonly head: PicturePoint;
  readonly sun: Pick<Direction, 'azimuthDeg'>;
}): number => {
  const sunIsLeft = sinDeg(scene.sun.azimuthDeg - scene.framing.bearingDeg) < 0;
  const awayFromSun = sunIsLeft ? BESIDE_HEAD_FRACTION : -BESIDE_HEAD_FRACTION;
  const furthest = 0.5 - DEFAULT_PATCH_SIZE.widthFraction / 2;
  const wished = scene.head.xFraction + awayFromSun;
  const inside = Math.min(furthest, Math.max(-furthest, wished));
  return Math.abs(inside - scene.head.xFraction) >= CLEAR_OF_HEAD_FRACTION
    ? inside
    : scene.head.xFraction - awayFromSun;
};
