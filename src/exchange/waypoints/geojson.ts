import type { Feature, FeatureCollection, Point } from 'geojson';

import type { Waypoint } from '../../core/plan/waypoint.ts';
import { fail } from '../../core/units/result.ts';
import { isFields } from '../file-part.ts';
import { jsonBreak } from '../json-break.ts';
import { collectWaypoints, type WrittenWaypoint } from './collect-waypoints.ts';
import { angleText, decimalText } from './decimal-text.ts';
import type { ReadWaypoints, Skipped, WaypointFormat } from './waypoint-format.ts';

type Fields = Readonly<Record<string, unknown>>;

/** GeoJSON of RFC 7946: features, geometries and collections of them; what is no point is skipped and said. */
const readText = (text: string): ReadWaypoints => {
  const at = jsonBreak(text);
  if (at !== null)
    return fail(
      at.atEnd
        ? 'The GeoJSON file was cut short: it ends before it is complete.'
        : `The GeoJSON file is damaged: it is no JSON from character ${at.index + 1} on.`,
    );
  const value: unknown = JSON.parse(text);
  if (!isFields(value) || !isType(value['type']))
    return fail('Expected GeoJSON with a “type” such as FeatureCollection, found other JSON.');
  const foreign = foreignSystem(value);
  if (foreign !== null)
    return fail(
      `Found coordinates of “${foreign}”; expected degrees of WGS 84, as RFC 7946 has them.`,
    );
  const parts = featuresOf(value).map((feature, index) => partsOf(feature, `feature ${index + 1}`));
  const written = parts.flatMap((part) => part.written);
  return collectWaypoints({
    of: 'the GeoJSON file',
    written,
    skipped: parts.flatMap((part) => part.skipped),
    notes: parts.some(({ usedHeight }) => usedHeight)
      ? [
          'Heights stand in the coordinates, where the standard counts them from the ellipsoid: they can be up to 110 m off sea level. Check the elevations.',
        ]
      : [],
  });
};

const TYPES = [
  'FeatureCollection',
  'Feature',
  'GeometryCollection',
  'Point',
  'MultiPoint',
  'LineString',
  'MultiLineString',
  'Polygon',
  'MultiPolygon',
];

const isType = (type: unknown): boolean => typeof type === 'string' && TYPES.includes(type);

/** The name of a coordinate system other than WGS 84, which files older than the standard may carry. */
const foreignSystem = ({ crs }: Fields): string | null => {
  const properties = isFields(crs) ? crs['properties'] : null;
  const name = isFields(properties) ? properties['name'] : null;
  if (typeof name !== 'string') return null;
  return /(?:CRS84|EPSG:{1,2}(?:4326|4979))$/i.test(name.trim()) ? null : name.slice(0, 60);
};

const featuresOf = (value: Fields): readonly Fields[] => {
  if (value['type'] === 'FeatureCollection')
    return listOf(value['features']).map((feature) => (isFields(feature) ? feature : {}));
  return value['type'] === 'Feature' ? [value] : [{ type: 'Feature', geometry: value }];
};

type Parts = {
  readonly written: readonly WrittenWaypoint[];
  readonly skipped: readonly Skipped[];
  readonly usedHeight: boolean;
};

function partsOf(feature: Fields, place: string): Parts {
  const properties = isFields(feature['properties']) ? feature['properties'] : {};
  const property = propertyOf(properties);
  const name = property('name', 'title', 'label');
  const elevation = property('elevationM', 'elevation', 'ele', 'altitude', 'alt');
  const [positions, others] = positionsOf(feature['geometry']);
  const written = positions.map((position): WrittenWaypoint => {
    const [longitude, latitude, height] = listOf(position).map(asText);
    return {
      place,
      name,
      latitude: latitude ?? null,
      longitude: longitude ?? null,
      elevation: elevation ?? height ?? null,
      note: property('note', 'notes', 'description', 'desc', 'comment', 'cmt'),
      bearing: property('bearingDeg', 'bearing', 'heading', 'direction', 'azimuth'),
      time: property('time', 'timestamp', 'datetime', 'date'),
    };
  });
  return {
    written,
    skipped: others.map((found) => ({
      what: name?.slice(0, 120) ?? place,
      why: `Found ${found}; expected a Point.`,
    })),
    usedHeight: elevation === null && written.some((one) => one.elevation !== null),
  };
}

/** Positions of points, and what else was there. */
function positionsOf(
  geometry: unknown,
): readonly [positions: readonly unknown[], others: readonly string[]] {
  if (!isFields(geometry)) return [[], ['no geometry']];
  switch (geometry['type']) {
    case 'Point':
      return [[geometry['coordinates']], []];
    case 'MultiPoint':
      return [listOf(geometry['coordinates']), []];
    case 'GeometryCollection': {
      const parts = listOf(geometry['geometries']).map((part) =>
        isFields(part) && part['type'] === 'GeometryCollection'
          ? ([[], ['a collection within a collection']] as const)
          : positionsOf(part),
      );
      return [parts.flatMap(([positions]) => positions), parts.flatMap(([, others]) => others)];
    }
    default: {
      const type = geometry['type'];
      return [[], [isType(type) ? `a ${String(type)}` : 'a geometry without a known type']];
    }
  }
}

const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

/** A number or text as text. */
const asText = (value: unknown): string | null =>
  typeof value === 'number' || typeof value === 'string' ? String(value) : null;

/** The first property of these names that holds something, whatever its case. */
const propertyOf = (properties: Fields): ((...names: readonly string[]) => string | null) => {
  const byName = new Map(
    Object.entries(properties).map(([key, value]) => [key.toLowerCase(), asText(value)]),
  );
  return (...names) =>
    names.map((name) => byName.get(name.toLowerCase()) ?? '').find((text) => text !== '') ?? null;
};

/** Elevations go as a property: the standard's third coordinate counts from the ellipsoid, not from the sea. */
const write = (_title: string, waypoints: readonly Waypoint[]): string => {
  const collection: FeatureCollection<Point> = {
    type: 'FeatureCollection',
    features: waypoints.map(featureOf),
  };
  return `${JSON.stringify(collection, null, 2)}\n`;
};

const featureOf = (waypoint: Waypoint): Feature<Point> => ({
  type: 'Feature',
  geometry: {
    type: 'Point',
    coordinates: [
      Number(angleText(waypoint.longitudeDeg)),
      Number(angleText(waypoint.latitudeDeg)),
    ],
  },
  properties: {
    ...(waypoint.name === null ? {} : { name: waypoint.name }),
    ...(waypoint.note === '' ? {} : { description: waypoint.note }),
    ...(waypoint.elevationM === null
      ? {}
      : { elevationM: Number(decimalText(waypoint.elevationM, 2)) }),
    ...(waypoint.bearingDeg === null
      ? {}
      : { bearingDeg: Number(decimalText(waypoint.bearingDeg, 3)) }),
    ...(waypoint.takenAtMs === null ? {} : { time: new Date(waypoint.takenAtMs).toISOString() }),
  },
});

export const geojson = {
  id: 'geojson',
  label: 'GeoJSON',
  extensions: ['.geojson', '.json'],
  mediaType: 'application/geo+json',
  readText,
  write,
} as const satisfies WaypointFormat;
