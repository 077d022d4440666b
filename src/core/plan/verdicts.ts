/** How a minute stands, by its place in this list. */
export const VERDICTS = [
  'works',
  'sky-above-reach',
  'ambient-lights-the-face',
  'head-too-strong',
  'too-dark',
  'too-bright',
  'no-sky',
  'not-asked',
] as const;
export type Verdict = (typeof VERDICTS)[number];

/** The limiting role, by its place in this list. */
export const COLUMN_ROLES = ['none', 'key', 'fill', 'rim', 'background'] as const;
