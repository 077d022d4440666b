import { ev100FromLuminance } from '../exposure/exposure-value.ts';
import type { FrameSamples } from './frame-samples.ts';
import { weightedQuantiles } from './weighted-quantiles.ts';

/** The sky inside a framing; EV at ISO 100. */
export type FrameReading = {
  /** Least luminance of the sky in the frame. */
  readonly minEv: number;
  /** One twentieth of its picture area is darker. */
  readonly darkEv: number;
  /** Of the mean luminance over its picture area. */
  readonly meanEv: number;
  /** One twentieth of its picture area is brighter. */
  readonly brightEv: number;
  /** Greatest luminance, the sky in the sun's own direction included when the sun is in it. */
  readonly maxEv: number;
  /** Of the mean luminance over the patch's sky; of the whole frame's when there is none. */
  readonly patchEv: number;
  /** No patch was asked for or it shows no sky: the whole frame stands in. */
  readonly patchIsFrame: boolean;
  /** Share of the picture that is sky, 0 to 1. */
  readonly skyShare: number;
  /** The sun's centre stands in the picture and above the skyline. */
  readonly sunInFrame: boolean;
};

/** The sky next to the sun, looked at apart because the sun moves. */
export type SkyByTheSun = {
  readonly sunInFrame: boolean;
  /** Null when the frame turns away from the sun. */
  readonly nextToSunCdM2: number | null;
};

/** What the luminances found at the samples say. */
export const frameReading = (
  samples: FrameSamples,
): ((luminanceCdM2: Float64Array, sun: SkyByTheSun) => FrameReading) => {
  const { areaFraction, frameCells, edgePoints, patchCells } = samples;
  const seen = frameCells + edgePoints;
  const patchIsFrame = patchCells === 0;
  const frameArea = areaFraction.subarray(0, frameCells);
  const patchArea = areaFraction.subarray(seen);
  const twentieths = weightedQuantiles(frameArea, [0.05, 0.95]);
  const skyShare = frameArea.reduce((sum, area) => sum + area, 0);

  return (luminanceCdM2, { sunInFrame, nextToSunCdM2 }) => {
    let least = nextToSunCdM2 ?? Infinity;
    let most = nextToSunCdM2 ?? -Infinity;
    for (let at = 0; at < seen; at += 1) {
      const luminance = luminanceCdM2[at] ?? NaN;
      if (luminance < least) least = luminance;
      if (luminance > most) most = luminance;
    }
    const mean = weightedMean(luminanceCdM2, frameArea, 0);
    const [dark, bright] = twentieths(luminanceCdM2);
    return {
      minEv: ev100FromLuminance(least),
      darkEv: ev100FromLuminance(dark ?? NaN),
      meanEv: ev100FromLuminance(mean),
      brightEv: ev100FromLuminance(bright ?? NaN),
      maxEv: ev100FromLuminance(most),
      patchEv: ev100FromLuminance(
        patchIsFrame ? mean : weightedMean(luminanceCdM2, patchArea, seen),
      ),
      patchIsFrame,
      skyShare,
      sunInFrame,
    };
  };
};

/** Of as many values as there are weights, from a place in the list on. */
const weightedMean = (values: Float64Array, weights: Float64Array, from: number): number => {
  let total = 0;
  let sum = 0;
  for (let at = 0; at < weights.length; at += 1) {
    const weight = weights[at] ?? NaN;
    total += weight;
    sum += weight * (values[from + at] ?? NaN);
  }
  return sum / total;
};
