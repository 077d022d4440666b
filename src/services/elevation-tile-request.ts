import type { TileNumber } from '../core/skyline/web-mercator.ts';
import { fail, ok, type Result } from '../core/units/result.ts';
import { isPngEnded, pngSize } from './png-size.ts';

/** What is used of `fetch`. */
export type Fetch = (address: string, init: RequestInit) => Promise<Response>;

export type ElevationTile = TileNumber & {
  /** A PNG file whose pixels are heights. */
  readonly png: ArrayBuffer;
};

export type ElevationFailure = {
  readonly kind:
    | 'cancelled'
    | 'bad-address'
    | 'slow'
    | 'unreachable'
    | 'not-found'
    | 'refused'
    | 'wrong-content';
  /** What was found and what was expected, for the user, plain text. */
  readonly sentence: string;
};

const MAX_TILE_BYTES = 2e6;
const SIDES_PX = [256, 512];

/** One tile, whole and of the right shape, or what was wrong with it. The signal also ends a wait. */
export async function requestTile({
  tile,
  address,
  fetch,
  signal,
}: {
  readonly tile: TileNumber;
  readonly address: string;
  readonly fetch: Fetch;
  readonly signal: AbortSignal;
}): Promise<Result<ElevationTile, ElevationFailure>> {
  const { host } = new URL(address);
  try {
    const response = await fetch(address, {
      signal,
      credentials: 'omit',
      referrerPolicy: 'no-referrer',
    });
    if (!response.ok) {
      await response.body?.cancel();
      return statusFailure(host, response.status, tile);
    }
    const bytes = await bodyWithin(response, MAX_TILE_BYTES);
    if (bytes === null)
      return wrongContent(host, `an answer of more than ${MAX_TILE_BYTES / 1e6} MB`);
    const fault = contentFault(bytes, response.headers.get('content-type') ?? '');
    return fault === null ? ok({ ...tile, png: bytes.buffer }) : wrongContent(host, fault);
  } catch {
    return signal.aborted
      ? failure('slow', `${host} did not answer in time.`)
      : failure('unreachable', `${host} could not be reached. Is there a network?`);
  }
}

const failure = (
  kind: ElevationFailure['kind'],
  sentence: string,
): Result<never, ElevationFailure> => fail({ kind, sentence });

const wrongContent = (host: string, found: string): Result<never, ElevationFailure> =>
  failure(
    'wrong-content',
    `${host}: expected a height tile, a PNG of 256 or 512 pixels a side in 8-bit colour, found ${found}.`,
  );

const statusFailure = (
  host: string,
  status: number,
  { zoom, x, y }: TileNumber,
): Result<never, ElevationFailure> =>
  status === 404 || status === 410
    ? failure(
        'not-found',
        `${host} has no height tile ${zoom}/${x}/${y} (status ${status}). Is the address right?`,
      )
    : failure('refused', `${host} refused the height tile ${zoom}/${x}/${y} (status ${status}).`);

function contentFault(bytes: Uint8Array<ArrayBuffer>, contentType: string): string | null {
  const png = pngSize(bytes);
  if (png === null)
    return /html/i.test(contentType)
      ? 'a web page'
      : `something else (${contentType.split(';')[0]?.slice(0, 60) || 'of no stated type'})`;
  if (png.widthPx !== png.heightPx || !SIDES_PX.includes(png.widthPx))
    return `${png.widthPx} × ${png.heightPx} pixels`;
  if (!png.isColour) return 'a PNG of other colours';
  return isPngEnded(bytes) ? null : 'a PNG that was cut short';
}

async function bodyWithin(
  response: Response,
  limitBytes: number,
): Promise<Uint8Array<ArrayBuffer> | null> {
  const pieces: Uint8Array[] = [];
  let size = 0;
  const reader = response.body?.getReader();
  for (;;) {
    const piece = await reader?.read();
    if (piece === undefined || piece.done) break;
    size += piece.value.length;
    if (size > limitBytes) {
      await reader?.cancel();
      return null;
    }
    pieces.push(piece.value);
  }
  const whole = new Uint8Array(size);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
