import type { Photo, ShootFraming } from './spot-schema.ts';

type Seen = Pick<
  Photo,
  'bearingDeg' | 'focalLengthMm' | 'focalLength35Mm' | 'widthPx' | 'heightPx'
>;

const FULL_FRAME_DIAGONAL_MM = Math.hypot(36, 24);
const SHORTEST_MM = 4;
const LONGEST_MM = 2000;

/**
 * What a photo says about a framing on the framing's own sensor: bearing, orientation, and the
 * focal length that sees the same diagonal as the photo's 35 mm equivalent; without an equivalent
 * the focal length as it was. null where the photo says neither bearing nor focal length. [exif232]
 */
export function framingOfPhoto(
  photo: Seen,
  framing: ShootFraming,
): Partial<Pick<ShootFraming, 'bearingDeg' | 'focalLengthMm' | 'orientation'>> | null {
  const focalLengthMm = focalLengthOn(framing, photo);
  if (photo.bearingDeg === null && focalLengthMm === null) return null;
  return {
    ...(photo.bearingDeg === null ? {} : { bearingDeg: photo.bearingDeg }),
    ...(focalLengthMm === null ? {} : { focalLengthMm }),
    ...(photo.widthPx === photo.heightPx
      ? {}
      : { orientation: photo.widthPx > photo.heightPx ? 'landscape' : 'portrait' }),
  };
}

function focalLengthOn(framing: ShootFraming, photo: Seen): number | null {
  const diagonalMm = Math.hypot(framing.sensorWidthMm, framing.sensorHeightMm);
  const lengthMm =
    photo.focalLength35Mm === null
      ? photo.focalLengthMm
      : (photo.focalLength35Mm * diagonalMm) / FULL_FRAME_DIAGONAL_MM;
  if (lengthMm === null || lengthMm < SHORTEST_MM || lengthMm > LONGEST_MM) return null;
  return Math.round(lengthMm * 10) / 10;
}
