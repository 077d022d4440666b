/**
 * The value at which something starts to work, between one that does not and one that does, to a
 * millionth of the span; null when the far end does not work either.
 */
export const fixThreshold = (
  span: { readonly failsAt: number; readonly worksAt: number },
  works: (value: number) => boolean,
): number | null => {
  let { failsAt, worksAt } = span;
  if (!works(worksAt)) return null;
  for (let halving = 0; halving < 24; halving += 1) {
    const middle = (failsAt + worksAt) / 2;
    if (works(middle)) worksAt = middle;
    else failsAt = middle;
  }
  return worksAt;
};

/** Toward less than the value, in whole steps; a rounding error does not cost a step. */
export const roundDownTo = (value: number, step: number): number =>
  tidy(Math.floor(value / step + 1e-6) * step);

/** Toward more than the value, in whole steps. */
export const roundUpTo = (value: number, step: number): number =>
  tidy(Math.ceil(value / step - 1e-6) * step);

const tidy = (value: number): number => Math.round(value * 1e6) / 1e6;
