import type { BroughtIn, FoundPlace } from '../../../state/spot-files.ts';

export const counted = (count: number, one: string): string =>
  count === 1 ? `1 ${one}` : `${count} ${one}s`;

export const isEmpty = ({ places, loosePhotos }: BroughtIn): boolean =>
  places.length === 0 && loosePhotos.length === 0;

/** Whether a place is taken in unless the user says otherwise. */
export const takenAtFirst = ({ action, photos, spotId }: FoundPlace): boolean =>
  action === 'add' || (photos.length > 0 && spotId !== null);

/** What taking a place in does. */
export function deed({ spotId, photos }: FoundPlace, spotName: string | null): string {
  const pictures = photos.length === 0 ? '' : counted(photos.length, 'photo');
  if (spotId !== null && photos.length > 0)
    return `${pictures} added to ${spotName ?? 'the spot there'}`;
  return pictures === '' ? 'a new spot' : `a new spot with ${pictures}`;
}
