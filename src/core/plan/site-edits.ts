import type { Edit } from './edits.ts';
import type { Shoot, Spot } from './shoot.ts';

/** The lists of a spot's site notes. */
type SiteList = 'surfaces' | 'contacts' | 'checklist';

type EntryOf<List extends SiteList> = Spot[List][string];

export const putSiteEntry =
  <List extends SiteList>(
    spotId: string,
    list: List,
    entryId: string,
    entry: EntryOf<List>,
  ): Edit<Shoot> =>
  (shoot) => {
    const entries = shoot.spots[spotId]?.[list] as Record<string, EntryOf<List>> | undefined;
    if (entries !== undefined) entries[entryId] = { ...entry };
  };

export const editSiteEntry =
  <List extends SiteList>(
    spotId: string,
    list: List,
    entryId: string,
    fields: Partial<EntryOf<List>>,
  ): Edit<Shoot> =>
  (shoot) => {
    const entry = shoot.spots[spotId]?.[list][entryId];
    if (entry !== undefined) Object.assign(entry, fields);
  };

export const removeSiteEntry =
  (spotId: string, list: SiteList, entryId: string): Edit<Shoot> =>
  (shoot) => {
    const entries = shoot.spots[spotId]?.[list];
    if (entries !== undefined) delete entries[entryId];
  };
