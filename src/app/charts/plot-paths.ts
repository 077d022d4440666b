import { shareOfEv, type PlotFrame } from './plot-frame.ts';

/** Side of the square that paths are written in; the plot stretches it to its own size. */
export const PATH_SIDE = 1000;

/** Far enough outside that no line is seen to bend at it. */
const FURTHEST = 4 * PATH_SIDE;

export type Curve = {
  readonly instantMs: ArrayLike<number>;
  /** EV at ISO 100; the line breaks where it is not finite. */
  readonly ev: (step: number) => number;
};

/** A line down the plot. */
export function linePath(curve: Curve, frame: PlotFrame): string {
  return runsOf(curve.instantMs, frame, (step) => Number.isFinite(curve.ev(step)))
    .map((steps) => polyline(steps.map((step) => point(curve, step, frame))))
    .join('');
}

/** The area between two curves of the same steps. */
export function bandPath(
  band: {
    readonly instantMs: ArrayLike<number>;
    readonly lowEv: (step: number) => number;
    readonly highEv: (step: number) => number;
  },
  frame: PlotFrame,
): string {
  const { instantMs, lowEv, highEv } = band;
  return runsOf(
    instantMs,
    frame,
    (step) => Number.isFinite(lowEv(step)) && Number.isFinite(highEv(step)),
  )
    .map((steps) => {
      const down = steps.map((step) => point({ instantMs, ev: lowEv }, step, frame));
      const up = steps.map((step) => point({ instantMs, ev: highEv }, step, frame)).toReversed();
      return `${polyline([...down, ...up])}Z`;
    })
    .join('');
}

/** Runs of neighbouring steps that have a figure, with one step beyond each edge of the plot. */
function runsOf(
  instantMs: ArrayLike<number>,
  { startMs, endMs }: PlotFrame,
  has: (step: number) => boolean,
): readonly (readonly number[])[] {
  const runs: number[][] = [];
  let run: number[] = [];
  for (let step = 0; step < instantMs.length; step += 1) {
    const seen =
      (instantMs[step + 1] ?? Infinity) > startMs && (instantMs[step - 1] ?? -Infinity) < endMs;
    if (seen && has(step)) run.push(step);
    else if (run.length > 0) {
      runs.push(run);
      run = [];
    }
  }
  if (run.length > 0) runs.push(run);
  return runs.filter((steps) => steps.length > 1);
}

const point = ({ instantMs, ev }: Curve, step: number, frame: PlotFrame): string => {
  const down = ((instantMs[step] ?? NaN) - frame.startMs) / (frame.endMs - frame.startMs);
  return `${written(shareOfEv(ev(step), frame))} ${written(down)}`;
};

const written = (share: number): string =>
  Math.min(FURTHEST, Math.max(-FURTHEST, share * PATH_SIDE)).toFixed(1);

const polyline = (points: readonly string[]): string => `M${points.join('L')}`;
