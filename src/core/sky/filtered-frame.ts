import { graduatedStops, type Graduation } from '../colour/graduated-filter.ts';
import type { SkyCondition } from '../daylight/sky-condition.ts';
import { cosDeg, sinDeg } from '../units/angle.ts';
import { frameReading, type FrameReading, type SkyByTheSun } from './frame-reading.ts';
import { unitVector, type Framing, type UnitVector } from './framing.ts';
import type { FrameSamples } from './frame-samples.ts';
import { polarisedShare, polariserRange, type PolariserRange } from './polarised-sky.ts';

/** Filters before the lens that do not take the same from every part of the picture. */
export type SkyFilters = {
  readonly graduation: Graduation | null;
  readonly polariser: boolean;
};

/** The sky of a frame behind them; what they take from everything alike is not in it. */
export type FilteredFrame = {
  /** Behind the graduated filter and, with a polariser, at the middle of what turning it does. */
  readonly reading: FrameReading;
  /** Null without a polariser. */
  readonly polariser: { readonly patch: PolariserRange; readonly frame: PolariserRange } | null;
};

type SunAt = { readonly azimuthDeg: number; readonly apparentAltitudeDeg: number };

/** Reads a frame behind filters from the luminances that its samples have without them. */
export function filteredFrame(
  samples: FrameSamples,
  scene: {
    readonly framing: Framing;
    readonly condition: SkyCondition;
    readonly filters: SkyFilters;
  },
): (luminanceCdM2: Float64Array, sun: SunAt, sky: SkyByTheSun) => FilteredFrame {
  const { framing, condition, filters } = scene;
  const read = frameReading(samples);
  const passed = Float64Array.from(samples.directions, (direction) =>
    passedShare(filters.graduation, samples.scene.toPicture(direction)?.yFraction ?? 0),
  );
  const seen = samples.frameCells + samples.edgePoints;
  return (luminanceCdM2, sun, sky) => {
    const behind = luminanceCdM2.map((luminance, at) => luminance * (passed[at] ?? NaN));
    const reading = read(behind, { ...sky, nextToSunCdM2: null });
    if (!filters.polariser) return { reading, polariser: null };
    const shareOf = polarisedShareOf(samples, behind, { framing, condition, sun });
    const frame = polariserRange(shareOf(0, samples.frameCells));
    const patch =
      samples.patchCells === 0 ? frame : polariserRange(shareOf(seen, seen + samples.patchCells));
    return { reading: darker(reading, frame, patch), polariser: { frame, patch } };
  };
}

const passedShare = (graduation: Graduation | null, yFraction: number): number =>
  graduation === null ? 1 : 2 ** -graduatedStops(graduation, yFraction);

const darker = (
  reading: FrameReading,
  { middleStops }: PolariserRange,
  patch: PolariserRange,
): FrameReading => ({
  ...reading,
  minEv: reading.minEv - middleStops,
  darkEv: reading.darkEv - middleStops,
  meanEv: reading.meanEv - middleStops,
  brightEv: reading.brightEv - middleStops,
  maxEv: reading.maxEv - middleStops,
  patchEv: reading.patchEv - patch.middleStops,
});

/**
 * Share of polarised light that one turn of the ring meets in a part of the frame. Every direction
 * swings across the plane through it and the sun, so over a wide part the swings partly cancel: they
 * add as vectors of twice their angle. [rayleighScattering]
 */
function polarisedShareOf(
  samples: FrameSamples,
  luminanceCdM2: Float64Array,
  scene: { readonly framing: Framing; readonly condition: SkyCondition; readonly sun: SunAt },
): (from: number, to: number) => number {
  const { framing, condition, sun } = scene;
  const share = polarisedShare(condition, sun);
  const swing = swingOf(framing, sun);
  return (from, to) => {
    let [level, upright, all] = [0, 0, 0];
    for (let at = from; at < to; at += 1) {
      const direction = samples.directions[at];
      if (direction === undefined) continue;
      const light = (luminanceCdM2[at] ?? NaN) * (samples.areaFraction[at] ?? NaN);
      const { cosTwice, sinTwice } = swing(unitVector(direction));
      const polarised = light * share(direction);
      level += polarised * cosTwice;
      upright += polarised * sinTwice;
      all += light;
    }
    return all > 0 ? Math.hypot(level, upright) / all : 0;
  };
}

/** The swing of the light from a direction, as seen across the lens axis. */
function swingOf(
  { bearingDeg, tiltDeg }: Framing,
  sun: SunAt,
): (towards: UnitVector) => { readonly cosTwice: number; readonly sinTwice: number } {
  const s = unitVector({ azimuthDeg: sun.azimuthDeg, altitudeDeg: sun.apparentAltitudeDeg });
  const right = { east: cosDeg(bearingDeg), north: -sinDeg(bearingDeg) };
  const up = {
    east: -sinDeg(tiltDeg) * sinDeg(bearingDeg),
    north: -sinDeg(tiltDeg) * cosDeg(bearingDeg),
    up: cosDeg(tiltDeg),
  };
  return (d) => {
    const across = {
      east: s.north * d.up - s.up * d.north,
      north: s.up * d.east - s.east * d.up,
      up: s.east * d.north - s.north * d.east,
    };
    const x = across.east * right.east + across.north * right.north;
    const y = across.east * up.east + across.north * up.north + across.up * up.up;
    const square = x * x + y * y;
    return square === 0
      ? { cosTwice: 0, sinTwice: 0 }
      : { cosTwice: (x * x - y * y) / square, sinTwice: (2 * x * y) / square };
  };
}
