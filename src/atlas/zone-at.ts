import { destination } from '../core/place/geodesy.ts';
import type { GeoPoint } from '../core/place/geo-point.ts';
import { utcOffsetMin } from '../core/units/civil-time.ts';
import type { ReadAtlasFile } from './atlas-file.ts';
import { loadPlaceNames } from './place-names.ts';
import type { NearPlace } from './place-names.ts';

export type ZoneAt = {
  /** IANA time zone, the likeliest. */
  readonly zone: string;
  /** Zones of other clocks that may hold here instead: ask. Empty when there is no doubt. */
  readonly alternatives: readonly string[];
  /** Where the zone comes from, and why others may hold, in a sentence or two. */
  readonly reason: string;
};

/** Zone of a point by a table of zone borders; 'Etc/GMT…' on the open sea. */
export type ZoneLookup = (latitudeDeg: number, longitudeDeg: number) => string;

const NEAR_M = 15_000;
const RING_M = 50_000;
const RING_POINTS = 12;
/** One winter and one summer instant, whose clock rules are settled. */
const COMPARED_MS = [Date.UTC(2025, 0, 15, 12), Date.UTC(2025, 6, 15, 12)] as const;

/** Loads place names and border table, once and for good, at the first question. */
export const zoneFinder = (readFile: ReadAtlasFile): ((point: GeoPoint) => Promise<ZoneAt>) => {
  let loaded: Promise<(point: GeoPoint) => ZoneAt> | null = null;
  const load = async (): Promise<(point: GeoPoint) => ZoneAt> => {
    const [places, table] = await Promise.all([
      loadPlaceNames(readFile),
      import('@photostructure/tz-lookup'),
    ]);
    return (point) => zoneOf(point, places.nearest(point), table.default);
  };
  return async (point) => {
    loaded ??= load().catch((problem: unknown) => {
      loaded = null;
      throw problem;
    });
    return (await loaded)(point);
  };
};

/**
 * Within 15 km of a place its zone, elsewhere the border table's. Other clocks may hold where the
 * table says otherwise than the place, here or on a ring of 50 km.
 */
export const zoneOf = (point: GeoPoint, near: NearPlace | null, lookup: ZoneLookup): ZoneAt => {
  const tableZone = lookup(point.latitudeDeg, point.longitudeDeg);
  const town = near !== null && near.distanceM <= NEAR_M ? near : null;
  const zone = town?.place.zone ?? tableZone;
  const ringZones = Array.from({ length: RING_POINTS }, (_, index) => {
    const around = destination(point, {
      distanceM: RING_M,
      bearingDeg: (360 / RING_POINTS) * index,
    });
    return lookup(around.latitudeDeg, around.longitudeDeg);
  }).filter((ringZone) => !ringZone.startsWith('Etc/'));
  const alternatives = onePerClock([zone, tableZone, ...ringZones]).slice(1);
  const origin = town
    ? `The zone of ${town.place.name}, ${kilometres(town.distanceM)} away.`
    : 'From a table of zone borders: no place known within 15 km.';
  const doubt =
    alternatives.length === 0
      ? ''
      : ' A zone with other clocks is within 50 km: check which holds.';
  return { zone, alternatives, reason: origin + doubt };
};

/** The first of the zones that keep the same clocks in winter and in summer. */
const onePerClock = (zones: readonly string[]): readonly string[] =>
  [...new Map(zones.toReversed().map((zone) => [clockKey(zone), zone])).values()].toSorted(
    (one, other) => zones.indexOf(one) - zones.indexOf(other),
  );

const clockKey = (zone: string): string =>
  COMPARED_MS.map((instantMs) => utcOffsetMin(instantMs, zone)).join(' ');

const kilometres = (distanceM: number): string =>
  distanceM < 1000 ? 'under 1 km' : `${Math.round(distanceM / 1000)} km`;
