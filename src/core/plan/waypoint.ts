/** A place with what files of waypoints can say about it: what spots come from and leave as. */
export type Waypoint = {
  readonly name: string | null;
  /** North positive, −90 to 90. */
  readonly latitudeDeg: number;
  /** East positive, −180 to 180. */
  readonly longitudeDeg: number;
  /** Above sea level. */
  readonly elevationM: number | null;
  /** Plain text, lines parted by \n. */
  readonly note: string;
  /** Where the camera looks, clockwise from true north, 0 ≤ a < 360. */
  readonly bearingDeg: number | null;
  /** Epoch milliseconds. */
  readonly takenAtMs: number | null;
};
