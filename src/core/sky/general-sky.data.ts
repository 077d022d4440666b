/** The five parameters of a standard sky: gradation a, b and indicatrix c, d, e. */
export type GeneralSky = {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  /** Per radian of angle from the sun. */
  readonly d: number;
  readonly e: number;
};

/** The fifteen standard skies. [iso15469] table 1, as printed in [darulaKittler2002]. */
export const GENERAL_SKIES = {
  1: { a: 4, b: -0.7, c: 0, d: -1, e: 0 },
  2: { a: 4, b: -0.7, c: 2, d: -1.5, e: 0.15 },
  3: { a: 1.1, b: -0.8, c: 0, d: -1, e: 0 },
  4: { a: 1.1, b: -0.8, c: 2, d: -1.5, e: 0.15 },
  5: { a: 0, b: -1, c: 0, d: -1, e: 0 },
  6: { a: 0, b: -1, c: 2, d: -1.5, e: 0.15 },
  7: { a: 0, b: -1, c: 5, d: -2.5, e: 0.3 },
  8: { a: 0, b: -1, c: 10, d: -3, e: 0.45 },
  9: { a: -1, b: -0.55, c: 2, d: -1.5, e: 0.15 },
  10: { a: -1, b: -0.55, c: 5, d: -2.5, e: 0.3 },
  11: { a: -1, b: -0.55, c: 10, d: -3, e: 0.45 },
  12: { a: -1, b: -0.32, c: 10, d: -3, e: 0.45 },
  13: { a: -1, b: -0.32, c: 16, d: -3, e: 0.3 },
  14: { a: -1, b: -0.15, c: 16, d: -3, e: 0.3 },
  15: { a: -1, b: -0.15, c: 24, d: -2.8, e: 0.15 },
} as const satisfies Record<number, GeneralSky>;

export type GeneralSkyType = keyof typeof GENERAL_SKIES;
