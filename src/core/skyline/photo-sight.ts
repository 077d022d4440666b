import { asinDeg, atan2Deg, cosDeg, sinDeg, wrapDeg180, wrapDeg360 } from '../units/angle.ts';
import type { Direction } from '../units/direction.ts';
import type { Result } from '../units/result.ts';

/** A place in a picture, in pixels from its upper left corner, x to the right and y down. */
export type PixelPoint = { readonly xPx: number; readonly yPx: number };

/** A place in a picture whose direction is known. */
export type KnownPoint = PixelPoint & Direction;

export type PhotoMarks = {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly known: readonly [KnownPoint, KnownPoint];
};

/** How a picture looks at the world. */
export type PhotoSight = {
  /** The azimuth runs on from the middle of the picture and so may leave 0 to 360. */
  readonly directionAt: (pixel: PixelPoint) => Direction;
  /** Of the middle of the picture. */
  readonly middle: Direction;
  readonly horizontalFieldDeg: number;
  /** Of the picture, clockwise as one looks at the scene. */
  readonly rollDeg: number;
  /** Largest angle by which the model misses a known direction. */
  readonly missDeg: number;
  /** By how much a known azimuth one degree off stretches the picture, as a share. */
  readonly stretchPerDegree: number;
};

export type PhotoProblem =
  /** The marks do not fix the scale: they are, or point, too close together. */
  | { readonly kind: 'too-close'; readonly apartShare: number; readonly apartDeg: number }
  /** No picture of this kind shows the two directions so far, or so near, apart. */
  | { readonly kind: 'no-such-picture'; readonly apartDeg: number };

export type PhotoModel = (marks: PhotoMarks) => Result<PhotoSight, PhotoProblem>;

/** Of the picture's width. */
export const LEAST_APART_SHARE = 0.08;
export const LEAST_APART_DEG = 2;

/** The tighter limit of two marks: each pixel and each tenth of a degree is magnified by more than this. */
export const areTooClose = (apartShare: number, apartDeg: number): boolean =>
  apartShare < LEAST_APART_SHARE || apartDeg < LEAST_APART_DEG;

export type Vector = readonly [x: number, y: number, z: number];

/** East, north, up. */
export const towards = ({ azimuthDeg, altitudeDeg }: Direction): Vector => [
  cosDeg(altitudeDeg) * sinDeg(azimuthDeg),
  cosDeg(altitudeDeg) * cosDeg(azimuthDeg),
  sinDeg(altitudeDeg),
];

export const directionTo = ([east, north, up]: Vector): Direction => ({
  azimuthDeg: wrapDeg360(atan2Deg(east, north)),
  altitudeDeg: asinDeg(up / Math.hypot(east, north, up)),
});

/** The azimuth nearest to another, outside 0 to 360 if need be. */
export const azimuthNear = (azimuthDeg: number, nearDeg: number): number =>
  nearDeg + wrapDeg180(azimuthDeg - nearDeg);
