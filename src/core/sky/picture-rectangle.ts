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

/** The corners of a grid's cells, row by row from the bottom left. */
export const gridPoints = (
  rectangle: PictureRectangle,
  { columns, rows }: PictureGrid,
): readonly PicturePoint[] => {
  const points: PicturePoint[] = [];
  for (let row = 0; row <= rows; row += 1) {
    for (let column = 0; column <= columns; column += 1) {
      points.push({
        xFraction: rectangle.left + ((rectangle.right - rectangle.left) * column) / columns,
        yFraction: rectangle.bottom + ((rectangle.top - rectangle.bottom) * row) / rows,
      });
    }
  }
  return points;
};

/** Points evenly along the rectangle's border, its corners included. */
export const borderPoints = (
  { left, right, bottom, top }: PictureRectangle,
  { columns, rows }: PictureGrid,
): readonly PicturePoint[] => {
  const points: PicturePoint[] = [];
  for (let column = 0; column < columns; column += 1) {
    const along = ((right - left) * column) / columns;
    points.push({ xFraction: left + along, yFraction: bottom });
    points.push({ xFraction: right - along, yFraction: top });
  }
  for (let row = 0; row < rows; row += 1) {
    const along = ((top - bottom) * row) / rows;
    points.push({ xFraction: right, yFraction: bottom + along });
    points.push({ xFraction: left, yFraction: top - along });
  }
  return points;
};

export const isInside = (rectangle: PictureRectangle, point: PicturePoint): boolean =>
  point.xFraction >= rectangle.left &&
  point.xFraction <= rectangle.right &&
  point.yFraction >= rectangle.bottom &&
  point.yFraction <= rectangle.top;
