import type { SunPosition } from '../sun-moon/sun-position.ts';
import { luminancesTowards, type Sky } from './condition-sky.ts';
import { type FrameReading, frameReading } from './frame-reading.ts';
import { type FrameInput, frameSamples, withPatch } from './frame-samples.ts';
import type { Patch } from './patch.ts';
import { type SunInPicture, sunInPicture } from './sun-in-picture.ts';

/**
 * How bright the sky inside a framing is, weighted by picture area. What is at or below 0° or
 * below the skyline is never sky; null when the frame shows none.
 */
export const skyInFrame = (
  input: FrameInput & {
    readonly sky: Sky;
    readonly patch?: Patch | null | undefined;
    /** Without it no sun is in the frame. */
    readonly sun?: SunPosition | undefined;
  },
): FrameReading | null => {
  const frame = frameSamples(input);
  if (frame === null) return null;
  const samples = withPatch(frame, input.patch);
  const { inFrame, nearestSky } =
    input.sun === undefined ? NO_SUN : sunInPicture(samples.scene, input.sun);
  return frameReading(samples)(luminancesTowards(input.sky, samples.directions), {
    sunInFrame: inFrame,
    nextToSunCdM2: nearestSky === null ? null : input.sky(nearestSky),
  });
};

const NO_SUN: SunInPicture = { inFrame: false, nearestSky: null };
