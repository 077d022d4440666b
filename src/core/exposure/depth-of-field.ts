/** Circle of confusion as a share of the picture's diagonal, common practice (0.029 mm on 36 × 24). [ray2002] */
const CIRCLE_PER_DIAGONAL = 1 / 1500;

export const circleOfConfusionMm = (sensor: {
  readonly sensorWidthMm: number;
  readonly sensorHeightMm: number;
}): number => Math.hypot(sensor.sensorWidthMm, sensor.sensorHeightMm) * CIRCLE_PER_DIAGONAL;

/** Focused here, everything from half of it to infinity is sharp: f²/(N c) + f. [ray2002] */
export const hyperfocalM = (lens: {
  readonly focalLengthMm: number;
  readonly fNumber: number;
  readonly circleMm: number;
}): number =>
  (lens.focalLengthMm ** 2 / (lens.fNumber * lens.circleMm) + lens.focalLengthMm) / 1000;

export type SharpZone = {
  readonly nearM: number;
  /** Infinity from the hyperfocal distance on. */
  readonly farM: number;
};

/**
 * Nearest and farthest sharp distance from the lens, thin lens in air, exact closed form
 * s(H − f)/(H + s − 2f) and s(H − f)/(H − s). [ray2002]
 */
export const depthOfField = (shot: {
  readonly focalLengthMm: number;
  readonly fNumber: number;
  readonly circleMm: number;
  readonly focusDistanceM: number;
}): SharpZone => {
  const focalM = shot.focalLengthMm / 1000;
  const hyperfocal = hyperfocalM(shot);
  const { focusDistanceM } = shot;
  return {
    nearM: (focusDistanceM * (hyperfocal - focalM)) / (hyperfocal + focusDistanceM - 2 * focalM),
    farM:
      focusDistanceM >= hyperfocal
        ? Number.POSITIVE_INFINITY
        : (focusDistanceM * (hyperfocal - focalM)) / (hyperfocal - focusDistanceM),
  };
};
