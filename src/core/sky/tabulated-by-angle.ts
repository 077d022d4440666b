/** Steps from 0° to 180°; with them the indicatrix of every standard sky is met within 0.001 stop. */
const STEPS = 2048;

/**
 * A function of the cosine of an angle as a table, to be read straight between its steps. The
 * steps are even in the sine of half the angle, in which the peak round the sun is smooth.
 */
export const tabulatedByAngle = (valueAt: (cosine: number) => number): Float64Array =>
  Float64Array.from({ length: STEPS + 2 }, (_, step) =>
    valueAt(1 - 2 * (Math.min(step, STEPS) / STEPS) ** 2),
  );

export const atAngle = (table: Float64Array, cosine: number): number => {
  const place = STEPS * Math.sqrt(Math.min(1, Math.max(0, (1 - cosine) / 2)));
  const step = Math.floor(place);
  const value = table[step] ?? NaN;
  return value + (place - step) * ((table[step + 1] ?? NaN) - value);
};
