export type GenericGel = {
  readonly name: string;
  /** Two makers' families share names and differ: the shift decides, not the name. */
  readonly family: 'A' | 'B';
  /** Positive is warmer. */
  readonly miredShift: number;
  /** Luminous transmission, 0 to 1; from memory of swatch books, the user's own figure replaces it. */
  readonly transmission: number;
};

/**
 * Colour-temperature gels of two families. Shifts are published lists, transmissions and family A's
 * 3/4 CTO are unconfirmed; printed losses for one name differ by 0.4 stop (full CTO 0.67 to 1.1).
 * [practitionerPages] [lightingPractice]
 */
export const GENERIC_GELS = [
  gel('Full CTO', 'A', 167, 0.47),
  gel('3/4 CTO', 'A', 131, 0.58),
  gel('1/2 CTO', 'A', 81, 0.73),
  gel('1/4 CTO', 'A', 42, 0.81),
  gel('1/8 CTO', 'A', 20, 0.92),
  gel('Full CTO', 'B', 159, 0.55),
  gel('1/2 CTO', 'B', 109, 0.71),
  gel('1/4 CTO', 'B', 64, 0.79),
  gel('1/8 CTO', 'B', 26, 0.85),
  gel('Full CTB', 'A', -131, 0.36),
  gel('1/2 CTB', 'A', -68, 0.52),
  gel('1/4 CTB', 'A', -30, 0.74),
  gel('1/8 CTB', 'A', -12, 0.81),
  gel('Full CTB', 'B', -137, 0.34),
  gel('1/2 CTB', 'B', -78, 0.55),
  gel('1/4 CTB', 'B', -35, 0.69),
  gel('1/8 CTB', 'B', -18, 0.81),
  gel('Full straw', 'A', 167, 0.46),
  gel('1/2 straw', 'A', 81, 0.68),
  gel('1/4 straw', 'A', 42, 0.82),
  gel('1/8 straw', 'A', 20, 0.9),
  gel('Full straw', 'B', 160, 0.55),
  gel('1/2 straw', 'B', 81, 0.71),
  gel('1/4 straw', 'B', 42, 0.8),
  gel('1/8 straw', 'B', 20, 0.85),
] as const satisfies readonly GenericGel[];

function gel(
  name: string,
  family: GenericGel['family'],
  miredShift: number,
  transmission: number,
): GenericGel {
  return { name, family, miredShift, transmission };
}
