import type { SunPosition } from '../sun-moon/sun-position.ts';
import type { Direction } from '../units/direction.ts';
import { luminancesTowards, type Sky } from './condition-sky.ts';
import { type FrameReading, readFrame } from './frame-reading.ts';
import { type FrameInput, frameSamples } from './frame-samples.ts';
import { isInsidePicture } from './framing.ts';
import type { FrameScene } from './sky-cells.ts';

/**
 * How bright the sky inside a framing is, weighted by picture area. What is at or below 0° or
 * below the skyline is never sky; null when the frame shows none.
 */
export const skyInFrame = (
  input: FrameInput & {
    readonly sky: Sky;
    /** Without it no sun is in the frame. */
    readonly sun?: SunPosition | undefined;
  },
): FrameReading | null => {
  const samples = frameSamples(input);
  if (samples === null) return null;
  const sun = input.sun === undefined ? null : sunInPicture(samples.scene, input.sun);
  return readFrame(
    samples,
    luminancesTowards(input.sky, samples.directions),
    sun === null ? null : input.sky(sun),
  );
};

/** Where the sun's centre appears, null when outside the picture or behind the skyline. */
export const sunInPicture = (scene: FrameScene, sun: SunPosition): Direction | null => {
  const direction = { azimuthDeg: sun.azimuthDeg, altitudeDeg: sun.apparentAltitudeDeg };
  if (!scene.isSky(direction)) return null;
  const point = scene.toPicture(direction);
  return point !== null && isInsidePicture(point) ? direction : null;
};
