/** Doublings in a ratio of light: 4 is 2 stops, 0.5 is −1, 0 is −∞. */
export const stopsFromRatio = (ratio: number): number => Math.log2(ratio);

export const ratioFromStops = (stops: number): number => 2 ** stops;
