import type { GeoPoint } from '../core/place/geo-point.ts';
import { groundPerPixelM, TILE_PX, type TileNumber } from '../core/skyline/web-mercator.ts';
import { fail, ok, type Result } from '../core/units/result.ts';
import {
  requestTile,
  type ElevationFailure,
  type ElevationTile,
  type Fetch,
} from './elevation-tile-request.ts';
import { elevationTiles } from './elevation-tiles.ts';

/** What a request would send, known before anything is sent. */
export type ElevationRequest = {
  readonly host: string;
  readonly tileCount: number;
  /** At the most: heights of 256 × 256 pixels without any packing. */
  readonly upToKb: number;
  /** How closely the tile numbers tell where the spot is. */
  readonly withinKm: number;
  readonly sentence: string;
};

/** Heights from the network. Nothing is sent before `tilesAround` is called. */
export type ElevationService = {
  readonly describe: (place: GeoPoint) => Result<ElevationRequest, ElevationFailure>;
  readonly tilesAround: (
    place: GeoPoint,
    hooks?: { readonly onProgress?: (share: number) => void; readonly signal?: AbortSignal },
  ) => Promise<Result<readonly ElevationTile[], ElevationFailure>>;
};

export type ElevationLimits = {
  readonly tileMs: number;
  readonly wholeMs: number;
  readonly atOnce: number;
};

const LIMITS: ElevationLimits = { tileMs: 15_000, wholeMs: 90_000, atOnce: 6 };
const TILE_KB = (TILE_PX * TILE_PX * 3) / 1000;
const ONCE_MORE: readonly ElevationFailure['kind'][] = ['slow', 'unreachable', 'refused'];

/** `template` is the address of a tile with {z}, {x} and {y} in it. */
export function elevationService({
  template,
  fetch,
  limits = LIMITS,
}: {
  readonly template: string;
  readonly fetch: Fetch;
  readonly limits?: ElevationLimits;
}): ElevationService {
  const plan = (place: GeoPoint): Result<readonly TileNumber[], ElevationFailure> => {
    const fault = templateFault(template);
    if (fault !== null) return fail({ kind: 'bad-address', sentence: fault });
    const tiles = elevationTiles(place);
    return tiles.length > 0
      ? ok(tiles)
      : fail({
          kind: 'not-found',
          sentence: `Expected a spot between 85° S and 85° N, where there are height tiles, found ${place.latitudeDeg.toFixed(2)}°.`,
        });
  };

  return {
    describe: (place) => {
      const tiles = plan(place);
      return tiles.ok ? ok(described(place, tiles.value, addressOf(template, ORIGIN))) : tiles;
    },
    tilesAround: async (place, { onProgress = () => undefined, signal } = {}) => {
      const tiles = plan(place);
      if (!tiles.ok) return tiles;
      if (signal?.aborted === true) return CANCELLED;
      return fetchAll({ tiles: tiles.value, template, fetch, limits, onProgress, signal });
    },
  };
}

const CANCELLED = fail<ElevationFailure>({ kind: 'cancelled', sentence: 'Cancelled.' });
const ORIGIN: TileNumber = { zoom: 0, x: 0, y: 0 };

const NO_ADDRESS = { protocol: '', hostname: '' };
const ON_THIS_DEVICE = ['127.0.0.1', 'localhost'];

const addressOf = (template: string, { zoom, x, y }: TileNumber): string =>
  template.replaceAll('{z}', `${zoom}`).replaceAll('{x}', `${x}`).replaceAll('{y}', `${y}`);

function templateFault(template: string): string | null {
  const expected = 'Expected the address of height tiles with {z}, {x} and {y} in it';
  if (!['{z}', '{x}', '{y}'].every((part) => template.includes(part)))
    return `${expected}, found ${template === '' ? 'none' : template}.`;
  const address = addressOf(template, ORIGIN);
  const { protocol, hostname } = URL.canParse(address) ? new URL(address) : NO_ADDRESS;
  const isKept =
    protocol === 'https:' || (protocol === 'http:' && ON_THIS_DEVICE.includes(hostname));
  if (!isKept) return `${expected}, beginning with https://, found ${template}.`;
  return null;
}

function described(
  place: GeoPoint,
  tiles: readonly TileNumber[],
  address: string,
): ElevationRequest {
  const { host } = new URL(address);
  const upToKb = Math.ceil(tiles.length * TILE_KB);
  const zoom = Math.max(...tiles.map((tile) => tile.zoom));
  const withinKm = Math.ceil((groundPerPixelM(place.latitudeDeg, zoom) * TILE_PX) / 1000);
  return {
    host,
    tileCount: tiles.length,
    upToKb,
    withinKm,
    sentence: `${tiles.length} height tiles, at most ${Math.ceil(upToKb / 1000)} MB, are asked of ${host}. Their numbers tell it, to within about ${withinKm} km, which spot is looked at; nothing else of the shoot is sent.`,
  };
}

async function fetchAll({
  tiles,
  template,
  fetch,
  limits,
  onProgress,
  signal,
}: {
  readonly tiles: readonly TileNumber[];
  readonly template: string;
  readonly fetch: Fetch;
  readonly limits: ElevationLimits;
  readonly onProgress: (share: number) => void;
  readonly signal: AbortSignal | undefined;
}): Promise<Result<readonly ElevationTile[], ElevationFailure>> {
  const stopped = new AbortController();
  const all = AbortSignal.any([
    stopped.signal,
    AbortSignal.timeout(limits.wholeMs),
    ...(signal === undefined ? [] : [signal]),
  ]);
  const waiting = [...tiles];
  const fetched: ElevationTile[] = [];
  const failures: ElevationFailure[] = [];
  const ask = (tile: TileNumber): Promise<Result<ElevationTile, ElevationFailure>> =>
    requestTile({
      tile,
      address: addressOf(template, tile),
      fetch,
      signal: AbortSignal.any([all, AbortSignal.timeout(limits.tileMs)]),
    });
  const askInTurn = async (): Promise<void> => {
    for (let tile = waiting.shift(); tile !== undefined; tile = waiting.shift()) {
      let answer = await ask(tile);
      if (!answer.ok && ONCE_MORE.includes(answer.problem.kind) && !all.aborted)
        answer = await ask(tile);
      if (all.aborted && !answer.ok && failures.length > 0) return;
      if (!answer.ok) {
        failures.push(answer.problem);
        return stopped.abort();
      }
      fetched.push(answer.value);
      onProgress(fetched.length / tiles.length);
    }
  };
  await Promise.all(Array.from({ length: limits.atOnce }, askInTurn));
  if (signal?.aborted === true) return CANCELLED;
  const [failure] = failures;
  return failure === undefined ? ok(fetched) : fail(failure);
}
