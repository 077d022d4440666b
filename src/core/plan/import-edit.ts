import { addSpot, together, type Edit } from './edits.ts';
import { numberFrom, TEXT_LENGTH } from './fields.ts';
import { firstFraming, freeSpotName, spotNames, sunsetBearingDeg } from './new-spot.ts';
import { orderKeysAtEnd } from './order-keys-at-end.ts';
import type { Shoot, Spot } from './shoot.ts';
import { SPOT_DEFAULTS } from './spot-defaults.ts';
import type { Waypoint } from './waypoint.ts';

/** A waypoint to become a spot, with what its file does not say. */
export type SpotFromWaypoint = {
  readonly waypoint: Waypoint;
  /** Of the spot to be. */
  readonly spotId: string;
  readonly zone: string;
  /** Above sea level; used where the waypoint has none, or none that can be. */
  readonly elevationM: number;
};

/**
 * Adds the waypoints as last spots of the shoot, in their order, as one step. The camera looks
 * along the waypoint's bearing, or else towards the sunset; the note goes to access.
 */
export function importEdit(shoot: Shoot, additions: readonly SpotFromWaypoint[]): Edit<Shoot> {
  const orders = orderKeysAtEnd(shoot.spots, additions.length);
  const taken = new Set(spotNames(shoot));
  const sunset = sunsetBearings(shoot.date);
  return together(
    ...additions.map((addition, index) => {
      const name = addition.waypoint.name?.trim().slice(0, 120) || freeSpotName(taken);
      taken.add(name);
      return addSpot(
        addition.spotId,
        spotFrom(addition, { name, order: orders[index] ?? '', sunset }),
      );
    }),
  );
}

type BearingAt = (zone: string, latitudeDeg: number, longitudeDeg: number) => number;

/** One bearing for all within a tenth of a degree of latitude and five of longitude, which moves a sunset by far less than a framing. */
function sunsetBearings(date: string): BearingAt {
  const known = new Map<string, number>();
  return (zone, latitudeDeg, longitudeDeg) => {
    const cell = [zone, Math.round(latitudeDeg * 10), Math.round(longitudeDeg / 5)].join();
    const bearingDeg =
      known.get(cell) ?? sunsetBearingDeg(date, zone, { latitudeDeg, longitudeDeg });
    known.set(cell, bearingDeg);
    return bearingDeg;
  };
}

const ELEVATION = numberFrom(-450, 9000);

function spotFrom(
  { waypoint, zone, elevationM }: SpotFromWaypoint,
  {
    name,
    order,
    sunset,
  }: { readonly name: string; readonly order: string; readonly sunset: BearingAt },
): Spot {
  const { latitudeDeg, longitudeDeg, bearingDeg } = waypoint;
  return {
    ...SPOT_DEFAULTS,
    order,
    name,
    latitudeDeg,
    longitudeDeg,
    elevationM: ELEVATION.safeParse(waypoint.elevationM).data ?? elevationM,
    zone,
    framing: firstFraming(bearingDeg ?? sunset(zone, latitudeDeg, longitudeDeg)),
    accessNote: waypoint.note.slice(0, TEXT_LENGTH),
  };
}
