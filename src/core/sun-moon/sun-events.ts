import { getTimes } from 'suncalc';
import type { GeoPoint } from '../place/geo-point.ts';
import { dayBoundsMs } from '../units/civil-time.ts';
import type { DayBounds } from '../units/civil-time.ts';
import { altitudeTrack, crossingsOf } from './altitude-crossings.ts';
import type { AltitudeTrack } from './altitude-crossings.ts';
import { sunPosition } from './sun-position.ts';

/** The day to look at: a civil date 'YYYY-MM-DD', counted in an IANA zone, at a place. */
export type PlaceDay = { readonly date: string; readonly zone: string; readonly place: GeoPoint };

/** Epoch milliseconds, null for what does not happen. */
export type SunEvents = {
  readonly sunriseMs: number | null;
  readonly sunsetMs: number | null;
  readonly solarNoonMs: number | null;
  readonly civilDawnMs: number | null;
  readonly civilDuskMs: number | null;
  readonly nauticalDawnMs: number | null;
  readonly nauticalDuskMs: number | null;
  readonly astronomicalDawnMs: number | null;
  readonly astronomicalDuskMs: number | null;
};

/** True altitudes of the sun's centre at the events. [usnoRiseSet] */
export const SUN_EVENT_ALTITUDE_DEG = {
  riseSet: -50 / 60,
  civil: -6,
  nautical: -12,
  astronomical: -18,
} as const;

const HOUR_MS = 3_600_000;

/**
 * The sun's events of a civil date. Solar noon is the upper transit inside the date; dawns and
 * rise are the last in the 12 h before it, set and dusks the first in the 12 h after, so that they
 * may fall on the date's neighbours. Level horizon at sea level. All null where the zone skipped
 * the date or no transit falls into it.
 */
export const sunEvents = ({ date, zone, place }: PlaceDay): SunEvents => {
  const solarNoonMs = upperTransitMs(dayBoundsMs(date, zone), place);
  const track = solarNoonMs === null ? null : trackRound(solarNoonMs, place);
  const civil = pairRound(track, solarNoonMs, SUN_EVENT_ALTITUDE_DEG.civil);
  const nautical = pairRound(track, solarNoonMs, SUN_EVENT_ALTITUDE_DEG.nautical);
  const astronomical = pairRound(track, solarNoonMs, SUN_EVENT_ALTITUDE_DEG.astronomical);
  const riseSet = pairRound(track, solarNoonMs, SUN_EVENT_ALTITUDE_DEG.riseSet);
  return {
    sunriseMs: riseSet.upMs,
    sunsetMs: riseSet.downMs,
    solarNoonMs,
    civilDawnMs: civil.upMs,
    civilDuskMs: civil.downMs,
    nauticalDawnMs: nautical.upMs,
    nauticalDuskMs: nautical.downMs,
    astronomicalDawnMs: astronomical.upMs,
    astronomicalDuskMs: astronomical.downMs,
  };
};

/** suncalc finds the transit nearest an instant, within minutes: its neighbours are asked too. */
const upperTransitMs = ({ startMs, endMs }: DayBounds, place: GeoPoint): number | null => {
  const middleMs = (startMs + endMs) / 2;
  if (!Number.isFinite(middleMs)) return null;
  const transits = [-24, 0, 24].map((hours) =>
    getTimes(
      new Date(middleMs + hours * HOUR_MS),
      place.latitudeDeg,
      place.longitudeDeg,
    ).solarNoon.getTime(),
  );
  return transits.find((transitMs) => transitMs >= startMs && transitMs < endMs) ?? null;
};

const trackRound = (solarNoonMs: number, place: GeoPoint): AltitudeTrack =>
  altitudeTrack((instantMs) => sunPosition(instantMs, place).trueAltitudeDeg, {
    startMs: solarNoonMs - 13 * HOUR_MS,
    endMs: solarNoonMs + 13 * HOUR_MS,
    stepMs: HOUR_MS / 2,
  });

type Pair = { readonly upMs: number | null; readonly downMs: number | null };

const pairRound = (
  track: AltitudeTrack | null,
  solarNoonMs: number | null,
  levelDeg: number,
): Pair => {
  if (track === null || solarNoonMs === null) return { upMs: null, downMs: null };
  const crossings = crossingsOf(track, levelDeg);
  const up = crossings.findLast(
    ({ instantMs, direction }) =>
      direction === 'rising' && instantMs <= solarNoonMs && instantMs >= solarNoonMs - 12 * HOUR_MS,
  );
  const down = crossings.find(
    ({ instantMs, direction }) =>
      direction === 'falling' &&
      instantMs >= solarNoonMs &&
      instantMs <= solarNoonMs + 12 * HOUR_MS,
  );
  return { upMs: up?.instantMs ?? null, downMs: down?.instantMs ?? null };
};
