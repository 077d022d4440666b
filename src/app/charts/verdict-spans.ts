import type { SetupColumn } from '../../core/plan/setup-column.ts';
import { VERDICTS, type Verdict } from '../../core/plan/verdicts.ts';
import { LANDING_STOPS } from '../../core/strobe/landing.ts';

export type SpanKind = 'out-of-reach' | 'too-dark' | 'too-bright' | 'no-sky';

/** A part of the day in which a setup does not work, and why. */
export type VerdictSpan = {
  readonly fromMs: number;
  readonly toMs: number;
  readonly kind: SpanKind;
};

type Judged = {
  readonly column: SetupColumn;
  /** What judges the unlit face: the ambient with the sun out, or in the shade of a panel. */
  readonly faceAmbientEv: Float64Array;
};

/**
 * The parts of a column's day in which its setup does not work. An edge lies where the margin of
 * the rule that breaks there, interpolated between two steps, is nought; parts and gaps shorter
 * than a step may be missed.
 */
export function verdictSpans(judged: Judged): readonly VerdictSpan[] {
  const { instantMs } = judged.column;
  const spans: VerdictSpan[] = [];
  const lastMs = instantMs.at(-1);
  if (lastMs === undefined) return spans;
  const dayEndMs = lastMs + (lastMs - (instantMs.at(-2) ?? lastMs));
  let kind = kindAt(judged, 0);
  let fromMs = instantMs[0] ?? NaN;
  for (let step = 1; step <= instantMs.length; step += 1) {
    const next = step < instantMs.length ? kindAt(judged, step) : null;
    if (step < instantMs.length && next === kind) continue;
    const toMs = step < instantMs.length ? edgeMs(judged, step - 1) : dayEndMs;
    if (kind !== null) spans.push({ fromMs, toMs, kind });
    kind = next;
    fromMs = toMs;
  }
  return spans;
}

export function spanKind(verdict: Verdict): SpanKind | null {
  switch (verdict) {
    case 'sky-above-reach':
    case 'ambient-lights-the-face':
      return 'out-of-reach';
    case 'head-too-strong':
    case 'too-dark':
      return 'too-dark';
    case 'too-bright':
    case 'no-sky':
      return verdict;
    case 'works':
    case 'not-asked':
      return null;
  }
}

const verdictAt = ({ column }: Judged, step: number): Verdict =>
  VERDICTS[column.verdict[step] ?? -1] ?? 'not-asked';

const kindAt = (judged: Judged, step: number): SpanKind | null => spanKind(verdictAt(judged, step));

/** Where, between a step and the next, the first of the two rules to be judged begins or ceases to break. */
function edgeMs(judged: Judged, step: number): number {
  const { instantMs, verdict } = judged.column;
  const fromMs = instantMs[step] ?? NaN;
  const stepMs = (instantMs[step + 1] ?? NaN) - fromMs;
  const [here, after] = [verdict[step] ?? 0, verdict[step + 1] ?? 0];
  const broken = here !== 0 && (after === 0 || here < after) ? step : step + 1;
  const margin = marginStops(judged, broken);
  const start = margin(step);
  const end = margin(step + 1);
  const crosses = start > 0 !== end > 0 && Number.isFinite(start) && Number.isFinite(end);
  return fromMs + stepMs * (crosses ? start / (start - end) : 0.5);
}

/**
 * Stops left of the rule that breaks at a step, at that step and its neighbours. Where the column
 * holds only by how much it breaks, the rule is known to follow the reference stop for stop, and
 * the unlit face to follow ambient over reference.
 */
function marginStops({ column, faceAmbientEv }: Judged, broken: number): (step: number) => number {
  const { referenceEv, shortByStops, inHandStops } = column;
  const reference = (step: number): number => referenceEv[step] ?? NaN;
  const short = shortByStops[broken] ?? NaN;
  const face = (step: number): number => (faceAmbientEv[step] ?? NaN) - reference(step);
  const brightEnough = (stillFineStops: number) => (step: number) =>
    reference(step) - reference(broken) - short + stillFineStops;
  switch (VERDICTS[column.verdict[broken] ?? -1] ?? 'not-asked') {
    case 'sky-above-reach':
      return (step) => inHandStops[step] ?? NaN;
    case 'ambient-lights-the-face':
      return (step) => face(broken) - face(step) - short;
    case 'head-too-strong':
      return brightEnough(0);
    case 'too-dark':
      return brightEnough(LANDING_STOPS);
    case 'too-bright':
      return (step) => reference(broken) - reference(step) - short + LANDING_STOPS;
    case 'works':
    case 'no-sky':
    case 'not-asked':
      return () => NaN;
  }
}
