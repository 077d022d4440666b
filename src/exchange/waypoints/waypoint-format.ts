import type { GeoPoint } from '../../core/place/geo-point.ts';
import type { Waypoint } from '../../core/plan/waypoint.ts';
import type { Result } from '../../core/units/result.ts';

/** What was found in a file or text: what can become a spot, what cannot and why, what else to know. */
export type WaypointReading = {
  readonly waypoints: readonly Waypoint[];
  readonly skipped: readonly Skipped[];
  /** Sentences. */
  readonly notes: readonly string[];
};

export type Skipped = { readonly what: string; readonly why: string };

/** The reading, or one sentence that says what was found and what was expected. */
export type ReadWaypoints = Result<WaypointReading, string>;

export type ReadContext = {
  /** A place nearby, such as the spot or map in view: completes short codes, makes swapped numbers plain. */
  readonly near: GeoPoint | null;
};

/** One way of writing waypoints down. What cannot be read or written lacks the function. */
export type WaypointFormat = {
  readonly id: string;
  readonly label: string;
  /** Lower case, with the dot; the first is used for writing. */
  readonly extensions: readonly string[];
  readonly mediaType: string;
  readonly readText?: (text: string, context: ReadContext) => ReadWaypoints;
  readonly readBytes?: (bytes: Uint8Array, context: ReadContext) => Promise<ReadWaypoints>;
  /** Waypoints as they shall leave, whatever is to stay already left out. */
  readonly write?: (title: string, waypoints: readonly Waypoint[]) => string;
};
