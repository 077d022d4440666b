import { lazyPart } from '../../state/lazy-part.ts';

/** Parts of the spot's sheet below its first figures, fetched after them or when opened. */
export const SiteNotes = lazyPart(async () => (await import('./site/SiteNotes.tsx')).SiteNotes);
export const PlaceFields = lazyPart(async () => (await import('./PlaceFields.tsx')).PlaceFields);
export const AddSpot = lazyPart(async () => (await import('./AddSpot.tsx')).AddSpot);
export const SunInPicture = lazyPart(
  async () => (await import('./sun-in-picture/SunInPicture.tsx')).SunInPicture,
);
export const Photos = lazyPart(async () => (await import('./photos/Photos.tsx')).Photos);
export const CompareSpots = lazyPart(
  async () => (await import('./compare/CompareSpots.tsx')).CompareSpots,
);

export const InAndOut = lazyPart(async () => (await import('./in-out/InAndOut.tsx')).InAndOut);
