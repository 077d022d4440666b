/** A place on the WGS 84 ellipsoid. */
export type GeoPoint = {
  /** North positive, −90 to 90. */
  readonly latitudeDeg: number;
  /** East positive, −180 to 180. */
  readonly longitudeDeg: number;
  /** Above sea level. */
  readonly elevationM?: number;
};
