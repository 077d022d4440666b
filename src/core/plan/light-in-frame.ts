import { isInsidePicture, projection } from '../sky/framing.ts';
import { atan2Deg, cosDeg, sinDeg } from '../units/angle.ts';
import type { Row } from './face-places.ts';
import { projectedFraming } from './picture-geometry.ts';
import { standPosition, type LightStand } from './row-of-faces.ts';
import type { ShootFraming } from './spot-schema.ts';

const RIM_POINTS = 16;
const POLE_POINTS = 32;

/**
 * Whether any of a light's face, taken as a disc upright to the camera, stands inside the picture.
 * The stand under it is not looked at: a leg is framed out or painted out more easily than a face.
 */
export function lightInFrame(
  stand: LightStand,
  row: Pick<Row, 'faceHeightM'>,
  framing: ShootFraming,
): boolean {
  const { rightM, towardsCameraM, aboveM } = standPosition(stand, row);
  const forwardM = framing.cameraDistanceM - towardsCameraM;
  if (forwardM <= 0) return false;
  const heightM = row.faceHeightM + aboveM;
  const inside = insideOf(framing);
  if (inside({ rightM, forwardM, heightM })) return true;
  for (let at = 0; at < RIM_POINTS; at += 1) {
    const turnDeg = (360 * at) / RIM_POINTS;
    const point = {
      rightM: rightM + stand.sourceRadiusM * cosDeg(turnDeg),
      forwardM,
      heightM: heightM + stand.sourceRadiusM * sinDeg(turnDeg),
    };
    if (inside(point)) return true;
  }
  return false;
}

/** Whether any of the pole straight under a light, from the ground up, stands inside the picture; its legs are not looked at. */
export function poleInFrame(
  stand: LightStand,
  row: Pick<Row, 'faceHeightM'>,
  framing: ShootFraming,
): boolean {
  const { rightM, towardsCameraM, aboveM } = standPosition(stand, row);
  const forwardM = framing.cameraDistanceM - towardsCameraM;
  if (forwardM <= 0) return false;
  const topM = row.faceHeightM + aboveM;
  const inside = insideOf(framing);
  for (let at = 0; at <= POLE_POINTS; at += 1)
    if (inside({ rightM, forwardM, heightM: (topM * at) / POLE_POINTS })) return true;
  return false;
}

type BeforeCamera = {
  /** To the right of the camera's axis. */
  readonly rightM: number;
  readonly forwardM: number;
  /** Above the ground. */
  readonly heightM: number;
};

function insideOf(framing: ShootFraming): (point: BeforeCamera) => boolean {
  const { toPicture } = projection(projectedFraming(framing));
  return ({ rightM, forwardM, heightM }) => {
    const point = toPicture({
      azimuthDeg: framing.bearingDeg + atan2Deg(rightM, forwardM),
      altitudeDeg: atan2Deg(heightM - framing.cameraHeightM, Math.hypot(rightM, forwardM)),
    });
    return point !== null && isInsidePicture(point);
  };
}
