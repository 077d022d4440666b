export type ScaleBar = {
  /** '200 m', '50 km' */
  readonly text: string;
  readonly lengthM: number;
  readonly widthPx: number;
};

/** The longest bar of 1, 2 or 5 times a power of ten metres that is no wider than allowed. */
export const scaleBar = ({
  metresPerPixel,
  mostPx,
}: {
  readonly metresPerPixel: number;
  readonly mostPx: number;
}): ScaleBar => {
  const mostM = metresPerPixel * mostPx;
  const decade = 10 ** Math.floor(Math.log10(mostM));
  const lengthM = ([5, 2].find((times) => times * decade <= mostM) ?? 1) * decade;
  return { text: lengthText(lengthM), lengthM, widthPx: lengthM / metresPerPixel };
};

const lengthText = (lengthM: number): string => {
  if (lengthM >= 1000) return `${lengthM / 1000} km`;
  return lengthM >= 1 ? `${lengthM} m` : `${Math.round(lengthM * 100)} cm`;
};
