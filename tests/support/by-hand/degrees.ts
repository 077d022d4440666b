/** Trigonometry in degrees. */
export const sin = (deg: number): number => Math.sin((deg * Math.PI) / 180);
export const cos = (deg: number): number => Math.cos((deg * Math.PI) / 180);
export const tan = (deg: number): number => Math.tan((deg * Math.PI) / 180);
export const arccos = (ratio: number): number =>
  (Math.acos(Math.min(1, Math.max(-1, ratio))) * 180) / Math.PI;
export const arcsin = (ratio: number): number =>
  (Math.asin(Math.min(1, Math.max(-1, ratio))) * 180) / Math.PI;
export const arctan2 = (opposite: number, adjacent: number): number =>
  (Math.atan2(opposite, adjacent) * 180) / Math.PI;

/** A direction in the sky: azimuth clockwise from true north, altitude above the level horizon. */
export type Toward = { readonly azimuth: number; readonly altitude: number };

/** Cosine of the angle between two directions. */
export const cosBetween = (one: Toward, other: Toward): number =>
  sin(one.altitude) * sin(other.altitude) +
  cos(one.altitude) * cos(other.altitude) * cos(one.azimuth - other.azimuth);
