import type { Skyline } from '../skyline/skyline.ts';
import { withRuns } from '../skyline/traced-skyline.ts';
import type { Edit } from './edits.ts';
import type { Shoot, Spot } from './shoot.ts';
import type { TerrainOfSpot } from './spot-schema.ts';

type Point = Spot['skyline'][string];

export const addSkylinePoint =
  (spotId: string, pointId: string, point: Readonly<Point>): Edit<Shoot> =>
  (shoot) => {
    const spot = shoot.spots[spotId];
    if (spot !== undefined) spot.skyline[pointId] = { ...point };
  };

export const removeSkylinePoint =
  (spotId: string, pointId: string): Edit<Shoot> =>
  (shoot) => {
    const spot = shoot.spots[spotId];
    if (spot !== undefined) delete spot.skyline[pointId];
  };

export const setTerrain =
  (spotId: string, terrain: Readonly<TerrainOfSpot>): Edit<Shoot> =>
  (shoot) => {
    const spot = shoot.spots[spotId];
    if (spot !== undefined) spot.terrain = { ...terrain, altitudesDeg: [...terrain.altitudesDeg] };
  };

export const clearTerrain =
  (spotId: string): Edit<Shoot> =>
  (shoot) => {
    const spot = shoot.spots[spotId];
    if (spot !== undefined) spot.terrain = null;
  };

/** How a new trace stands to the one that was. */
export type TraceWay = 'replace' | 'add';

export type NewTrace = {
  readonly way: TraceWay;
  /** Each with rising azimuths; beside them the trace stays what it was, or flat at 0. */
  readonly runs: readonly Skyline[];
  /** New points are called by it, with a number. */
  readonly idStem: string;
  readonly origin: string;
  /** Civil date in the spot's zone. */
  readonly dated: string;
};

/** Runs traced on site or off a picture, as the trace or laid into it. */
export const traceRuns =
  (spotId: string, trace: NewTrace): Edit<Shoot> =>
  (shoot) => {
    const spot = shoot.spots[spotId];
    if (spot === undefined) return;
    const before = trace.way === 'add' ? spot.skyline : {};
    const idOf = new Map(Object.entries(before).map(([id, point]) => [keyOf(point), id]));
    const points = withRuns(
      Object.values(before).map((point) => ({ ...point })),
      trace.runs,
    );
    put(
      spot,
      trace,
      points,
      (point, index) => idOf.get(keyOf(point)) ?? `${trace.idStem}-${index}`,
    );
  };

/** Points as they are, all of the trace or besides what is there. */
export const tracePoints =
  (spotId: string, trace: Omit<NewTrace, 'runs'> & { readonly points: Skyline }): Edit<Shoot> =>
  (shoot) => {
    const spot = shoot.spots[spotId];
    if (spot === undefined) return;
    const kept = trace.way === 'add' ? { ...spot.skyline } : {};
    put(spot, trace, trace.points, (_, index) => `${trace.idStem}-${index}`);
    spot.skyline = { ...kept, ...spot.skyline };
  };

export const clearTrace =
  (spotId: string): Edit<Shoot> =>
  (shoot) => {
    const spot = shoot.spots[spotId];
    if (spot !== undefined)
      Object.assign(spot, { skyline: {}, skylineOrigin: '', skylineDated: '' });
  };

const keyOf = ({ azimuthDeg, altitudeDeg }: Point): string => `${azimuthDeg} ${altitudeDeg}`;

function put(
  spot: Spot,
  { way, origin, dated }: Pick<NewTrace, 'way' | 'origin' | 'dated'>,
  points: Skyline,
  idFor: (point: Point, index: number) => string,
): void {
  const isAddition = way === 'add' && Object.keys(spot.skyline).length > 0;
  spot.skylineOrigin =
    isAddition && spot.skylineOrigin !== '' ? joined(spot.skylineOrigin, origin) : origin;
  spot.skylineDated = dated;
  spot.skyline = Object.fromEntries(
    points.map((point, index) => [idFor(point, index), { ...point }]),
  );
}

const MOST_ORIGIN_LENGTH = 1000;

const joined = (before: string, origin: string): string =>
  before.split('; ').includes(origin) ? before : `${before}; ${origin}`.slice(-MOST_ORIGIN_LENGTH);
