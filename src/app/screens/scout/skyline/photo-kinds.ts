import { cylindricalPhoto } from '../../../../core/skyline/cylindrical-photo.ts';
import type {
  PhotoModel,
  PhotoProblem,
  PhotoSight,
  PixelPoint,
} from '../../../../core/skyline/photo-sight.ts';
import { rectilinearPhoto } from '../../../../core/skyline/rectilinear-photo.ts';
import type { Result } from '../../../../core/units/result.ts';
import type { KnownDirection } from './KnownPointFields.tsx';
import type { OpenPhoto } from './use-trace-photo.ts';

export const PHOTO_KINDS = [
  { value: 'rectilinear', text: 'one shot: straight lines are straight' },
  { value: 'cylindrical', text: 'a swept panorama, its horizon level' },
] as const;
export type PhotoKind = (typeof PHOTO_KINDS)[number]['value'];

const MODELS: Readonly<Record<PhotoKind, PhotoModel>> = {
  rectilinear: rectilinearPhoto,
  cylindrical: cylindricalPhoto,
};

/** How the photo looks at the world; null until both points are marked and known. */
export function sightOfPhoto(asked: {
  readonly kind: PhotoKind;
  readonly photo: Pick<OpenPhoto, 'widthPx' | 'heightPx'>;
  readonly marks: readonly (PixelPoint | null)[];
  readonly known: readonly KnownDirection[];
}): Result<PhotoSight, PhotoProblem> | null {
  const [first, second] = asked.marks.map((mark, index) => {
    const { azimuthDeg = null, altitudeDeg = null } = asked.known[index] ?? {};
    return mark === null || azimuthDeg === null || altitudeDeg === null
      ? null
      : { ...mark, azimuthDeg, altitudeDeg };
  });
  if (!first || !second) return null;
  const { widthPx, heightPx } = asked.photo;
  return MODELS[asked.kind]({ widthPx, heightPx, known: [first, second] });
}
