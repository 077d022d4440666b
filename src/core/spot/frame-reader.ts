import type { SkyCondition } from '../daylight/sky-condition.ts';
import { type FilteredFrame, filteredFrame, type SkyFilters } from '../sky/filtered-frame.ts';
import { type FrameReading, frameReading, type SkyByTheSun } from '../sky/frame-reading.ts';
import type { Framing } from '../sky/framing.ts';
import type { FrameSamples } from '../sky/frame-samples.ts';
import { fillLuminance, luminanceTowards, type SkyField } from '../sky/sky-field.ts';
import { type SkyModel, skyPoints } from '../sky/sky-model.ts';
import { sunInPicture } from '../sky/sun-in-picture.ts';
import type { SunPosition } from '../sun-moon/sun-position.ts';

/** The sky of a frame, and the same behind the filters that part it. */
export type FrameReadings = {
  readonly plain: FrameReading;
  /** Null without such filters. */
  readonly filtered: FilteredFrame | null;
};

/** Reads one framing under one condition as the sun moves; null when the frame shows no sky. */
export const frameReader = (
  samples: FrameSamples | null,
  model: SkyModel,
  scene: {
    readonly framing: Framing;
    readonly condition: SkyCondition;
    readonly skyFilters?: SkyFilters | null | undefined;
  },
): ((field: SkyField, sun: SunPosition) => FrameReadings | null) => {
  if (samples === null) return () => null;
  const read = frameReading(samples);
  const filters = scene.skyFilters ?? null;
  const readFiltered = filters === null ? null : filteredFrame(samples, { ...scene, filters });
  const points = skyPoints(model.standard, samples.directions);
  const luminanceCdM2 = new Float64Array(samples.directions.length);
  return (field, sun) => {
    fillLuminance(field, points, luminanceCdM2);
    const { inFrame, nearestSky } = sunInPicture(samples.scene, sun);
    const byTheSun: SkyByTheSun = {
      sunInFrame: inFrame,
      nextToSunCdM2: nearestSky === null ? null : luminanceTowards(field, nearestSky),
    };
    return {
      plain: read(luminanceCdM2, byTheSun),
      filtered: readFiltered?.(luminanceCdM2, sun, byTheSun) ?? null,
    };
  };
};
