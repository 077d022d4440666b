/** Stops a gel costs its head, from its luminous transmission, 0 to 1: −log2 T. [iso5] */
export const gelLossStops = ({ transmission }: { readonly transmission: number }): number =>
  -Math.log2(transmission);
