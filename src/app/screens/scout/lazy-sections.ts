import { lazy } from 'react';

/** Parts of the spot's sheet below its first figures, fetched after them. */
export const SiteNotes = lazy(async () => ({
  default: (await import('./site/SiteNotes.tsx')).SiteNotes,
}));
