/**
 * The bibliography. A comment in core cites an entry as [key]; a test demands that every
 * cited key is here and that every entry is cited.
 */
export const SOURCES = {
  iso2720:
    'ISO 2720:1974, Photography: General purpose photographic exposure meters (photoelectric type), guide to product specification.',
} as const satisfies Record<string, string>;

export type SourceKey = keyof typeof SOURCES;
