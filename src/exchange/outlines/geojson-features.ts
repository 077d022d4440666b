import { fail, ok, type Result } from '../../core/units/result.ts';
import { isFields } from '../file-part.ts';
import { jsonBreak } from '../json-break.ts';

type Fields = Readonly<Record<string, unknown>>;

export type RawFeature = { readonly properties: Fields; readonly geometry: unknown };

/** Of the text, before anything of it is looked at. */
export const MOST_CHARACTERS = 40e6;

/** The features of a GeoJSON text, as RFC 7946 has them, or a sentence that says what is wrong with it. */
export function geoJsonFeatures(text: string): Result<readonly RawFeature[], string> {
  if (text.length > MOST_CHARACTERS)
    return fail(
      `The file is too large: found ${Math.ceil(text.length / 1e5) / 10} MB, expected at most ${MOST_CHARACTERS / 1e6} MB. Choose a smaller area.`,
    );
  const plain = text.replace(/^\uFEFF/, '');
  if (plain.trim() === '') return fail('Expected outlines as GeoJSON, found an empty file.');
  if (/^\s*</.test(plain))
    return fail('Expected outlines as GeoJSON, found markup, such as a web page or an XML file.');
  const parsed = parsedJson(plain);
  if (!parsed.ok) return parsed;
  const { value } = parsed;
  const type = isFields(value) ? value['type'] : null;
  if (!isFields(value) || typeof type !== 'string')
    return fail('Expected GeoJSON with a “type” such as FeatureCollection, found other JSON.');
  const system = foreignSystem(value);
  if (system !== null)
    return fail(
      `The coordinates are said to be in “${system}”; expected degrees of WGS 84. Export the outlines in EPSG:4326.`,
    );
  if (type === 'FeatureCollection')
    return Array.isArray(value['features'])
      ? ok(value['features'].flatMap(featuresIn))
      : fail('Expected a FeatureCollection with a list of features, found none in it.');
  if (type === 'Feature') return ok(featuresIn(value));
  return GEOMETRY_TYPES.has(type)
    ? ok([{ properties: {}, geometry: value }])
    : fail(`Expected GeoJSON, found JSON of the type “${type.slice(0, 40)}”.`);
}

const GEOMETRY_TYPES: ReadonlySet<string> = new Set([
  'Point',
  'MultiPoint',
  'LineString',
  'MultiLineString',
  'Polygon',
  'MultiPolygon',
  'GeometryCollection',
]);

const featuresIn = (feature: unknown): readonly RawFeature[] => [
  isFields(feature)
    ? {
        properties: isFields(feature['properties']) ? feature['properties'] : {},
        geometry: feature['geometry'],
      }
    : { properties: {}, geometry: null },
];

function parsedJson(text: string): Result<unknown, string> {
  try {
    return ok(JSON.parse(text));
  } catch {
    const at = jsonBreak(text);
    if (at === null || at.atEnd)
      return fail(
        'The file was cut short: it ends before the GeoJSON is complete. Fetch or export it again.',
      );
    const lines = text.slice(0, at.index).split('\n');
    return fail(
      `Expected GeoJSON, found a file that is no JSON: it cannot be read on from line ${lines.length}, column ${(lines.at(-1)?.length ?? 0) + 1}.`,
    );
  }
}

/** The coordinate system that files older than RFC 7946 may name, when it is not WGS 84. */
function foreignSystem({ crs }: Fields): string | null {
  if (crs === undefined || crs === null) return null;
  const properties = isFields(crs) ? crs['properties'] : null;
  const { name, href, code } = isFields(properties) ? properties : {};
  const named = [name, href, code].find(
    (part) => typeof part === 'string' || typeof part === 'number',
  );
  if (named === undefined) return null;
  return /(?:CRS:?84|WGS ?84|EPSG:{1,2}(?:4326|4979)|^4326)$/i.test(String(named).trim())
    ? null
    : String(named).slice(0, 60);
}
