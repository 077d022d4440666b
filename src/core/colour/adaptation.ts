import { applied, xyzOf, type Chromaticity, type Matrix3, type Triple } from './chromaticity.ts';

/** Cone responses and back. [bradford1985] */
const BRADFORD: Matrix3 = [
  [0.8951, 0.2664, -0.1614],
  [-0.7502, 1.7135, 0.0367],
  [0.0389, -0.0685, 1.0296],
];
const BRADFORD_INVERSE: Matrix3 = [
  [0.9869929054667123, -0.14705425642099013, 0.15996265166373125],
  [0.43230526972339456, 0.5183602715367776, 0.04929122821285559],
  [-0.008528664575177328, 0.04004282165408487, 0.9684866957875502],
];

/** What a colour under one white is under another: von Kries in Bradford's cone space, as a matrix on XYZ. [bradford1985] */
export const adaptation = (from: Chromaticity, to: Chromaticity): Matrix3 => {
  const seen = applied(BRADFORD, xyzOf(from, 1));
  const wanted = applied(BRADFORD, xyzOf(to, 1));
  const gains: Triple = [wanted[0] / seen[0], wanted[1] / seen[1], wanted[2] / seen[2]];
  const scaled = BRADFORD.map((row, index) =>
    row.map((value) => value * (gains[index] ?? NaN)),
  ) as unknown as Matrix3;
  return product(BRADFORD_INVERSE, scaled);
};

export const product = (left: Matrix3, right: Matrix3): Matrix3 => {
  const column = (index: 0 | 1 | 2): Triple =>
    applied(left, [right[0][index], right[1][index], right[2][index]]);
  const [first, second, third] = [column(0), column(1), column(2)];
  return [
    [first[0], second[0], third[0]],
    [first[1], second[1], third[1]],
    [first[2], second[2], third[2]],
  ];
};
