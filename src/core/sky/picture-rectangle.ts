import type { PicturePoint } from './framing.ts';
import type { Patch } from './patch.ts';

/** A part of the picture; sides in fractions of the picture from its centre. */
export type PictureRectangle = {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
};

export const WHOLE_PICTURE: PictureRectangle = { left: -0.5, right: 0.5, bottom: -0.5, top: 0.5 };

/** The part of the patch that is inside the picture, null when none is. */
export const patchRectangle = (patch: Patch): PictureRectangle | null => {
  const left = Math.max(-0.5, patch.xFraction - patch.widthFraction / 2);
  const right = Math.min(0.5, patch.xFraction + patch.widthFraction / 2);
  const bottom = Math.max(-0.5, patch.yFraction - patch.heightFraction / 2);
  const top = Math.min(0.5, patch.yFraction + patch.heightFraction / 2);
  return left < right && bottom < top ? { left, right, bottom, top } : null;
};

export type PictureGrid = { readonly columns: number; readonly rows: number };

/** Points of a grid, row by row from the bottom left; inset 0 its corners, 0.5 its cells' middles. */
export const gridPoints = (
  rectangle: PictureRectangle,
  { columns, rows }: PictureGrid,
  inset: 0 | 0.5,
): readonly PicturePoint[] => {
  const points: PicturePoint[] = [];
  for (let row = inset; row <= rows - inset; row += 1) {
    for (let column = inset; column <= columns - inset; column += 1) {
      points.push({
        xFraction: rectangle.left + ((rectangle.right - rectangle.left) * column) / columns,
        yFraction: rectangle.bottom + ((rectangle.top - rectangle.bottom) * row) / rows,
      });
    }
  }
  return points;
};

/** The corners of the grid's cells that lie on the rectangle's border. */
export const borderPoints = (
  rectangle: PictureRectangle,
  grid: PictureGrid,
): readonly PicturePoint[] =>
  gridPoints(rectangle, grid, 0).filter((_, at) => {
    const column = at % (grid.columns + 1);
    const row = (at - column) / (grid.columns + 1);
    return column === 0 || column === grid.columns || row === 0 || row === grid.rows;
  });

export const isInside = (rectangle: PictureRectangle, point: PicturePoint): boolean =>
  point.xFraction >= rectangle.left &&
  point.xFraction <= rectangle.right &&
  point.yFraction >= rectangle.bottom &&
  point.yFraction <= rectangle.top;
