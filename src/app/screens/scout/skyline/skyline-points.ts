import type { Spot } from '../../../../core/plan/shoot.ts';
import { skylineOf } from '../../../../core/plan/setup-light.ts';
import { skylineAltitude } from '../../../../core/skyline/skyline.ts';
import { wrapDeg360 } from '../../../../core/units/angle.ts';

type Point = Spot['skyline'][string];

/** The points of a skyline from north round. */
export const skylineRows = (spot: Spot): readonly (readonly [id: string, point: Point])[] =>
  Object.entries(spot.skyline).toSorted(
    ([firstId, first], [secondId, second]) =>
      first.azimuthDeg - second.azimuthDeg || (firstId < secondId ? -1 : 1),
  );

/**
 * A point that changes nothing yet: on the skyline, in the middle of its widest gap; on the
 * camera's bearing where the skyline has no points.
 */
export function nextSkylinePoint(spot: Spot): Point {
  const azimuths = skylineRows(spot).map(([, { azimuthDeg }]) => azimuthDeg);
  const first = azimuths[0];
  if (first === undefined) return { azimuthDeg: spot.framing.bearingDeg, altitudeDeg: 0 };
  let widestDeg = -1;
  let middleDeg = 0;
  azimuths.forEach((fromDeg, at) => {
    const gapDeg = (azimuths[at + 1] ?? first + 360) - fromDeg;
    if (gapDeg <= widestDeg) return;
    widestDeg = gapDeg;
    middleDeg = fromDeg + gapDeg / 2;
  });
  const azimuthDeg = wrapDeg360(Math.round(middleDeg));
  const altitudeDeg = skylineAltitude(skylineOf(spot))(azimuthDeg);
  return { azimuthDeg, altitudeDeg: Number(altitudeDeg.toFixed(1)) };
}
