import { atanDeg, tanDeg } from '../../core/units/angle.ts';
import { MERCATOR_LIMIT_DEG } from './map-place.ts';

/** Side of the square world at zoom 0, in pixels. */
export const WORLD_PX = 256;

/** EPSG:3857, from the west edge of the world at zoom 0. */
export const mercatorX = (longitudeDeg: number): number => ((longitudeDeg + 180) / 360) * WORLD_PX;

/** EPSG:3857, from the north edge of the world at zoom 0; latitudes beyond the square on its edge. */
export const mercatorY = (latitudeDeg: number): number => {
  if (latitudeDeg >= MERCATOR_LIMIT_DEG) return 0;
  if (latitudeDeg <= -MERCATOR_LIMIT_DEG) return WORLD_PX;
  return WORLD_PX * (0.5 - Math.log(tanDeg(45 + latitudeDeg / 2)) / (2 * Math.PI));
};

/** Inverse of `mercatorX`. */
export const longitudeAt = (x: number): number => (x / WORLD_PX) * 360 - 180;

/** Inverse of `mercatorY`. */
export const latitudeAt = (y: number): number =>
  2 * atanDeg(Math.exp((0.5 - y / WORLD_PX) * 2 * Math.PI)) - 90;
