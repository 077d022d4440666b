import { metresPerDegree } from '../place/metres-per-degree.ts';
import type { GeoPoint } from '../place/geo-point.ts';
import { wrapDeg180 } from '../units/angle.ts';
import { inOrder } from './order-key.ts';
import type { Shoot } from './shoot.ts';
import type { Waypoint } from './waypoint.ts';

/** What importing one waypoint would do. */
export type ImportRow = {
  readonly waypoint: Waypoint;
  /** 'already-there' is added only where the user asks for it. */
  readonly action: 'add' | 'already-there';
  /** A sentence for the preview. */
  readonly because: string;
  /** The spot that stands there already; null for a new one, or one that repeats within the file. */
  readonly spotId: string | null;
};

export type ImportPlan = { readonly rows: readonly ImportRow[] };

/** Nearer than a phone's position is good for, two waypoints are one place. */
export const SAME_PLACE_M = 15;
/** As far as this a name tells that the place is the same, only measured again. */
export const SAME_NAME_M = 100;

/** What importing waypoints into a shoot would do, row by row; nothing changes yet. */
export function planImport(
  shoot: Pick<Shoot, 'spots'>,
  waypoints: readonly Waypoint[],
): ImportPlan {
  const spots = inOrder(shoot.spots).map(([spotId, spot]) => standing(spot, spot.name, spotId));
  const fromFile: Standing[] = [];
  const rows = waypoints.map((waypoint): ImportRow => {
    const there = twin(waypoint, spots) ?? twin(waypoint, fromFile);
    if (there !== null)
      return {
        waypoint,
        action: 'already-there',
        because: thereWords(there),
        spotId: there.standing.spotId,
      };
    fromFile.push(standing(waypoint, waypoint.name, null));
    return {
      waypoint,
      action: 'add',
      because: `No spot stands within ${SAME_PLACE_M} m${waypoint.name === null ? '' : `, none of this name within ${SAME_NAME_M} m`}.`,
      spotId: null,
    };
  });
  return { rows };
}

type Point = Pick<GeoPoint, 'latitudeDeg' | 'longitudeDeg'>;

type Standing = {
  readonly point: Point;
  readonly name: string | null;
  readonly nameKey: string;
  readonly spotId: string | null;
};

type Twin = {
  readonly standing: Standing;
  readonly distanceM: number;
  readonly by: 'place' | 'name';
};

const standing = (point: Point, name: string | null, spotId: string | null): Standing => ({
  point,
  name,
  nameKey: nameKey(name),
  spotId,
});

/** Names are the same whatever their case, spaces and way of writing accents. */
const nameKey = (name: string | null): string =>
  (name ?? '').normalize('NFKC').toLowerCase().replace(/\s+/g, ' ').trim();

/** The nearest that is the same place, or else the nearest of the same name. */
function twin(waypoint: Waypoint, among: readonly Standing[]): Twin | null {
  const { northM, eastM } = metresPerDegree(waypoint.latitudeDeg);
  const key = nameKey(waypoint.name);
  let byPlace: Twin | null = null;
  let byName: Twin | null = null;
  for (const one of among) {
    const northwardM = (one.point.latitudeDeg - waypoint.latitudeDeg) * northM;
    if (Math.abs(northwardM) > SAME_NAME_M) continue;
    const eastwardM = wrapDeg180(one.point.longitudeDeg - waypoint.longitudeDeg) * eastM;
    const distanceM = Math.hypot(northwardM, eastwardM);
    if (distanceM <= SAME_PLACE_M && distanceM < (byPlace?.distanceM ?? Infinity))
      byPlace = { standing: one, distanceM, by: 'place' };
    if (
      key !== '' &&
      key === one.nameKey &&
      distanceM <= SAME_NAME_M &&
      distanceM < (byName?.distanceM ?? Infinity)
    )
      byName = { standing: one, distanceM, by: 'name' };
  }
  return byPlace ?? byName;
}

const thereWords = ({ standing: { name, spotId }, distanceM, by }: Twin): string => {
  const who = name ?? 'an unnamed waypoint';
  const away = distanceM < 0.5 ? 'at the same place' : `${Math.round(distanceM)} m away`;
  const same = by === 'name' ? ', of the same name,' : '';
  return spotId === null
    ? `Comes twice here: ${who}${same} ${away}.`
    : `Already a spot: ${who}${same} ${away}.`;
};
