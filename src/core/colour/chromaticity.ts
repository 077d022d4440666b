/** CIE 1931 chromaticity, 2° observer. [cie15] */
export type Chromaticity = { readonly x: number; readonly y: number };

/** Three numbers of one colour space. */
export type Triple = readonly [number, number, number];

export type Matrix3 = readonly [Triple, Triple, Triple];

export const applied = (matrix: Matrix3, [a, b, c]: Triple): Triple => [
  matrix[0][0] * a + matrix[0][1] * b + matrix[0][2] * c,
  matrix[1][0] * a + matrix[1][1] * b + matrix[1][2] * c,
  matrix[2][0] * a + matrix[2][1] * b + matrix[2][2] * c,
];

/** Tristimulus values of a luminance. */
export const xyzOf = ({ x, y }: Chromaticity, luminance: number): Triple => [
  (luminance * x) / y,
  luminance,
  (luminance * (1 - x - y)) / y,
];

export const chromaticityOf = ([x, y, z]: Triple): Chromaticity => {
  const sum = x + y + z;
  return { x: x / sum, y: y / sum };
};

/** CIE 1960 u, v, in which correlated colour temperatures are defined. [cie15] */
export const uvOf = ({ x, y }: Chromaticity): { readonly u: number; readonly v: number } => {
  const scale = -2 * x + 12 * y + 3;
  return { u: (4 * x) / scale, v: (6 * y) / scale };
};

export const fromUv = ({ u, v }: { readonly u: number; readonly v: number }): Chromaticity => {
  const scale = 2 * u - 8 * v + 4;
  return { x: (3 * u) / scale, y: (2 * v) / scale };
};
