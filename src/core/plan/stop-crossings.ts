/** The first moment at which a level lies a further whole stop from where it began. */
export type StopCrossing = {
  readonly atMs: number;
  /** Whole stops since the beginning: −1 is a stop darker. */
  readonly stops: number;
};

const STEP_MS = 60_000;
const EXACT_MS = 1000;
const ROUNDING_STOPS = 1e-9;

/**
 * When an EV has fallen or risen by another stop since `fromMs`, to a second, where it moves one
 * way within a minute. What swings to and fro inside a stop makes no crossing; minutes without a
 * figure are passed over.
 */
export function stopCrossings(
  evAt: (instantMs: number) => number,
  { fromMs, toMs }: { readonly fromMs: number; readonly toMs: number },
): readonly StopCrossing[] {
  const found: StopCrossing[] = [];
  const beganEv = evAt(fromMs);
  if (!Number.isFinite(beganEv)) return found;
  let reached = 0;
  let beforeMs = fromMs;
  while (beforeMs < toMs) {
    const nowMs = Math.min(toMs, beforeMs + STEP_MS);
    const offStops = evAt(nowMs) - beganEv;
    while (Number.isFinite(offStops)) {
      const way = offStops < reached ? -1 : 1;
      if (way * (offStops - reached) < 1 - ROUNDING_STOPS) break;
      reached += way;
      const passed = (ms: number): boolean =>
        way * (evAt(ms) - beganEv - reached) >= -ROUNDING_STOPS;
      found.push({ atMs: firstPassed(passed, beforeMs, nowMs), stops: reached });
    }
    beforeMs = nowMs;
  }
  return found;
}

/** By halves: `toMs` has passed. */
function firstPassed(passed: (ms: number) => boolean, fromMs: number, toMs: number): number {
  let [before, after] = [fromMs, toMs];
  while (after - before > EXACT_MS) {
    const middle = Math.round((before + after) / 2);
    if (passed(middle)) after = middle;
    else before = middle;
  }
  return after;
}
