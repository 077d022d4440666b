/**
 * How far sky, a side or the unlit face may land from where it was wanted: half a third stop, what
 * one dial in third stops can leave. A recipe beyond it is not given.
 */
export const LANDING_STOPS = 1 / 6;

/** What is left of a sum of logarithms by rounding errors. */
export const lands = (errorStops: number): boolean => Math.abs(errorStops) <= LANDING_STOPS + 1e-6;
