import type { GeoPoint } from '../../core/place/geo-point.ts';
import { fail, ok, type Result } from '../../core/units/result.ts';
import type { OutlineReading } from '../../exchange/outlines/read-outlines-geojson.ts';
import { readOutlinesGeoJson } from '../../exchange/outlines/read-outlines-geojson.ts';
import { describeFootprintRequest, fetchFootprints } from '../../services/footprints.ts';

export type OutlinesRead = OutlineReading & {
  /** Where they come from, to be kept with them. */
  readonly origin: string;
};

/** Larger files hold more outlines than are taken in. */
const MOST_BYTES = 60e6;

/** Outlines of a GeoJSON file, or a sentence; nothing changes yet. */
export async function outlinesFromFile(file: File): Promise<Result<OutlinesRead, string>> {
  if (file.size > MOST_BYTES)
    return fail(
      `Found ${Math.ceil(file.size / 1e6)} MB, expected at most ${MOST_BYTES / 1e6} MB. Choose a smaller area.`,
    );
  const text = await file.text().catch(() => null);
  if (text === null)
    return fail('It could not be opened. It may have been moved or locked since it was chosen.');
  const read = readOutlinesGeoJson(text);
  return read.ok ? ok({ ...read.value, origin: file.name }) : read;
}

type FootprintsAsked = {
  readonly address: string;
  readonly place: GeoPoint;
  /** Half the side of a square round the place. */
  readonly halfSideM: number;
};

/** What asking would send and to whom; nothing is sent. */
export const footprintsSent = ({ address, place, halfSideM }: FootprintsAsked): string =>
  describeFootprintRequest({ endpoint: address, area: { place, halfSideM } });

/** Outlines round a place from the network, or a sentence; nothing changes yet. */
export async function outlinesFromNetwork(
  asked: FootprintsAsked & { readonly signal: AbortSignal },
): Promise<Result<OutlinesRead, string>> {
  const { address, place, halfSideM, signal } = asked;
  const fetched = await fetchFootprints((url, request) => fetch(url, request), {
    endpoint: address,
    area: { place, halfSideM },
    signal,
  });
  if (!fetched.ok) return fail(fetched.problem.sentence);
  const { geoJson, dated, notice, notes } = fetched.value;
  const read = readOutlinesGeoJson(geoJson);
  if (!read.ok) return read;
  return ok({
    ...read.value,
    notes: [
      ...notes,
      ...read.value.notes,
      ...(notice === '' ? [] : [`The server says: ${notice}`]),
    ],
    origin: [
      `open map database, ${new URL(address).host}`,
      ...(dated === '' ? [] : [`as of ${dated}`]),
      ...(notice === '' ? [] : [notice]),
    ].join('; '),
  });
}
