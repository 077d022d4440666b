import type { SetupColumn } from './setup-column.ts';
import { VERDICTS, type Verdict } from './verdicts.ts';

/** A span in which a setup works at every step of its column. */
export type HoldWindow = {
  readonly fromMs: number;
  readonly toMs: number;
  /** What breaks after it; null where the date ends first. */
  readonly endedBy: Verdict | null;
};

/** A window's ends are found to within this. */
const PRECISION_MS = 20_000;

/**
 * When the lights hold the sky. The ends are searched between the column's steps with the verdict
 * at a minute; windows and gaps shorter than a step may be missed.
 */
export function holdWindows(
  column: Pick<SetupColumn, 'instantMs' | 'verdict'>,
  verdictAt: (instantMs: number) => Verdict,
): readonly HoldWindow[] {
  const { instantMs: steps } = column;
  const windows: HoldWindow[] = [];
  let fromMs: number | null = null;
  steps.forEach((stepMs, at) => {
    const works = verdictOfStep(column, at) === 'works';
    const beforeMs = steps[at - 1];
    if (works && fromMs === null)
      fromMs = beforeMs === undefined ? stepMs : edge(stepMs, beforeMs, verdictAt).workingMs;
    if (!works && fromMs !== null && beforeMs !== undefined) {
      const end = edge(beforeMs, stepMs, verdictAt);
      windows.push({ fromMs, toMs: end.workingMs, endedBy: verdictAt(end.brokenMs) });
      fromMs = null;
    }
  });
  const lastMs = steps.at(-1);
  if (fromMs !== null && lastMs !== undefined)
    windows.push({ fromMs, toMs: lastMs, endedBy: null });
  return windows;
}

/** The step at which a setup that never works is least short. */
export function leastShort(
  column: Pick<SetupColumn, 'instantMs' | 'verdict' | 'shortByStops'>,
): { readonly atMs: number; readonly shortByStops: number; readonly verdict: Verdict } | null {
  let best: number | null = null;
  column.shortByStops.forEach((stops, at) => {
    if (stops > 0 && stops < (best === null ? Infinity : (column.shortByStops[best] ?? NaN)))
      best = at;
  });
  if (best === null) return null;
  return {
    atMs: column.instantMs[best] ?? NaN,
    shortByStops: column.shortByStops[best] ?? NaN,
    verdict: verdictOfStep(column, best),
  };
}

const verdictOfStep = (column: Pick<SetupColumn, 'verdict'>, at: number): Verdict =>
  VERDICTS[column.verdict[at] ?? -1] ?? 'not-asked';

function edge(
  workingStepMs: number,
  brokenStepMs: number,
  verdictAt: (instantMs: number) => Verdict,
): { readonly workingMs: number; readonly brokenMs: number } {
  let workingMs = workingStepMs;
  let brokenMs = brokenStepMs;
  while (Math.abs(brokenMs - workingMs) > PRECISION_MS) {
    const middleMs = (workingMs + brokenMs) / 2;
    if (verdictAt(middleMs) === 'works') workingMs = middleMs;
    else brokenMs = middleMs;
  }
  return { workingMs, brokenMs };
}
