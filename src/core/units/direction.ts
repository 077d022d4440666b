import { acosDeg, cosDeg, sinDeg } from './angle.ts';

/** A direction from the observer. */
export type Direction = {
  /** Clockwise from true north. */
  readonly azimuthDeg: number;
  /** Apparent altitude above the level horizon, −90 to 90. */
  readonly altitudeDeg: number;
};

/** Angle between two directions, 0 to 180. */
export const angleBetweenDeg = (first: Direction, second: Direction): number =>
  acosDeg(
    sinDeg(first.altitudeDeg) * sinDeg(second.altitudeDeg) +
      cosDeg(first.altitudeDeg) *
        cosDeg(second.altitudeDeg) *
        cosDeg(first.azimuthDeg - second.azimuthDeg),
  );
