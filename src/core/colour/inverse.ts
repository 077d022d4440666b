import type { Matrix3, Triple } from './chromaticity.ts';

/** The matrix that undoes another; rows of NaN where there is none. */
export function inverse(matrix: Matrix3): Matrix3 {
  const [[a, b, c], [d, e, f], [g, h, i]] = matrix;
  const determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  const row = (first: number, second: number, third: number): Triple => [
    first / determinant,
    second / determinant,
    third / determinant,
  ];
  return [
    row(e * i - f * h, c * h - b * i, b * f - c * e),
    row(f * g - d * i, a * i - c * g, c * d - a * f),
    row(d * h - e * g, b * g - a * h, a * e - b * d),
  ];
}
