import { inOrder } from './order-key.ts';
import type { Shoot, Spot } from './shoot.ts';
import type { Waypoint } from './waypoint.ts';

/** What a waypoint's note can tell of its spot, in this order. */
export const WAYPOINT_LINES = [
  'framing',
  'way-in',
  'ground',
  'foot-traffic',
  'shelter',
  'wind',
  'power',
  'toilets',
  'hazards',
  'permission',
  'contacts',
] as const;

export type WaypointLine = (typeof WAYPOINT_LINES)[number];

/** Lines that name no permission and nobody to ask. */
export const PLAIN_WAYPOINT_LINES: readonly WaypointLine[] = WAYPOINT_LINES.filter(
  (line) => line !== 'permission' && line !== 'contacts',
);

/** The spots of a shoot as waypoints, in order; the note holds the lines wanted that are not empty. */
export const waypointsOf = (
  shoot: Pick<Shoot, 'spots'>,
  { lines }: { readonly lines: readonly WaypointLine[] },
): readonly Waypoint[] =>
  inOrder(shoot.spots).map(([, spot]) => ({
    name: spot.name,
    latitudeDeg: spot.latitudeDeg,
    longitudeDeg: spot.longitudeDeg,
    elevationM: spot.elevationM,
    note: WAYPOINT_LINES.filter((line) => lines.includes(line))
      .map((line) => [LABELS[line], lineText(spot, line)] as const)
      .filter(([, text]) => text !== '')
      .map(([label, text]) => `${label}: ${text}`)
      .join('\n'),
    bearingDeg: spot.framing.bearingDeg,
    takenAtMs: null,
  }));

const LABELS: Readonly<Record<WaypointLine, string>> = {
  framing: 'Camera',
  'way-in': 'Way in',
  ground: 'Ground',
  'foot-traffic': 'Foot traffic',
  shelter: 'Shelter',
  wind: 'Wind',
  power: 'Power',
  toilets: 'Toilets',
  hazards: 'Hazards',
  permission: 'Permission',
  contacts: 'Contacts',
};

function lineText(spot: Spot, line: WaypointLine): string {
  switch (line) {
    case 'framing':
      return joined(
        `faces ${Math.round(spot.framing.bearingDeg) % 360}° from true north`,
        `${spot.framing.focalLengthMm} mm`,
      );
    case 'way-in':
      return joined(spot.parkingNote, `${spot.walkInMin} min on foot`, spot.accessNote);
    case 'ground':
      return spot.groundNote;
    case 'foot-traffic':
      return joined(known(spot.footTraffic), spot.footTrafficNote);
    case 'shelter':
      return joined(known(spot.shelter), spot.shelterNote);
    case 'wind':
      return spot.windNote;
    case 'power':
      return spot.powerNote;
    case 'toilets':
      return spot.toiletsNote;
    case 'hazards':
      return joined(
        ...Object.entries(spot.hazards).flatMap(([hazard, here]) => (here ? [hazard] : [])),
        spot.hazardsNote,
      );
    case 'permission':
      return joined(
        spot.permission,
        spot.permissionNote,
        spot.permissionNumber === '' ? '' : `number ${spot.permissionNumber}`,
        spot.permissionFrom === '' ? '' : `from ${spot.permissionFrom}`,
        spot.permissionUntil === '' ? '' : `until ${spot.permissionUntil}`,
        spot.permissionConditions,
      );
    case 'contacts':
      return inOrder(spot.contacts)
        .map(([, { role, note }]) => joined(role, note))
        .join('; ');
  }
}

const known = (state: string): string => (state === 'unknown' ? '' : state);

const joined = (...parts: readonly string[]): string =>
  parts.filter((part) => part.trim() !== '').join(', ');
