import type { GeoPoint } from '../place/geo-point.ts';
import { atanDeg } from '../units/angle.ts';
import { fail, ok, type Result } from '../units/result.ts';
import type { ElevationGrid } from './elevation-grid.ts';
import { groundRay } from './ground-ray.ts';
import { groundHeightM, placeGrids } from './placed-grid.ts';
import { rayOverGrids } from './ray-over-grids.ts';
import { horizonDistanceM, levelHorizonDeg } from './terrain-drop.ts';
import { standingEye, terrainFault } from './terrain-faults.ts';
import type { RaySight } from './walk-ray.ts';
import { mercatorShareY } from './web-mercator.ts';

export type TerrainQuestion = {
  readonly place: GeoPoint;
  /** Above what the camera stands on. */
  readonly eyeHeightM: number;
  readonly grids: readonly ElevationGrid[];
  /** How far out the terrain is looked at, 1 to 150 km; 40 km where left out. */
  readonly reachM?: number;
  /** 4 to 1024; 32 where left out, 11,520 rays round the horizon. */
  readonly raysPerDegree?: number;
  /** The height the data have at the place, unless the elevation that the place states is asked for. */
  readonly standsOn?: 'data' | 'stated-elevation';
};

export type TerrainSkyline = {
  /** Highest apparent altitude of the sector from i − 0.5° to i + 0.5°, i = 0 … 359 clockwise from true north. */
  readonly altitudesDeg: readonly number[];
  /** How far away what is highest stands. */
  readonly ridgeDistanceKm: readonly number[];
  /** Of the ground at the place, by the data. */
  readonly groundElevationM: number;
  /** By the place itself, or null. */
  readonly statedElevationM: number | null;
  readonly eyeElevationM: number;
  /** Share of the heights read that rest on a filled void. */
  readonly voidShare: number;
  /** Share of the rays' length that no data cover. */
  readonly uncoveredShare: number;
  /** How far out the data cover every direction, gaps under half a kilometre apart. */
  readonly coveredKm: number;
};

const SECTORS = 360;
export const DEFAULT_REACH_M = 40_000;
const DEFAULT_RAYS_PER_DEGREE = 32;

/**
 * Skyline of the terrain round a camera, from heights by line of sight over the curved earth with
 * refraction. The rays on a sector's edges belong to it, so a summit between two rays is missed by
 * at most 1/64° times the steepness of the skyline beside it. Nothing is lower than the sea's
 * horizon, all that is known beyond the data. Yields the share done after each degree.
 * [franklinRay1994] [torgeMueller2012]
 */
export function* terrainSkyline(
  question: TerrainQuestion,
): Generator<number, Result<TerrainSkyline, string>> {
  const { place, eyeHeightM, reachM = DEFAULT_REACH_M, standsOn = 'data' } = question;
  const raysPerDegree = question.raysPerDegree ?? DEFAULT_RAYS_PER_DEGREE;
  const fault = terrainFault({ ...question, reachM, raysPerDegree });
  if (fault !== null) return fail(fault);

  const placedGrids = placeGrids(question.grids, place, reachM);
  const groundElevationM = groundHeightM(placedGrids, place);
  const standing = standingEye({ place, groundElevationM, eyeHeightM, standsOn });
  if (!standing.ok) return standing;
  const { groundM, eyeM } = standing.value;

  const passes = groundRay(place);
  const distancesM = knotDistancesM(reachM);
  const latitudesDeg = new Float64Array(distancesM.length);
  const longitudesDeg = new Float64Array(distancesM.length);
  const mercatorY = new Float64Array(distancesM.length);
  const needsMercator = placedGrids.some(({ isMercator }) => isMercator);

  const rayCount = SECTORS * raysPerDegree;
  const tangents = new Float64Array(rayCount);
  const ridgesM = new Float64Array(rayCount);
  const sight: RaySight = { tangent: 0, distanceM: 0, read: 0, readFilled: 0 };
  let uncoveredM = 0;
  let coveredM = reachM;
  for (let ray = 0; ray < rayCount; ray += 1) {
    passes(ray / raysPerDegree - 0.5, distancesM, latitudesDeg, longitudesDeg);
    if (needsMercator)
      for (let knot = 0; knot < mercatorY.length; knot += 1)
        mercatorY[knot] = mercatorShareY(latitudesDeg[knot] ?? 0);
    sight.tangent = -Infinity;
    const knots = { distancesM, latitudesDeg, longitudesDeg, mercatorY };
    const coverage = rayOverGrids(placedGrids, knots, eyeM, sight);
    tangents[ray] = sight.tangent;
    ridgesM[ray] = sight.distanceM;
    uncoveredM += coverage.uncoveredM;
    coveredM = Math.min(coveredM, coverage.coveredM);
    if ((ray + 1) % raysPerDegree === 0) yield (ray + 1) / rayCount;
  }

  return ok({
    ...highestOfSectors({ tangents, ridgesM, raysPerDegree }, Math.max(eyeM, eyeM - groundM)),
    groundElevationM: groundM,
    statedElevationM: place.elevationM ?? null,
    eyeElevationM: eyeM,
    voidShare: sight.read === 0 ? 0 : sight.readFilled / sight.read,
    uncoveredShare: uncoveredM / (rayCount * reachM),
    coveredKm: coveredM / 1000,
  });
}

/** Between two knots a ray is straight in latitude and longitude: near ones close, then one each kilometre. */
function knotDistancesM(reachM: number): Float64Array {
  const distancesM = [0, 50];
  for (let last = 50; last < reachM;) {
    last = Math.min(reachM, last * 1.5, last + 1000);
    distancesM.push(last);
  }
  return Float64Array.from(distancesM);
}

function highestOfSectors(
  rays: {
    readonly tangents: Float64Array;
    readonly ridgesM: Float64Array;
    readonly raysPerDegree: number;
  },
  aboveSeaM: number,
): Pick<TerrainSkyline, 'altitudesDeg' | 'ridgeDistanceKm'> {
  const { tangents, ridgesM, raysPerDegree } = rays;
  const seaDeg = levelHorizonDeg(aboveSeaM);
  const altitudesDeg: number[] = [];
  const ridgeDistanceKm: number[] = [];
  for (let sector = 0; sector < SECTORS; sector += 1) {
    let highest = sector * raysPerDegree;
    for (let at = 1; at <= raysPerDegree; at += 1) {
      const ray = (sector * raysPerDegree + at) % tangents.length;
      if ((tangents[ray] ?? 0) > (tangents[highest] ?? 0)) highest = ray;
    }
    const altitudeDeg = atanDeg(tangents[highest] ?? 0);
    const isLand = altitudeDeg >= seaDeg;
    altitudesDeg.push(isLand ? altitudeDeg : seaDeg);
    ridgeDistanceKm.push((isLand ? (ridgesM[highest] ?? 0) : horizonDistanceM(aboveSeaM)) / 1000);
  }
  return { altitudesDeg, ridgeDistanceKm };
}
