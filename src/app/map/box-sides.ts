import type { PixelBox } from './free-boxes.ts';

const LEFT = 1;
const RIGHT = 2;
const TOP = 4;
const BOTTOM = 8;

/** The sides of the box that a point lies beyond, as bits; two points with one in common miss it. */
export const sidesOf = (x: number, y: number, box: PixelBox): number =>
  (x < box.left ? LEFT : x > box.right ? RIGHT : 0) |
  (y < box.top ? TOP : y > box.bottom ? BOTTOM : 0);
