import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { geojson } from '../../../src/exchange/waypoints/geojson.ts';
import type { WaypointReading } from '../../../src/exchange/waypoints/waypoint-format.ts';
import { expectSameWaypoints } from '../../support/expect-same-waypoints.ts';
import { waypointsArbitrary } from '../../support/waypoint-arbitrary.ts';

const reading = (value: unknown): WaypointReading => {
  const read = geojson.readText(JSON.stringify(value));
  if (!read.ok) throw new Error(read.problem);
  return read.value;
};

const refusal = (text: string): string => {
  const read = geojson.readText(text);
  if (read.ok) throw new Error('read');
  return read.problem;
};

const at = (coordinates: unknown, properties: object | null = null): object => ({
  type: 'Feature',
  geometry: { type: 'Point', coordinates },
  properties,
});

/** The example of RFC 7946, section 1.5. */
const RFC_EXAMPLE = {
  type: 'FeatureCollection',
  features: [
    {
      type: 'Feature',
      geometry: { type: 'Point', coordinates: [102.0, 0.5] },
      properties: { prop0: 'value0' },
    },
    {
      type: 'Feature',
      geometry: {
        type: 'LineString',
        coordinates: [
          [102.0, 0.0],
          [103.0, 1.0],
          [104.0, 0.0],
          [105.0, 1.0],
        ],
      },
      properties: { prop0: 'value0', prop1: 0.0 },
    },
    {
      type: 'Feature',
      geometry: {
        type: 'Polygon',
        coordinates: [
          [
            [100.0, 0.0],
            [101.0, 0.0],
            [101.0, 1.0],
            [100.0, 1.0],
            [100.0, 0.0],
          ],
        ],
      },
      properties: { prop0: 'value0', prop1: { this: 'that' } },
    },
  ],
};

test('the example of RFC 7946: its point is taken, its line and polygon are skipped and said', () => {
  const read = reading(RFC_EXAMPLE);
  expect(
    read.waypoints.map(({ latitudeDeg, longitudeDeg }) => [latitudeDeg, longitudeDeg]),
  ).toEqual([[0.5, 102]]);
  expect(read.skipped).toEqual([
    { what: 'feature 2', why: 'Found a LineString; expected a Point.' },
    { what: 'feature 3', why: 'Found a Polygon; expected a Point.' },
  ]);
});

describe('other shapes of the standard', () => {
  test.each([
    ['a lone geometry', { type: 'Point', coordinates: [13, 45] }, 1],
    ['a lone feature', at([13, 45]), 1],
    [
      'several points in one',
      {
        type: 'MultiPoint',
        coordinates: [
          [13, 45],
          [14, 46],
        ],
      },
      2,
    ],
    [
      'a collection of geometries',
      { type: 'GeometryCollection', geometries: [{ type: 'Point', coordinates: [13, 45] }] },
      1,
    ],
  ])('%s', (_, value, count) => {
    expect(reading(value).waypoints.length).toBe(count);
  });

  test('a third coordinate is taken for the height, with a warning; a property goes before it', () => {
    const read = reading(at([13, 45, 120]));
    expect(read.waypoints[0]?.elevationM).toBe(120);
    expect(read.notes[0]).toMatch(/from the ellipsoid.*Check the elevations/);
    const stated = reading(at([13, 45, 120], { ele: 75 }));
    expect([stated.waypoints[0]?.elevationM, stated.notes]).toEqual([75, []]);
  });

  test('usual names of properties are understood, markup comes in as text', () => {
    expect(
      reading(
        at([13, 45], {
          Title: 'Pier <b>head</b>',
          description: '<p>Gate</p><script>alert(1)</script>',
          heading: 90,
          time: '2027-05-01T00:00:00Z',
        }),
      ).waypoints[0],
    ).toMatchObject({ name: 'Pier head', note: 'Gate', bearingDeg: 90, takenAtMs: 1809129600000 });
  });
});

describe('what is wrong is said', () => {
  test.each([
    ['{"type":"FeatureCollection","features":[', /cut short/],
    ['{"type": Feature}', /no JSON from character 10 on/],
    ['[1,2]', /Expected GeoJSON with a “type”/],
    ['{"type":"Topology"}', /Expected GeoJSON with a “type”/],
    ['{"type":"FeatureCollection","features":[]}', /found none in the GeoJSON file\.$/],
    ['{"type":"FeatureCollection","features":5}', /found none/],
    ['{"type":"Feature","geometry":null,"properties":null}', /feature 1: Found no geometry/],
    [
      '{"type":"Point","coordinates":[401000,5055000]}',
      /looks like metres of a map projection; expected degrees/,
    ],
    [
      '{"type":"FeatureCollection","crs":{"type":"name","properties":{"name":"urn:ogc:def:crs:EPSG::3857"}},"features":[]}',
      /coordinates of “urn:ogc:def:crs:EPSG::3857”; expected degrees of WGS 84/,
    ],
    ['{"type":"Point","coordinates":[181,45]}', /longitude of 181°; expected −180° to 180°/],
    ['{"type":"Point","coordinates":["NaN",45]}', /“NaN” as longitude/],
    ['{"type":"Point","coordinates":[13]}', /Found no latitude/],
    ['{"type":"Point","coordinates":{"0":13,"1":45}}', /Found no latitude/],
  ])('%s', (text, words) => {
    expect(refusal(text)).toMatch(words);
  });

  test('nesting without end is refused, not followed', () => {
    const deep = '{"type":"GeometryCollection","geometries":['.repeat(3000) + ']}'.repeat(3000);
    expect(refusal(deep)).toMatch(/a collection within a collection/);
  });
});

test('whatever is written is read back the same, and the text is what the standard asks for', () => {
  fc.assert(
    fc.property(waypointsArbitrary, (waypoints) => {
      const text = geojson.write('Shoot', waypoints);
      expectSameWaypoints(reading(JSON.parse(text)).waypoints, waypoints);
      const collection = JSON.parse(text) as typeof RFC_EXAMPLE;
      expect(Object.keys(collection)).toEqual(['type', 'features']);
      for (const feature of collection.features) {
        expect(Object.keys(feature)).toEqual(['type', 'geometry', 'properties']);
        expect(feature.geometry.coordinates.length).toBe(2);
      }
    }),
  );
});
