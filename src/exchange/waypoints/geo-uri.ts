import type { Waypoint } from '../../core/plan/waypoint.ts';
import { fail, ok, type Result } from '../../core/units/result.ts';
import { checkedPosition } from './checked-position.ts';
import { angleText, decimalText } from './decimal-text.ts';

export type GeoUri = {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  /** Above the geoid, as RFC 5870 counts it. */
  readonly elevationM: number | null;
  readonly uncertaintyM: number | null;
  /** From the query that phones add, which the standard does not know. */
  readonly name: string | null;
};

const NUMBER = String.raw`-?\d+(?:\.\d+)?`;
const GEO_URI = new RegExp(
  `^geo:(${NUMBER}),(${NUMBER})(?:,(${NUMBER}))?((?:;[\\w-]+(?:=[^;?\\s]+)?)*)(?:\\?(.*))?$`,
  'i',
);
/** What a phone sends for a place with a name: '?q=45.65,13.76(Pier)'. */
const QUERY = new RegExp(`(?:^|&)q=(${NUMBER}),(${NUMBER})(?:\\((.*)\\))?(?:&|$)`, 'i');

/** A place out of a geo: address of RFC 5870; any coordinate system but WGS 84 is refused. */
export function readGeoUri(text: string): Result<GeoUri, string> {
  const match = GEO_URI.exec(text.trim());
  if (match === null)
    return fail(
      `Found “${text.trim().slice(0, 60)}”; expected an address such as geo:45.6503,13.7571.`,
    );
  const [, first = '', second = '', third, parameters = '', query = ''] = match;
  const named = new Map(
    parameters
      .toLowerCase()
      .split(';')
      .map((parameter): [string, string] => {
        const [key = '', value = ''] = parameter.split('=');
        return [key, value];
      }),
  );
  const system = named.get('crs') ?? 'wgs84';
  if (system !== 'wgs84') return fail(`Found the coordinate system “${system}”; expected WGS 84.`);
  const asked = QUERY.exec(decodedQuery(query));
  const [latitude, longitude] = asked === null ? [first, second] : [asked[1] ?? '', asked[2] ?? ''];
  const position = checkedPosition(Number(latitude), Number(longitude), [latitude, longitude]);
  if (!position.ok) return position;
  if (asked === null && query !== '' && Number(first) === 0 && Number(second) === 0)
    return fail('Found an address that names a place by words only; expected its coordinates.');
  const uncertainty = Number(named.get('u') ?? Number.NaN);
  return ok({
    latitudeDeg: position.value.latitudeDeg,
    // All longitudes are one at a pole.
    longitudeDeg: Math.abs(position.value.latitudeDeg) === 90 ? 0 : position.value.longitudeDeg,
    elevationM: third === undefined ? null : Number(third),
    uncertaintyM: Number.isFinite(uncertainty) && uncertainty >= 0 ? uncertainty : null,
    name: asked?.[3] ?? null,
  });
}

const decodedQuery = (query: string): string => {
  try {
    return decodeURIComponent(query.replaceAll('+', ' '));
  } catch {
    return query;
  }
};

/** 'geo:45.6503,13.7571,3'. */
export const geoUri = ({
  latitudeDeg,
  longitudeDeg,
  elevationM,
}: Pick<Waypoint, 'latitudeDeg' | 'longitudeDeg' | 'elevationM'>): string =>
  `geo:${angleText(latitudeDeg)},${angleText(longitudeDeg)}${elevationM === null ? '' : `,${decimalText(elevationM, 2)}`}`;
