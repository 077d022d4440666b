/** The n-th of a sequence that fills 0 to 1 evenly, another sequence for each axis. No chance in it. */
export const evenSpread = (n: number, axis: 0 | 1 | 2): number => {
  const ratio = [0.8191725133961645, 0.6710436067037893, 0.5497004779019703][axis] ?? 0;
  return (0.5 + n * ratio) % 1;
};

/** The n-th place, spread evenly over the globe between two latitudes. */
export const evenPlace = (
  n: number,
  { southDeg, northDeg }: { readonly southDeg: number; readonly northDeg: number },
): { readonly latitudeDeg: number; readonly longitudeDeg: number } => {
  const [south, north] = [southDeg, northDeg].map((deg) => Math.sin((deg * Math.PI) / 180));
  const sine = (south ?? 0) + ((north ?? 0) - (south ?? 0)) * evenSpread(n, 1);
  return {
    latitudeDeg: (Math.asin(sine) * 180) / Math.PI,
    longitudeDeg: -180 + 360 * evenSpread(n, 2),
  };
};
