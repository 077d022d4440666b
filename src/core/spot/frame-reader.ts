import { type FrameReading, frameReading } from '../sky/frame-reading.ts';
import type { FrameSamples } from '../sky/frame-samples.ts';
import { fillLuminance, luminanceTowards, type SkyField } from '../sky/sky-field.ts';
import { type SkyModel, skyPoints } from '../sky/sky-model.ts';
import { sunInPicture } from '../sky/sun-in-picture.ts';
import type { SunPosition } from '../sun-moon/sun-position.ts';

/** Reads one framing under one condition as the sun moves; null when the frame shows no sky. */
export const frameReader = (
  samples: FrameSamples | null,
  model: SkyModel,
): ((field: SkyField, sun: SunPosition) => FrameReading | null) => {
  if (samples === null) return () => null;
  const read = frameReading(samples);
  const points = skyPoints(model.standard, samples.directions);
  const luminanceCdM2 = new Float64Array(samples.directions.length);
  return (field, sun) => {
    fillLuminance(field, points, luminanceCdM2);
    const { inFrame, nearestSky } = sunInPicture(samples.scene, sun);
    return read(luminanceCdM2, {
      sunInFrame: inFrame,
      nextToSunCdM2: nearestSky === null ? null : luminanceTowards(field, nearestSky),
    });
  };
};
