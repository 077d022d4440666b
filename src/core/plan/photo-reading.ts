import { cameraEv } from '../exposure/camera-settings.ts';
import type { Photo, Reading } from './spot-schema.ts';

type Exposure = Pick<Photo, 'fNumber' | 'shutterS' | 'iso'>;

const DARKEST_EV = -12;
const BRIGHTEST_EV = 24;

/**
 * EV at ISO 100 of what the photo shows as mid-grey, log2(N²/t · 100/ISO): the brightness of the
 * place if the meter had it right, and as long as no filter was on the lens. null without a whole
 * exposure, or where it is brighter or darker than any scene. [apex1961] [iso2720]
 */
export function photoEv100({ fNumber, shutterS, iso }: Exposure): number | null {
  if (fNumber === null || shutterS === null || iso === null) return null;
  const ev100 = cameraEv({ fNumber, shutterS, iso, filterStops: 0 });
  return ev100 >= DARKEST_EV && ev100 <= BRIGHTEST_EV ? ev100 : null;
}

/** The reading a photo makes; null where it has no exposure to read. */
export function readingOfPhoto(
  photo: Exposure & Pick<Photo, 'takenAtMs' | 'bearingDeg'>,
  at: { readonly photoId: string; readonly order: string },
): Reading | null {
  const ev100 = photoEv100(photo);
  return ev100 === null
    ? null
    : {
        order: at.order,
        atMs: photo.takenAtMs,
        ev100,
        bearingDeg: photo.bearingDeg,
        from: 'photo',
        photoId: at.photoId,
        note: '',
      };
}
