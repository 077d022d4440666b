import { asinDeg, atan2Deg, atanDeg, cosDeg, sinDeg, wrapDeg360 } from '../units/angle.ts';
import type { Direction } from '../units/direction.ts';

/** Where the camera points and how wide it sees; an upright picture has its sides swapped. */
export type Framing = {
  /** Of the lens axis, clockwise from true north. */
  readonly bearingDeg: number;
  /** Of the lens axis above the level, −90 to 90. */
  readonly tiltDeg: number;
  readonly focalLengthMm: number;
  readonly sensorWidthMm: number;
  readonly sensorHeightMm: number;
};

/** A point of the picture from its centre; the edges are at −0.5 and 0.5. */
export type PicturePoint = {
  /** To the right, in picture widths. */
  readonly xFraction: number;
  /** Up, in picture heights. */
  readonly yFraction: number;
};

/** A direction as a vector of length 1. */
export type UnitVector = { readonly east: number; readonly north: number; readonly up: number };

export const unitVector = ({ azimuthDeg, altitudeDeg }: Direction): UnitVector => ({
  east: cosDeg(altitudeDeg) * sinDeg(azimuthDeg),
  north: cosDeg(altitudeDeg) * cosDeg(azimuthDeg),
  up: sinDeg(altitudeDeg),
});

export const directionOf = ({ east, north, up }: UnitVector): Direction => ({
  azimuthDeg: wrapDeg360(atan2Deg(east, north)),
  altitudeDeg: asinDeg(up),
});

export const horizontalFieldDeg = (framing: Framing): number =>
  2 * atanDeg(framing.sensorWidthMm / (2 * framing.focalLengthMm));

export const verticalFieldDeg = (framing: Framing): number =>
  2 * atanDeg(framing.sensorHeightMm / (2 * framing.focalLengthMm));

export type Projection = {
  readonly toUnitVector: (point: PicturePoint) => UnitVector;
  readonly toDirection: (point: PicturePoint) => Direction;
  /** Also for points outside the picture; null for what is not in front of the camera. */
  readonly toPicture: (direction: Direction) => PicturePoint | null;
};

/**
 * Rectilinear projection, focused at infinity, no distortion, camera level across: straight
 * lines stay straight, the horizon is level.
 */
export const projection = (framing: Framing): Projection => {
  const sinBearing = sinDeg(framing.bearingDeg);
  const cosBearing = cosDeg(framing.bearingDeg);
  const sinTilt = sinDeg(framing.tiltDeg);
  const cosTilt = cosDeg(framing.tiltDeg);
  const widthOverFocal = framing.sensorWidthMm / framing.focalLengthMm;
  const heightOverFocal = framing.sensorHeightMm / framing.focalLengthMm;

  const toUnitVector = ({ xFraction, yFraction }: PicturePoint): UnitVector => {
    const right = xFraction * widthOverFocal;
    const above = yFraction * heightOverFocal;
    const length = Math.sqrt(1 + right * right + above * above);
    const level = cosTilt - above * sinTilt;
    return {
      east: (level * sinBearing + right * cosBearing) / length,
      north: (level * cosBearing - right * sinBearing) / length,
      up: (sinTilt + above * cosTilt) / length,
    };
  };

  return {
    toUnitVector,
    toDirection: (point) => directionOf(toUnitVector(point)),
    toPicture: (direction) => {
      const { east, north, up } = unitVector(direction);
      const level = east * sinBearing + north * cosBearing;
      const forward = level * cosTilt + up * sinTilt;
      if (forward <= 0) return null;
      return {
        xFraction: (east * cosBearing - north * sinBearing) / forward / widthOverFocal,
        yFraction: (up * cosTilt - level * sinTilt) / forward / heightOverFocal,
      };
    },
  };
};

export const isInsidePicture = ({ xFraction, yFraction }: PicturePoint): boolean =>
  Math.abs(xFraction) <= 0.5 && Math.abs(yFraction) <= 0.5;
