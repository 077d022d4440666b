import { isInsidePicture, projection } from '../sky/framing.ts';
import { atan2Deg, cosDeg, sinDeg } from '../units/angle.ts';
import type { Row } from './face-places.ts';
import { projectedFraming } from './picture-geometry.ts';
import { standPosition, type LightStand } from './row-of-faces.ts';
import type { ShootFraming } from './spot-schema.ts';

const RIM_POINTS = 16;

/**
 * Whether any of a light's face, taken as a disc upright to the camera, stands inside the picture.
 * The stand under it is not looked at: a leg is framed out or painted out more easily than a face.
 */
export function lightInFrame(stand: LightStand, row: Row, framing: ShootFraming): boolean {
  const { rightM, towardsCameraM, aboveM } = standPosition(stand, row);
  const forwardM = framing.cameraDistanceM - towardsCameraM;
  if (forwardM <= 0) return false;
  const upM = row.faceHeightM + aboveM - framing.cameraHeightM;
  const { toPicture } = projection(projectedFraming(framing));
  const inside = (acrossM: number, overM: number): boolean => {
    const levelM = Math.hypot(rightM + acrossM, forwardM);
    const point = toPicture({
      azimuthDeg: framing.bearingDeg + atan2Deg(rightM + acrossM, forwardM),
      altitudeDeg: atan2Deg(upM + overM, levelM),
    });
    return point !== null && isInsidePicture(point);
  };
  if (inside(0, 0)) return true;
  for (let at = 0; at < RIM_POINTS; at += 1) {
    const turnDeg = (360 * at) / RIM_POINTS;
    if (inside(stand.sourceRadiusM * cosDeg(turnDeg), stand.sourceRadiusM * sinDeg(turnDeg)))
      return true;
  }
  return false;
}
