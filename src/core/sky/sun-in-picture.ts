import type { SunPosition } from '../sun-moon/sun-position.ts';
import type { Direction } from '../units/direction.ts';
import { isInsidePicture } from './framing.ts';
import { type FrameScene, JUST_ABOVE_DEG } from './sky-cells.ts';

export type SunInPicture = {
  /** The sun's centre projects inside the picture and stands above the skyline. */
  readonly inFrame: boolean;
  /** The sky of the frame next to the sun, its own direction when in the frame; null when the frame turns away. */
  readonly nearestSky: Direction | null;
};

export const sunInPicture = (scene: FrameScene, sun: SunPosition): SunInPicture => {
  const direction = { azimuthDeg: sun.azimuthDeg, altitudeDeg: sun.apparentAltitudeDeg };
  const point = scene.toPicture(direction);
  if (point === null) return { inFrame: false, nearestSky: null };
  if (isInsidePicture(point) && scene.isSky(direction)) {
    return { inFrame: true, nearestSky: direction };
  }
  const inside = scene.toDirection({
    xFraction: held(point.xFraction),
    yFraction: held(point.yFraction),
  });
  return { inFrame: false, nearestSky: scene.isSky(inside) ? inside : overSkyline(scene, inside) };
};

const held = (fraction: number): number => Math.min(0.5, Math.max(-0.5, fraction));

const overSkyline = (scene: FrameScene, { azimuthDeg }: Direction): Direction | null => {
  const altitudeDeg = Math.max(0, scene.skylineAltitude(azimuthDeg)) + JUST_ABOVE_DEG;
  const point = scene.toPicture({ azimuthDeg, altitudeDeg });
  return point !== null && isInsidePicture(point) ? { azimuthDeg, altitudeDeg } : null;
};
