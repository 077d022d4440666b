import { fail, type Result } from '../core/units/result.ts';
import { footprintsFrom, type FootprintProblem, type Footprints } from './footprint-answer.ts';
import { footprintQuery, MOST_HALF_SIDE_M, type FootprintArea } from './footprint-query.ts';

export type FootprintLimits = { readonly timeMs: number; readonly bytes: number };

export const FOOTPRINT_LIMITS: FootprintLimits = { timeMs: 40_000, bytes: 30e6 };

export type FootprintRequest = {
  /** Of the query interface of an open map database. */
  readonly endpoint: string;
  readonly area: FootprintArea;
  readonly signal?: AbortSignal;
  readonly limits?: FootprintLimits;
};

type Fetch = (address: string, request: RequestInit) => Promise<Response>;

/** What a request tells and to whom, before it is made. */
export function describeFootprintRequest({
  endpoint,
  area,
}: Pick<FootprintRequest, 'endpoint' | 'area'>): string {
  const host = URL.canParse(endpoint) ? new URL(endpoint).host : 'the address given';
  const sideKm = (2 * area.halfSideM) / 1000;
  return `Sends one question to ${host}: the corners of a square of ${sideKm.toFixed(1)} × ${sideKm.toFixed(1)} km round the spot, to a metre. With it, as with every request, your network address. Nothing else of the shoot.`;
}

/**
 * Outlines of buildings, walls and trees round a place, asked of the query interface of an open map
 * database. One request, only when called; the address, the time and the size are the caller's.
 */
export async function fetchFootprints(
  ask: Fetch,
  { endpoint, area, signal, limits = FOOTPRINT_LIMITS }: FootprintRequest,
): Promise<Result<Footprints, FootprintProblem>> {
  const refusal = refusalOf(endpoint, area);
  if (refusal !== null) return fail(refusal);
  const isCancelled = (): boolean => signal?.aborted === true;
  if (isCancelled()) return fail(CANCELLED);
  const stop = new AbortController();
  const cancel = (): void => stop.abort();
  signal?.addEventListener('abort', cancel);
  let isLate = false;
  const timer = setTimeout(() => {
    isLate = true;
    stop.abort();
  }, limits.timeMs);
  try {
    const response = await ask(endpoint, {
      method: 'POST',
      headers: { 'Content-Type': 'application/x-www-form-urlencoded' },
      body: `data=${encodeURIComponent(footprintQuery(area))}`,
      signal: stop.signal,
      credentials: 'omit',
      referrerPolicy: 'no-referrer',
      cache: 'no-store',
    });
    const status = problemOfStatus(response.status);
    if (status !== null) return fail(status);
    const text = await textWithin(response, limits.bytes);
    return text === null
      ? fail({
          kind: 'too-large',
          sentence: `The answer is larger than ${limits.bytes / 1e6} MB. Choose a smaller area.`,
        })
      : footprintsFrom(text);
  } catch {
    if (isCancelled()) return fail(CANCELLED);
    return fail(
      isLate
        ? {
            kind: 'too-slow',
            sentence: `No whole answer came within ${Math.round(limits.timeMs / 1000)} s. Try again later, or choose a smaller area.`,
          }
        : {
            kind: 'unreachable',
            sentence:
              'The server could not be reached, or the connection broke off. Check the network and the address.',
          },
    );
  } finally {
    clearTimeout(timer);
    signal?.removeEventListener('abort', cancel);
    stop.abort();
  }
}

const CANCELLED: FootprintProblem = {
  kind: 'cancelled',
  sentence: 'Cancelled: nothing was changed.',
};

function refusalOf(endpoint: string, { place, halfSideM }: FootprintArea): FootprintProblem | null {
  const address = URL.canParse(endpoint) ? new URL(endpoint) : null;
  const isOnDevice = address?.hostname === '127.0.0.1' || address?.hostname === 'localhost';
  if (
    address === null ||
    !(address.protocol === 'https:' || (isOnDevice && address.protocol === 'http:'))
  )
    return {
      kind: 'bad-address',
      sentence: `Found ‘${endpoint.slice(0, 40)}’; expected the https address of a query interface.`,
    };
  if (!(halfSideM > 0 && halfSideM <= MOST_HALF_SIDE_M))
    return {
      kind: 'too-wide',
      sentence: `Found a square of ${(2 * halfSideM) / 1000} km; expected at most ${(2 * MOST_HALF_SIDE_M) / 1000} km, so that the server is not overloaded.`,
    };
  return Math.abs(place.latitudeDeg) <= 89
    ? null
    : { kind: 'too-wide', sentence: 'Within a degree of a pole there are no outlines to ask for.' };
}

function problemOfStatus(status: number): FootprintProblem | null {
  if (status === 200) return null;
  if (status === 429)
    return {
      kind: 'busy',
      sentence: 'The server has had enough questions from this network (429). Wait some minutes.',
    };
  if (status === 504 || status === 503)
    return {
      kind: 'busy',
      sentence: `The server is overloaded (${status}). Try again later, or choose a smaller area.`,
    };
  return {
    kind: 'refused',
    sentence: `The server answered with status ${status}; expected 200. Check the address.`,
  };
}

/** The body as text; null when it is larger than it may be. */
async function textWithin(response: Response, mostBytes: number): Promise<string | null> {
  const reader = response.body?.getReader();
  if (reader === undefined) return '';
  const decoder = new TextDecoder();
  let text = '';
  let bytes = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return text + decoder.decode();
    bytes += value.byteLength;
    if (bytes > mostBytes) return null;
    text += decoder.decode(value, { stream: true });
  }
}
