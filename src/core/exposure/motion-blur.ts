export type SubjectMotion = 'still' | 'posing' | 'gesturing' | 'walking' | 'running' | 'jumping';

/**
 * Slowest shutter that ambient light may record of a person about full length in the frame, common
 * practice without a single source, about a stop either way. [lightingPractice]
 */
export const SLOWEST_SHUTTER_BY_MOTION_S = {
  still: 1 / 15,
  posing: 1 / 60,
  gesturing: 1 / 125,
  walking: 1 / 200,
  running: 1 / 500,
  jumping: 1 / 800,
} as const satisfies Record<SubjectMotion, number>;

/** Diagonal of the picture that the hand-holding rule 1/f was made for, mm. */
const RULE_DIAGONAL_MM = Math.hypot(36, 24);

/**
 * Slowest shutter that holds the subject's movement and the camera's: the subject's own limit, and
 * in the hand one over the focal length in mm, scaled to the picture's size. Common practice;
 * a stabilised camera or a steady hand gains stops that only trying out can tell. [lightingPractice]
 */
export const slowestShutterS = (shot: {
  readonly motion: SubjectMotion;
  readonly support: 'hand' | 'tripod';
  readonly focalLengthMm: number;
  readonly sensorDiagonalMm: number;
}): number => {
  const subjectS = SLOWEST_SHUTTER_BY_MOTION_S[shot.motion];
  if (shot.support === 'tripod') return subjectS;
  return Math.min(subjectS, shot.sensorDiagonalMm / RULE_DIAGONAL_MM / shot.focalLengthMm);
};

/** Ambient this far under mid-grey no longer shows beside the flash, common practice (C6). [practitionerPages] */
const HIDDEN_STOPS = -3;

/**
 * Whether flash freezes the subject while ambient light draws it a second time: the shutter is
 * slower than the movement allows, and the ambient-lit face or the sky behind the moving edge lies
 * less than three stops under mid-grey. [lightingPractice]
 */
export const isGhostEdgeLikely = (shot: {
  readonly shutterS: number;
  readonly motion: SubjectMotion;
  readonly unlitStops: number;
  readonly skyStops: number;
}): boolean =>
  shot.shutterS > SLOWEST_SHUTTER_BY_MOTION_S[shot.motion] * 1.05 &&
  Math.max(shot.unlitStops, shot.skyStops) > HIDDEN_STOPS;

/**
 * How fast the quickest part of a person goes across the picture, m/s. Walking is the comfortable
 * pace of adults, 1.3 to 1.5 [bohannon1997]; jumping the start of a leap of 0.45 m, √(2 g h); the
 * others common practice, easily twice or half: a hand flung out or hair is faster. [lightingPractice]
 */
export const SUBJECT_SPEED_M_S = {
  still: 0.03,
  posing: 0.15,
  gesturing: 1,
  walking: 1.4,
  running: 5,
  jumping: 3,
} as const satisfies Record<SubjectMotion, number>;

/**
 * How far something that crosses the picture moves on the sensor in a time, mm: speed × time ×
 * f/(d − f), thin lens. The time is a flash's t0.1, or the shutter's where the light goes on. [ray2002]
 */
export const motionBlurMm = (shot: {
  readonly speedMS: number;
  readonly lightS: number;
  readonly focalLengthMm: number;
  readonly distanceM: number;
}): number => {
  const distanceMm = 1000 * shot.distanceM;
  const imageScale = shot.focalLengthMm / Math.max(1, distanceMm - shot.focalLengthMm);
  return 1000 * shot.speedMS * shot.lightS * imageScale;
};
