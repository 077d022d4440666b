import type { GeoPoint } from '../place/geo-point.ts';
import { isInsidePicture, projection, type Framing } from '../sky/framing.ts';
import { skylineAltitude, type Skyline } from '../skyline/skyline.ts';
import { sunPosition, type SunPosition } from '../sun-moon/sun-position.ts';

/** Epoch milliseconds; an end at the range's own end means that it lasts beyond. */
export type InstantSpan = { readonly fromMs: number; readonly toMs: number };

export type SunWindows = {
  /** Half or more of the sun's disc stands above the skyline. */
  readonly directSun: readonly InstantSpan[];
  /** The disc's centre stands in the picture, above the skyline and above the level. */
  readonly sunInFrame: readonly InstantSpan[];
};

const SEARCH_STEP_MS = 30_000;
const PRECISION_MS = 1_000;

/**
 * When direct sun falls on a spot and when the sun is in the frame, in order, to a second of
 * the sun's computed path. Gaps and glimpses of less than half a minute may be missed.
 */
export const sunWindows = (spot: {
  readonly fromMs: number;
  readonly toMs: number;
  readonly place: GeoPoint;
  readonly framing: Framing;
  readonly skyline: Skyline;
}): SunWindows => {
  const edgeDeg = skylineAltitude(spot.skyline);
  const { toPicture } = projection(spot.framing);

  const isAboveSkyline = (sun: SunPosition): boolean =>
    sun.apparentAltitudeDeg >= edgeDeg(sun.azimuthDeg);
  const isInFrame = (sun: SunPosition): boolean => {
    if (sun.apparentAltitudeDeg <= 0 || !isAboveSkyline(sun)) return false;
    const point = toPicture({
      azimuthDeg: sun.azimuthDeg,
      altitudeDeg: sun.apparentAltitudeDeg,
    });
    return point !== null && isInsidePicture(point);
  };

  const spans = (holds: (sun: SunPosition) => boolean): readonly InstantSpan[] =>
    spansWhere(spot, (instantMs) => holds(sunPosition(instantMs, spot.place)));
  return { directSun: spans(isAboveSkyline), sunInFrame: spans(isInFrame) };
};

const spansWhere = (
  range: InstantSpan,
  holdsAt: (instantMs: number) => boolean,
): readonly InstantSpan[] => {
  const spans: InstantSpan[] = [];
  let startMs = holdsAt(range.fromMs) ? range.fromMs : null;
  for (let earlierMs = range.fromMs; earlierMs < range.toMs; earlierMs += SEARCH_STEP_MS) {
    const laterMs = Math.min(earlierMs + SEARCH_STEP_MS, range.toMs);
    const held = startMs !== null;
    if (holdsAt(laterMs) === held) continue;
    const changeMs = changeBetween(
      { earlierMs, laterMs },
      (instantMs) => holdsAt(instantMs) === held,
    );
    if (startMs === null) {
      startMs = changeMs;
    } else {
      spans.push({ fromMs: startMs, toMs: changeMs });
      startMs = null;
    }
  }
  if (startMs !== null) spans.push({ fromMs: startMs, toMs: range.toMs });
  return spans;
};

/** Halving; `stillHolds` is true at the earlier end and false at the later. */
const changeBetween = (
  bracket: { readonly earlierMs: number; readonly laterMs: number },
  stillHolds: (instantMs: number) => boolean,
): number => {
  let { earlierMs, laterMs } = bracket;
  while (laterMs - earlierMs > PRECISION_MS) {
    const middleMs = (earlierMs + laterMs) / 2;
    if (stillHolds(middleMs)) earlierMs = middleMs;
    else laterMs = middleMs;
  }
  return Math.round((earlierMs + laterMs) / 2);
};
