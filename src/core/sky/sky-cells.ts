import { skylineAltitude, type Skyline } from '../skyline/skyline.ts';
import { sinDeg } from '../units/angle.ts';
import type { Direction } from '../units/direction.ts';
import {
  directionOf,
  type Framing,
  type PicturePoint,
  type Projection,
  projection,
} from './framing.ts';
import { gridPoints, type PictureGrid, type PictureRectangle } from './picture-rectangle.ts';

/** Where camera and skyline leave sky in the picture. */
export type FrameScene = Projection & {
  readonly skylineAltitude: (azimuthDeg: number) => number;
  readonly isSky: (direction: Direction) => boolean;
  readonly isSkyAt: (point: PicturePoint) => boolean;
};

export const frameScene = (framing: Framing, skyline: Skyline): FrameScene => {
  const camera = projection(framing);
  const altitudeOf = skylineAltitude(skyline);
  const highestDeg = skyline.reduce((most, point) => Math.max(most, point.altitudeDeg), 0);
  const sineOfHighest = sinDeg(highestDeg);
  const isSky = (direction: Direction): boolean =>
    direction.altitudeDeg > 0 && direction.altitudeDeg > altitudeOf(direction.azimuthDeg);
  return {
    // Copied one by one: an object made by spreading costs every later look at it.
    toUnitVector: camera.toUnitVector,
    toDirection: camera.toDirection,
    toPicture: camera.toPicture,
    skylineAltitude: altitudeOf,
    isSky,
    isSkyAt: (point) => {
      const vector = camera.toUnitVector(point);
      if (vector.up > sineOfHighest) return true;
      return vector.up > 0 && isSky(directionOf(vector));
    },
  };
};

/** So far above the skyline the sky at its edge is looked at. */
export const JUST_ABOVE_DEG = 1e-6;

export type SkyCell = {
  /** Middle of its sky. */
  readonly direction: Direction;
  /** Of its sky, as a fraction of the picture. */
  readonly areaFraction: number;
};

/**
 * Points in a cell that the skyline cuts: a Fibonacci lattice, no two in one row or column, so
 * that a level edge is met as well as a slanted one.
 */
const CUT_POINTS = 34;
const CUT_STRIDE = 21;

/** Cuts a rectangle into cells and keeps of each what is sky, judged by its corners. */
export const skyCells = (
  scene: FrameScene,
  rectangle: PictureRectangle,
  grid: PictureGrid,
): readonly SkyCell[] => {
  const { columns, rows } = grid;
  const corners = gridPoints(rectangle, grid).map((point) => (scene.isSkyAt(point) ? 1 : 0));
  const cellWidth = (rectangle.right - rectangle.left) / columns;
  const cellHeight = (rectangle.top - rectangle.bottom) / rows;
  const cells: SkyCell[] = [];
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const at = row * (columns + 1) + column;
      const inSky =
        (corners[at] ?? 0) +
        (corners[at + 1] ?? 0) +
        (corners[at + columns + 1] ?? 0) +
        (corners[at + columns + 2] ?? 0);
      if (inSky === 0) continue;
      const left = rectangle.left + column * cellWidth;
      const bottom = rectangle.bottom + row * cellHeight;
      const cell = { left, right: left + cellWidth, bottom, top: bottom + cellHeight };
      const part = inSky === 4 ? { middle: middleOf(cell), share: 1 } : skyPart(scene, cell);
      if (part.share === 0) continue;
      cells.push({
        direction: scene.toDirection(part.middle),
        areaFraction: part.share * cellWidth * cellHeight,
      });
    }
  }
  return cells;
};

const middleOf = (cell: PictureRectangle): PicturePoint => ({
  xFraction: (cell.left + cell.right) / 2,
  yFraction: (cell.bottom + cell.top) / 2,
});

const skyPart = (
  scene: FrameScene,
  cell: PictureRectangle,
): { readonly middle: PicturePoint; readonly share: number } => {
  let count = 0;
  let xSum = 0;
  let ySum = 0;
  for (let at = 0; at < CUT_POINTS; at += 1) {
    const along = (at + 0.5) / CUT_POINTS;
    const up = (((at * CUT_STRIDE) % CUT_POINTS) + 0.5) / CUT_POINTS;
    const point = {
      xFraction: cell.left + along * (cell.right - cell.left),
      yFraction: cell.bottom + up * (cell.top - cell.bottom),
    };
    if (!scene.isSkyAt(point)) continue;
    count += 1;
    xSum += point.xFraction;
    ySum += point.yFraction;
  }
  return {
    middle: { xFraction: xSum / count, yFraction: ySum / count },
    share: count / CUT_POINTS,
  };
};
