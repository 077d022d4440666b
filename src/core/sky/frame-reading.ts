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

/** What the luminances found at the samples say, with the sky next to the sun apart. */
export const readFrame = (
  samples: FrameSamples,
  luminanceCdM2: Float64Array,
  sun: { readonly sunInFrame: boolean; readonly nextToSunCdM2: number | null },
): FrameReading => {
  const { areaFraction, frameCells, edgePoints, patchCells } = samples;
  const seen = frameCells + edgePoints;
  let least = sun.nextToSunCdM2 ?? Infinity;
  let most = sun.nextToSunCdM2 ?? -Infinity;
  for (let at = 0; at < seen; at += 1) {
    const luminance = luminanceCdM2[at] ?? NaN;
    if (luminance < least) least = luminance;
    if (luminance > most) most = luminance;
  }
  const frame = meanOver(areaFraction, luminanceCdM2, 0, frameCells);
  const patch = meanOver(areaFraction, luminanceCdM2, seen, seen + patchCells);
  const patchIsFrame = patchCells === 0;
  const [dark, bright] = weightedQuantiles(
    { values: luminanceCdM2, weights: areaFraction, count: frameCells },
    [0.05, 0.95],
  );
  return {
    minEv: ev100FromLuminance(least),
    darkEv: ev100FromLuminance(dark ?? NaN),
    meanEv: ev100FromLuminance(frame.mean),
    brightEv: ev100FromLuminance(bright ?? NaN),
    maxEv: ev100FromLuminance(most),
    patchEv: ev100FromLuminance(patchIsFrame ? frame.mean : patch.mean),
    patchIsFrame,
    skyShare: frame.area,
    sunInFrame: sun.sunInFrame,
  };
};

const meanOver = (
  areaFraction: Float64Array,
  luminanceCdM2: Float64Array,
  from: number,
  to: number,
): { readonly mean: number; readonly area: number } => {
  let area = 0;
  let sum = 0;
  for (let at = from; at < to; at += 1) {
    const weight = areaFraction[at] ?? NaN;
    area += weight;
    sum += weight * (luminanceCdM2[at] ?? NaN);
  }
  return { mean: sum / area, area };
};
