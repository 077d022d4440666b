/** Doublings in a ratio of light: 4 is 2 stops, 0.5 is −1, 0 is −∞. */
export const stopsFromRatio = (ratio: number): number => Math.log2(ratio);

export const ratioFromStops = (stops: number): number => 2 ** stops;

/** Two lights given as EV (any common reference), added as light. −∞ is no light. */
export const addLightEv = (firstEv: number, secondEv: number): number =>
  Math.log2(2 ** firstEv + 2 ** secondEv);
