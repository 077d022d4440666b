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
