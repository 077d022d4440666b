import type { GeoPoint } from '../place/geo-point.ts';
import { fail, ok, type Result } from '../units/result.ts';
import type { ElevationGrid } from './elevation-grid.ts';

const KM_PER_DEGREE = 111.2;
/** Rays are not followed nearer to a pole than this: meridians bunch up there. */
const NEAREST_TO_POLE_KM = 55;

/** What is wrong with a question about terrain, as a sentence, or null. */
export function terrainFault({
  place,
  eyeHeightM,
  grids,
  reachM,
  raysPerDegree,
}: {
  readonly place: GeoPoint;
  readonly eyeHeightM: number;
  readonly grids: readonly ElevationGrid[];
  readonly reachM: number;
  readonly raysPerDegree: number;
}): string | null {
  const { latitudeDeg, longitudeDeg } = place;
  if (!(Math.abs(latitudeDeg) <= 90) || !(Math.abs(longitudeDeg) <= 180))
    return `Expected a place between 90° S and 90° N, 180° W and 180° E, found ${latitudeDeg}, ${longitudeDeg}.`;
  if (!(eyeHeightM >= 0 && eyeHeightM <= 9000))
    return `Expected a camera 0 to 9000 m above the ground, found ${eyeHeightM}.`;
  if (!(reachM >= 1000 && reachM <= 150_000))
    return `Expected to look 1 to 150 km far, found ${reachM / 1000}.`;
  if (!(Number.isInteger(raysPerDegree) && raysPerDegree >= 4 && raysPerDegree <= 1024))
    return `Expected 4 to 1024 rays a degree, found ${raysPerDegree}.`;
  const toPoleKm = (90 - Math.abs(latitudeDeg)) * KM_PER_DEGREE;
  if (toPoleKm < reachM / 1000 + NEAREST_TO_POLE_KM)
    return `The spot lies ${Math.round(toPoleKm)} km from the pole; terrain is worked out from ${Math.ceil(reachM / 1000 + NEAREST_TO_POLE_KM)} km away from it.`;
  if (grids.length === 0) return 'No elevation data were given.';
  return null;
}

/** Where the eye stands: on the data's ground, or on the elevation the place states, as asked. */
export function standingEye({
  place,
  groundElevationM,
  eyeHeightM,
  standsOn,
}: {
  readonly place: GeoPoint;
  readonly groundElevationM: number | null;
  readonly eyeHeightM: number;
  readonly standsOn: 'data' | 'stated-elevation';
}): Result<{ readonly groundM: number; readonly eyeM: number }, string> {
  if (groundElevationM === null)
    return fail(
      `The elevation data do not cover the spot at ${place.latitudeDeg.toFixed(4)}, ${place.longitudeDeg.toFixed(4)}.`,
    );
  if (standsOn === 'data')
    return ok({ groundM: groundElevationM, eyeM: groundElevationM + eyeHeightM });
  if (place.elevationM === undefined) return fail('The spot states no elevation to stand on.');
  const eyeM = place.elevationM + eyeHeightM;
  return eyeM > groundElevationM
    ? ok({ groundM: groundElevationM, eyeM })
    : fail(
        `At the spot’s ${Math.round(place.elevationM)} m the camera would be under the ground, which the data have at ${Math.round(groundElevationM)} m.`,
      );
}
