import { atanDeg, cosDeg, tanDeg } from '../units/angle.ts';

/** Equator over 256 pixels: the ground a pixel of zoom 0 covers there. [iogpFormulas] */
const EQUATOR_M = 40075016.686;
export const TILE_PX = 256;
/** Where the square world ends, north and south. */
export const MERCATOR_LIMIT_DEG = 85.0511287798;

export type TileNumber = { readonly zoom: number; readonly x: number; readonly y: number };

/** Share of the world square from its north edge, 0 to 1 within the limits; outside them beyond. [iogpFormulas] */
export const mercatorShareY = (latitudeDeg: number): number =>
  0.5 - Math.log(tanDeg(45 + latitudeDeg / 2)) / (2 * Math.PI);

/** Share of the world square from its west edge, 0 to 1. [iogpFormulas] */
export const mercatorShareX = (longitudeDeg: number): number => (longitudeDeg + 180) / 360;

/** Inverse of `mercatorShareY`. */
export const mercatorLatitudeDeg = (shareY: number): number =>
  2 * atanDeg(Math.exp((0.5 - shareY) * 2 * Math.PI)) - 90;

/** Number of the tile that holds a place; latitudes beyond the square in its outermost rows. */
export function tileAt(
  place: { readonly latitudeDeg: number; readonly longitudeDeg: number },
  zoom: number,
): TileNumber {
  const side = 2 ** zoom;
  const y = Math.floor(mercatorShareY(place.latitudeDeg) * side);
  const x = Math.floor(mercatorShareX(place.longitudeDeg) * side);
  return { zoom, x: ((x % side) + side) % side, y: Math.min(side - 1, Math.max(0, y)) };
}

/** Ground covered by a pixel of a tile of 256, at its latitude. */
export const groundPerPixelM = (latitudeDeg: number, zoom: number): number =>
  ((EQUATOR_M / TILE_PX) * cosDeg(latitudeDeg)) / 2 ** zoom;
