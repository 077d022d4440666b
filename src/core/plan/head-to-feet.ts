import type { Row } from './face-places.ts';
import {
  lightAgainstMiddle,
  standPosition,
  type LightStand,
  type StandPosition,
} from './row-of-faces.ts';
import type { Pose } from './setup-schema.ts';

/** From the seat to feet put on the ground before it, common practice. [lightingPractice] */
const SEATED_FEET_FORWARD_M = 0.5;
/** From the eyes to the soles of somebody 1.65 m tall, common practice. [lightingPractice] */
const LYING_LENGTH_M = 1.5;

/**
 * Where the feet of the one in the middle are: on the ground under the face when standing, half a
 * metre nearer the camera when sitting; lying, level with the face and away from the light.
 */
function feetOf(pose: Pose, at: StandPosition, row: Row): StandPosition {
  switch (pose) {
    case 'standing':
      return { rightM: 0, towardsCameraM: 0, aboveM: -row.faceHeightM };
    case 'sitting':
      return { rightM: 0, towardsCameraM: SEATED_FEET_FORWARD_M, aboveM: -row.faceHeightM };
    case 'lying':
      return {
        rightM: at.rightM > 0 ? -LYING_LENGTH_M : LYING_LENGTH_M,
        towardsCameraM: 0,
        aboveM: 0,
      };
  }
}

/** One light at the feet of the middle person against the face, stops; by distance and beam, nothing stands between. */
export function headToFeetStops(
  stand: LightStand,
  { pose, ...row }: Row & { readonly pose: Pose },
): number {
  const feet = feetOf(pose, standPosition(stand, row), row);
  return Math.log2(lightAgainstMiddle(stand, row)(feet)) + 0;
}
