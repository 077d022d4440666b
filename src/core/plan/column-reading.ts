/** What a column says between two of its steps. */
type Steps = { readonly instantMs: Float64Array };

/** Linear between the steps; NaN outside the column or beside a step that has no figure. */
export function columnFigure(column: Steps, figures: ArrayLike<number>, instantMs: number): number {
  const { instantMs: steps } = column;
  const first = steps[0];
  const second = steps[1];
  if (first === undefined || second === undefined) return NaN;
  const place = (instantMs - first) / (second - first);
  const before = Math.floor(place);
  const share = place - before;
  const low = figures[before] ?? NaN;
  const high = figures[before + 1];
  if (share === 0 || (high === undefined && share < 1)) return low;
  return low + ((high ?? NaN) - low) * share;
}

/** The step that a minute belongs to, or −1 outside the column. */
export function columnStep(column: Steps, instantMs: number): number {
  const { instantMs: steps } = column;
  const first = steps[0];
  const second = steps[1];
  if (first === undefined || second === undefined || instantMs < first) return -1;
  const at = Math.round((instantMs - first) / (second - first));
  return at < steps.length
    ? at
    : instantMs < (steps.at(-1) ?? 0) + second - first
      ? steps.length - 1
      : -1;
}
