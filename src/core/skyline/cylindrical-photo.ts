import { atanDeg, degFromRad, radFromDeg, tanDeg, wrapDeg360 } from '../units/angle.ts';
import { angleBetweenDeg } from '../units/direction.ts';
import { fail, ok } from '../units/result.ts';
import { areTooClose, type PhotoModel, type PixelPoint } from './photo-sight.ts';

/** More than once round is no panorama. */
const MOST_FIELD_DEG = 365;

/**
 * A panorama on an upright cylinder: azimuth along it, the tangent of altitude up it, one scale for
 * both, its horizon level. The azimuths fix scale and bearing; the two altitudes fix where the
 * horizon stands, once too often, so that the miss says how well it fits.
 */
export const cylindricalPhoto: PhotoModel = ({ widthPx, heightPx, known }) => {
  const [left, right] = known.toSorted((one, other) => one.xPx - other.xPx);
  if (left === undefined || right === undefined)
    return fail({ kind: 'too-close', apartShare: 0, apartDeg: 0 });
  const apartShare = (right.xPx - left.xPx) / widthPx;
  const apartDeg = wrapDeg360(right.azimuthDeg - left.azimuthDeg);
  if (areTooClose(apartShare, apartDeg)) return fail({ kind: 'too-close', apartShare, apartDeg });

  const horizontalFieldDeg = apartDeg / apartShare;
  if (horizontalFieldDeg > MOST_FIELD_DEG) return fail({ kind: 'no-such-picture', apartDeg });
  const radiusPx = widthPx / radFromDeg(horizontalFieldDeg);
  const horizonPx =
    known.reduce((sum, { yPx, altitudeDeg }) => sum + yPx + radiusPx * tanDeg(altitudeDeg), 0) / 2;

  const directionAt = ({
    xPx,
    yPx,
  }: PixelPoint): { readonly azimuthDeg: number; readonly altitudeDeg: number } => ({
    azimuthDeg: left.azimuthDeg + degFromRad((xPx - left.xPx) / radiusPx),
    altitudeDeg: atanDeg((horizonPx - yPx) / radiusPx),
  });
  const middle = directionAt({ xPx: widthPx / 2, yPx: heightPx / 2 });
  return ok({
    directionAt,
    middle: { ...middle, azimuthDeg: wrapDeg360(middle.azimuthDeg) },
    horizontalFieldDeg,
    rollDeg: 0,
    missDeg: Math.max(...known.map((mark) => angleBetweenDeg(directionAt(mark), mark))),
    stretchPerDegree: 1 / apartDeg,
  });
};
