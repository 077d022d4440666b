import type { GeoPoint } from '../../core/place/geo-point.ts';
import type { Result } from '../../core/units/result.ts';
import { elevationService, type ElevationRequest } from '../../services/elevation.ts';
import type { ElevationTile } from '../../services/elevation-tile-request.ts';

export type { ElevationTile };

const serviceAt = (template: string): ReturnType<typeof elevationService> =>
  elevationService({ template, fetch: (address, init) => fetch(address, init) });

/** What asking a server for the terrain round a place would send; nothing is sent. */
export function elevationRequest(
  template: string,
  place: GeoPoint,
): Result<ElevationRequest, string> {
  const described = serviceAt(template).describe(place);
  return described.ok ? described : { ok: false, problem: described.problem.sentence };
}

/** The tiles round a place, or a sentence why they are not to be had. */
export async function fetchElevation(asked: {
  readonly template: string;
  readonly place: GeoPoint;
  readonly onProgress: (share: number) => void;
  readonly signal: AbortSignal;
}): Promise<Result<readonly ElevationTile[], string>> {
  const { template, place, onProgress, signal } = asked;
  const fetched = await serviceAt(template).tilesAround(place, { onProgress, signal });
  return fetched.ok ? fetched : { ok: false, problem: fetched.problem.sentence };
}
