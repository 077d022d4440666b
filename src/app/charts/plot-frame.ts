/** The span of time and of brightness that a column's plot shows. */
export type PlotFrame = {
  readonly startMs: number;
  readonly endMs: number;
  /** EV at ISO 100 at the left and right edge. */
  readonly fromEv: number;
  readonly toEv: number;
};

export const EV_TICK_STEP = 4;

/** Share of the plot's width from its left edge; outside 0 to 1 for what lies beyond its edges. */
export const shareOfEv = (ev100: number, { fromEv, toEv }: PlotFrame): number =>
  (ev100 - fromEv) / (toEv - fromEv);

/** Multiples of four inside the plot, its edges left out. */
export function evTicks({ fromEv, toEv }: PlotFrame): readonly number[] {
  const ticks: number[] = [];
  for (let ev = Math.floor(fromEv / EV_TICK_STEP + 1) * EV_TICK_STEP; ev < toEv; ev += EV_TICK_STEP)
    ticks.push(ev);
  return ticks;
}
