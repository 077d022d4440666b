import { refractionDeg } from '../sun-moon/refraction.ts';
import type { SunPosition } from '../sun-moon/sun-position.ts';
import { wrapDeg360 } from '../units/angle.ts';

/** Figures read between tabulated places of the sun, linear in its true altitude and azimuth. */
export type SunTable = (sun: SunPosition) => Float64Array;

/** From one place to the next, up to the next entry. */
type Grid = readonly (readonly [fromDeg: number, stepDeg: number])[];

const placesOf = (grid: Grid, endDeg: number): readonly number[] =>
  grid.flatMap(([fromDeg, stepDeg], at) =>
    Array.from(
      { length: Math.round(((grid[at + 1]?.[0] ?? endDeg) - fromDeg) / stepDeg) },
      (_, step) => fromDeg + step * stepDeg,
    ),
  );

/** By how fast the sky changes: its shapes give way between −4° and 4°. */
const ROWS = [
  ...placesOf(
    [
      [-90, 12],
      [-18, 3],
      [-12, 2],
      [-6, 1],
      [6, 2],
      [12, 3],
    ],
    90,
  ),
  90,
];
/** Clockwise from where the camera looks: close where the sun stands near the frame. */
const COLUMNS = [
  ...placesOf(
    [
      [0, 5],
      [45, 10],
      [315, 5],
    ],
    360,
  ),
  360,
];

/** Each place is worked out when first needed. */
export const sunTable = (
  bearingDeg: number,
  workOut: (sun: SunPosition) => readonly number[],
): SunTable => {
  const known = new Map<number, readonly number[]>();
  const node = (row: number, column: number): readonly number[] => {
    const key = row * COLUMNS.length + column;
    let figures = known.get(key);
    if (figures === undefined) {
      const trueAltitudeDeg = ROWS[row] ?? NaN;
      figures = workOut({
        azimuthDeg: wrapDeg360(bearingDeg + (COLUMNS[column] ?? NaN)),
        trueAltitudeDeg,
        apparentAltitudeDeg: trueAltitudeDeg + refractionDeg(trueAltitudeDeg),
      });
      known.set(key, figures);
    }
    return figures;
  };
  return ({ azimuthDeg, trueAltitudeDeg }) => {
    const { at: row, share: up } = between(ROWS, trueAltitudeDeg);
    const { at: column, share: round } = between(COLUMNS, wrapDeg360(azimuthDeg - bearingDeg));
    const next = column + 2 === COLUMNS.length ? 0 : column + 1;
    const lowerLeft = node(row, column);
    const lowerRight = node(row, next);
    const upperLeft = node(row + 1, column);
    const upperRight = node(row + 1, next);
    const sum = new Float64Array(lowerLeft.length);
    for (let at = 0; at < sum.length; at += 1) {
      const lower = (lowerLeft[at] ?? NaN) * (1 - round) + (lowerRight[at] ?? NaN) * round;
      const upper = (upperLeft[at] ?? NaN) * (1 - round) + (upperRight[at] ?? NaN) * round;
      sum[at] = lower * (1 - up) + upper * up;
    }
    return sum;
  };
};

/** The place at or before a figure, the last but one at most, and how far from it to the next. */
const between = (
  places: readonly number[],
  figure: number,
): { readonly at: number; readonly share: number } => {
  let low = 0;
  let high = places.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((places[middle] ?? NaN) <= figure) low = middle;
    else high = middle;
  }
  const fromDeg = places[low] ?? NaN;
  return { at: low, share: (figure - fromDeg) / ((places[low + 1] ?? NaN) - fromDeg) };
};
