import { asinDeg, atan2Deg, cosDeg, sinDeg, wrapDeg360 } from '../units/angle.ts';
import type { Direction } from '../units/direction.ts';

/** As a device orientation event gives them; Z–X′–Y″, turns to the left positive. [deviceOrientation] */
export type PhoneAngles = {
  readonly alphaDeg: number;
  readonly betaDeg: number;
  readonly gammaDeg: number;
};

/** What of the phone is held along the skyline: its long edge toward the top of an upright screen, or its back. */
export type SightLine = 'top-edge' | 'back-camera';

/**
 * Where the phone points, its azimuth clockwise from the north the event counts from. Both lines
 * are fixed to the body of the phone, as the angles are: which way the picture on the screen is
 * turned does not enter. [deviceOrientation]
 */
export function phoneLineOfSight(
  { alphaDeg, betaDeg, gammaDeg }: PhoneAngles,
  along: SightLine,
): Direction {
  const sinA = sinDeg(alphaDeg);
  const cosA = cosDeg(alphaDeg);
  const sinB = sinDeg(betaDeg);
  const cosB = cosDeg(betaDeg);
  const sinC = sinDeg(gammaDeg);
  const cosC = cosDeg(gammaDeg);
  // Columns of Rz(α)·Rx(β)·Ry(γ): the second is the top edge, the third, turned round, the back.
  const [east, north, up] =
    along === 'top-edge'
      ? [-sinA * cosB, cosA * cosB, sinB]
      : [-cosA * sinC - sinA * sinB * cosC, -sinA * sinC + cosA * sinB * cosC, -cosB * cosC];
  return { azimuthDeg: wrapDeg360(atan2Deg(east, north)), altitudeDeg: asinDeg(up) };
}
