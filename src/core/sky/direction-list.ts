import type { Direction } from '../units/direction.ts';
import { unitVector } from './framing.ts';

/** Many directions side by side, with the same as unit vectors. */
export type DirectionList = {
  readonly count: number;
  readonly azimuthDeg: Float64Array;
  readonly altitudeDeg: Float64Array;
  readonly east: Float64Array;
  readonly north: Float64Array;
  readonly up: Float64Array;
};

export const directionList = (directions: readonly Direction[]): DirectionList => {
  const column = (): Float64Array => new Float64Array(directions.length);
  const list = {
    count: directions.length,
    azimuthDeg: column(),
    altitudeDeg: column(),
    east: column(),
    north: column(),
    up: column(),
  };
  directions.forEach((direction, at) => {
    const { east, north, up } = unitVector(direction);
    list.azimuthDeg[at] = direction.azimuthDeg;
    list.altitudeDeg[at] = direction.altitudeDeg;
    list.east[at] = east;
    list.north[at] = north;
    list.up[at] = up;
  });
  return list;
};

/** What a function of direction gives along the list. */
export const valuesAlong = (
  list: DirectionList,
  valueTowards: (direction: Direction) => number,
): Float64Array =>
  list.azimuthDeg.map((azimuthDeg, at) =>
    valueTowards({ azimuthDeg, altitudeDeg: list.altitudeDeg[at] ?? NaN }),
  );
