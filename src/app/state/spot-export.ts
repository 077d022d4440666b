import type { Shoot } from '../../core/plan/shoot.ts';
import { waypointsOf, type WaypointLine } from '../../core/plan/waypoints-of.ts';
import { WRITTEN_FORMATS } from '../../exchange/waypoints/read-waypoints.ts';

export type SpotFormatId = (typeof WRITTEN_FORMATS)[number]['id'];

export const SPOT_FORMATS = WRITTEN_FORMATS.map(({ id, label, extensions, mediaType }) => ({
  id,
  label,
  extension: extensions[0] ?? '',
  mediaType,
}));

/** Where spots are only told to about a kilometre. */
const ROUND_TO_DEG = 0.01;

/** The chosen spots as a file of waypoints; the shoot itself is not changed. */
export function spotFileText(
  shoot: Shoot,
  chosen: {
    readonly format: SpotFormatId;
    readonly spotIds: ReadonlySet<string>;
    readonly lines: readonly WaypointLine[];
    readonly roughly: boolean;
  },
): string {
  const rounded = (angleDeg: number): number =>
    chosen.roughly ? Math.round(angleDeg / ROUND_TO_DEG) * ROUND_TO_DEG : angleDeg;
  const spots = Object.fromEntries(
    Object.entries(shoot.spots)
      .filter(([id]) => chosen.spotIds.has(id))
      .map(([id, spot]) => [
        id,
        {
          ...spot,
          latitudeDeg: rounded(spot.latitudeDeg),
          longitudeDeg: rounded(spot.longitudeDeg),
        },
      ]),
  );
  const format = WRITTEN_FORMATS.find(({ id }) => id === chosen.format);
  return format === undefined
    ? ''
    : format.write(shoot.title, waypointsOf({ spots }, { lines: chosen.lines }));
}
