export const SCREENS = [
  { path: '/scout', title: 'Scout' },
  { path: '/day', title: 'Day' },
  { path: '/setup', title: 'Setup' },
  { path: '/kit', title: 'Kit' },
  { path: '/call-sheet', title: 'Call sheet' },
] as const;

export type ScreenPath = (typeof SCREENS)[number]['path'];

/** The screen a hash names; anything else is Scout. */
export const screenOf = (hash: string): ScreenPath =>
  SCREENS.find(({ path }) => hash.replace(/^#/, '').split('?')[0] === path)?.path ?? '/scout';
