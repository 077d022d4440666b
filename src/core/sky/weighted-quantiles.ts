/** Bins of the histogram that narrows the search down. */
const BINS = 256;

/**
 * The values below which the given shares of the weight lie, for the first `weights.length` values
 * of a list, again and again with the same weights. Each value stands in the middle of its own
 * weight, between two values it is linear. Values finite; NaN for none.
 */
export const weightedQuantiles = (
  weights: Float64Array,
  shares: readonly number[],
): ((values: Float64Array) => readonly number[]) => {
  const count = weights.length;
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const binOf = new Uint16Array(count);
  const binWeight = new Float64Array(BINS);

  return (values) => {
    let least = Infinity;
    let most = -Infinity;
    for (let at = 0; at < count; at += 1) {
      const value = values[at] ?? NaN;
      if (value < least) least = value;
      if (value > most) most = value;
    }
    if (!(most > least)) return shares.map(() => (count > 0 ? least : NaN));

    const binsPerUnit = (BINS - 1) / (most - least);
    binWeight.fill(0);
    for (let at = 0; at < count; at += 1) {
      const bin = Math.floor(((values[at] ?? NaN) - least) * binsPerUnit);
      binOf[at] = bin;
      binWeight[bin] = (binWeight[bin] ?? NaN) + (weights[at] ?? NaN);
    }

    return shares.map((share) => {
      const target = share * total;
      const { first, last, weightBefore } = binsAround(binWeight, target);
      const near: Step[] = [];
      for (let at = 0; at < count; at += 1) {
        const bin = binOf[at] ?? NaN;
        if (bin >= first && bin <= last) {
          near.push({ value: values[at] ?? NaN, weight: weights[at] ?? NaN });
        }
      }
      return valueAt(near, target - weightBefore);
    });
  };
};

type Step = { readonly value: number; readonly weight: number };

/** The bin in which the target falls, and to each side the next one that is not empty. */
const binsAround = (
  binWeight: Float64Array,
  target: number,
): { readonly first: number; readonly last: number; readonly weightBefore: number } => {
  const weightOf = (bin: number): number => binWeight[bin] ?? 0;
  const end = binWeight.length - 1;
  let here = 0;
  let weightBefore = 0;
  while (here < end && weightBefore + weightOf(here) <= target) {
    weightBefore += weightOf(here);
    here += 1;
  }
  let first = Math.max(0, here - 1);
  while (first > 0 && weightOf(first) === 0) first -= 1;
  let last = Math.min(end, here + 1);
  while (last < end && weightOf(last) === 0) last += 1;
  return { first, last, weightBefore: first === here ? 0 : weightBefore - weightOf(first) };
};

const valueAt = (steps: Step[], target: number): number => {
  steps.sort((one, other) => one.value - other.value);
  let before: { readonly middle: number; readonly value: number } | null = null;
  let weightBefore = 0;
  for (const { value, weight } of steps) {
    const middle = weightBefore + weight / 2;
    if (middle >= target) {
      if (before === null) return value;
      const along = (target - before.middle) / (middle - before.middle);
      return before.value + along * (value - before.value);
    }
    before = { middle, value };
    weightBefore += weight;
  }
  return before?.value ?? NaN;
};
