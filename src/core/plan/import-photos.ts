import { groundVector } from '../place/geodesy.ts';
import { together, type Edit } from './edits.ts';
import { inOrder, orderKeyBetween } from './order-key.ts';
import { addPhoto, addReading } from './photo-edits.ts';
import { readingOfPhoto } from './photo-reading.ts';
import type { Shoot, Spot } from './shoot.ts';
import type { Photo } from './spot-schema.ts';

/** What of a photo decides where it goes. */
export type PhotoWithPlace = {
  readonly name: string;
  readonly latitudeDeg: number | null;
  readonly longitudeDeg: number | null;
  readonly elevationM: number | null;
  readonly bearingDeg: number | null;
  readonly takenAtMs: number | null;
};

/** A place where photos were taken, as a waypoint of an import. */
export type PhotoWaypoint<Taken> = {
  readonly name: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly elevationM: number | null;
  readonly note: string;
  readonly bearingDeg: number | null;
  readonly takenAtMs: number | null;
  readonly photos: readonly Taken[];
};

/** Photos taken no farther than this from the first of a place belong to it. */
export const SAME_PLACE_M = 25;

/**
 * One waypoint for each place where photos were taken, standing where the first of them was taken;
 * a photo goes to the nearest such place within 25 m. Photos without a position are in none.
 */
export function photoWaypoints<Taken extends PhotoWithPlace>(
  photos: readonly Taken[],
): readonly PhotoWaypoint<Taken>[] {
  const places: { readonly at: Located; readonly photos: Taken[] }[] = [];
  for (const photo of photos.toSorted(byTime)) {
    const at = located(photo);
    if (at === null) continue;
    const nearest = places
      .map((place) => ({ place, distanceM: groundVector(place.at, at).distanceM }))
      .filter(({ distanceM }) => distanceM <= SAME_PLACE_M)
      .toSorted((first, second) => first.distanceM - second.distanceM)[0];
    if (nearest === undefined) places.push({ at, photos: [photo] });
    else nearest.place.photos.push(photo);
  }
  return places.map(({ at, photos: taken }) => ({
    ...at,
    name: placeName(taken),
    elevationM: firstKnown(taken, 'elevationM'),
    note: '',
    bearingDeg: firstKnown(taken, 'bearingDeg'),
    takenAtMs: firstKnown(taken, 'takenAtMs'),
    photos: taken,
  }));
}

export type PhotoToAdd = {
  readonly photoId: string;
  readonly photo: Omit<Photo, 'order'>;
  /** null: its exposure is no reading of the place. */
  readonly readingId: string | null;
};

/** Adds photos to a spot behind those it has, each with the reading it makes, as one step. */
export function addPhotos(
  spotId: string,
  spot: Pick<Spot, 'photos' | 'readings'>,
  photos: readonly PhotoToAdd[],
): Edit<Shoot> {
  let order = inOrder(spot.photos).at(-1)?.[1].order ?? '';
  let readingOrder = inOrder(spot.readings).at(-1)?.[1].order ?? '';
  return together(
    ...photos.flatMap(({ photoId, photo, readingId }) => {
      order = orderKeyBetween(order, '');
      readingOrder = orderKeyBetween(readingOrder, '');
      const reading = readingOfPhoto(photo, { photoId, order: readingOrder });
      return [
        addPhoto(spotId, photoId, { ...photo, order }),
        ...(readingId === null || reading === null ? [] : [addReading(spotId, readingId, reading)]),
      ];
    }),
  );
}

/** Whether two entries show the same picture: the same bytes, or the same name at the same instant. */
export const isSamePhoto = (
  first: Pick<Photo, 'contentHash' | 'name' | 'takenAtMs'>,
  second: Pick<Photo, 'contentHash' | 'name' | 'takenAtMs'>,
): boolean =>
  first.contentHash === second.contentHash ||
  (first.name === second.name && first.takenAtMs !== null && first.takenAtMs === second.takenAtMs);

type Located = { readonly latitudeDeg: number; readonly longitudeDeg: number };

const located = ({ latitudeDeg, longitudeDeg }: PhotoWithPlace): Located | null =>
  latitudeDeg === null || longitudeDeg === null ? null : { latitudeDeg, longitudeDeg };

/** Earliest first, those without a time as they came. */
const byTime = (first: PhotoWithPlace, second: PhotoWithPlace): number => {
  const [firstMs, secondMs] = [first.takenAtMs ?? Infinity, second.takenAtMs ?? Infinity];
  return firstMs === secondMs ? 0 : firstMs - secondMs;
};

const firstKnown = (
  photos: readonly PhotoWithPlace[],
  field: 'elevationM' | 'bearingDeg' | 'takenAtMs',
): number | null => photos.map((photo) => photo[field]).find((value) => value !== null) ?? null;

/** The first photo's name without its ending. */
const placeName = (photos: readonly PhotoWithPlace[]): string => {
  const name = photos[0]?.name ?? '';
  return name.replace(/\.\w{2,5}$/, '') || name;
};
