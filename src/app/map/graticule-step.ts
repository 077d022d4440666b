const STEPS_DEG = [30, 15, 10, 5, 2, 1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01, 0.005, 0.002, 0.001];

const CLOSEST_PX = 110;

/** Distance between meridians, so that they stand at least 110 px apart. */
export const graticuleStepDeg = (zoom: number): number => {
  const pixelsPerDegree = (256 * 2 ** zoom) / 360;
  return STEPS_DEG.findLast((stepDeg) => stepDeg * pixelsPerDegree >= CLOSEST_PX) ?? 30;
};

/** Multiples of the step from one value up to another. */
export const graticuleLines = ({
  fromDeg,
  toDeg,
  stepDeg,
}: {
  readonly fromDeg: number;
  readonly toDeg: number;
  readonly stepDeg: number;
}): readonly number[] => {
  const first = Math.ceil(fromDeg / stepDeg);
  const count = Math.max(0, Math.floor(toDeg / stepDeg) - first + 1);
  return Array.from({ length: count }, (_, index) =>
    Number(((first + index) * stepDeg).toFixed(3)),
  );
};
