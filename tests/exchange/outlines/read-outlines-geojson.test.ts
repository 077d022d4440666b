import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import type { Obstacle } from '../../../src/core/skyline/obstacle.ts';
import { outlinesOfSet } from '../../../src/exchange/outlines/outlines-of-set.ts';
import {
  readOutlinesGeoJson,
  type OutlineReading,
} from '../../../src/exchange/outlines/read-outlines-geojson.ts';

type Position = readonly number[];

const square = (west: number, south: number, side = 0.0002): readonly Position[] => [
  [west, south],
  [west + side, south],
  [west + side, south + side],
  [west, south + side],
  [west, south],
];

const feature = (properties: object, geometry: object): object => ({
  type: 'Feature',
  properties,
  geometry,
});
const polygon = (...rings: readonly (readonly Position[])[]): object => ({
  type: 'Polygon',
  coordinates: rings,
});
const line = (...coordinates: readonly Position[]): object => ({ type: 'LineString', coordinates });
const collection = (...features: readonly object[]): string =>
  JSON.stringify({ type: 'FeatureCollection', features });

const read = (text: string): OutlineReading => {
  const reading = readOutlinesGeoJson(text);
  if (!reading.ok) throw new Error(reading.problem);
  return reading.value;
};
const refused = (text: string): string => {
  const reading = readOutlinesGeoJson(text);
  return reading.ok ? 'read' : reading.problem;
};
const one = (properties: object, geometry: object = polygon(square(13.76, 45.65))): Obstacle => {
  const [outline] = read(collection(feature(properties, geometry))).outlines;
  if (outline === undefined) throw new Error('none');
  return outline.obstacle;
};

describe('the examples of RFC 7946', () => {
  test('the polygon with a hole of appendix A.3 is an outline with a courtyard', () => {
    // Coordinates as printed there.
    const text = `{ "type": "Polygon", "coordinates": [
      [[100.0, 0.0], [101.0, 0.0], [101.0, 1.0], [100.0, 1.0], [100.0, 0.0]],
      [[100.8, 0.8], [100.8, 0.2], [100.2, 0.2], [100.2, 0.8], [100.8, 0.8]] ] }`;
    const [outline] = read(text).outlines;
    expect(outline?.obstacle).toMatchObject({ kind: 'building', closed: true });
    expect(outline?.obstacle.outline).toEqual([
      [100, 0],
      [101, 0],
      [101, 1],
      [100, 1],
    ]);
    expect(outline?.obstacle.holes).toEqual([
      [
        [100.8, 0.8],
        [100.8, 0.2],
        [100.2, 0.2],
        [100.2, 0.8],
      ],
    ]);
  });

  test('of the feature collection of section 1.5 the point is skipped and said, the rest is read', () => {
    const text = `{ "type": "FeatureCollection", "features": [
      { "type": "Feature", "geometry": { "type": "Point", "coordinates": [102.0, 0.5] },
        "properties": { "prop0": "value0" } },
      { "type": "Feature", "geometry": { "type": "LineString", "coordinates":
        [[102.0, 0.0], [103.0, 1.0], [104.0, 0.0], [105.0, 1.0]] },
        "properties": { "prop0": "value0", "prop1": 0.0 } },
      { "type": "Feature", "geometry": { "type": "Polygon", "coordinates":
        [[[100.0, 0.0], [101.0, 0.0], [101.0, 1.0], [100.0, 1.0], [100.0, 0.0]]] },
        "properties": { "prop0": "value0", "prop1": { "this": "that" } } } ] }`;
    const reading = read(text);
    expect(reading.outlines.map(({ obstacle }) => obstacle.kind)).toEqual(['wall', 'building']);
    expect(reading.skipped).toEqual([{ count: 1, why: 'a point that is no tree' }]);
  });

  test('the MultiPolygon of appendix A.6 gives two outlines, the GeometryCollection of A.7 its line', () => {
    const multi = `{ "type": "MultiPolygon", "coordinates": [
      [[[102.0, 2.0], [103.0, 2.0], [103.0, 3.0], [102.0, 3.0], [102.0, 2.0]]],
      [[[100.0, 0.0], [101.0, 0.0], [101.0, 1.0], [100.0, 1.0], [100.0, 0.0]],
       [[100.2, 0.2], [100.2, 0.8], [100.8, 0.8], [100.8, 0.2], [100.2, 0.2]]] ] }`;
    expect(read(multi).outlines.map(({ obstacle }) => obstacle.holes?.length ?? 0)).toEqual([0, 1]);
    const mixed = `{ "type": "GeometryCollection", "geometries": [
      { "type": "Point", "coordinates": [100.0, 0.0] },
      { "type": "LineString", "coordinates": [[101.0, 0.0], [102.0, 1.0]] } ] }`;
    expect(read(mixed).outlines).toHaveLength(1);
  });

  test('the feature cut at the antimeridian of section 3.1.9 gives a wall on each side', () => {
    const text = `{ "type": "Feature", "properties": null, "geometry": { "type": "MultiLineString",
      "coordinates": [[[170.0, 45.0], [180.0, 45.0]], [[-180.0, 45.0], [-170.0, 45.0]]] } }`;
    expect(read(text).outlines.map(({ obstacle }) => obstacle.outline)).toEqual([
      [
        [170, 45],
        [180, 45],
      ],
      [
        [-180, 45],
        [-170, 45],
      ],
    ]);
  });
});

const passes = (tags: object): readonly number[] => {
  const { passesInLeaf, passesBare } = one(tags, line([13.76, 45.65], [13.77, 45.65]));
  return [passesInLeaf, passesBare];
};

describe('what a thing is and how tall, by the usual tags', () => {
  test.each([
    [{ building: 'yes', height: '12' }, 'building', 12],
    [{ building: 'yes', height: 7.5 }, 'building', 7.5],
    [{ building: 'yes', height: '12,5 m' }, 'building', 12.5],
    [{ building: 'yes', height: "40'" }, 'building', 12.19],
    [{ building: 'house', 'building:levels': '3' }, 'building', 9],
    [{ building: 'house', 'building:levels': 3, 'roof:levels': '1' }, 'building', 12],
    [{ building: 'house', 'building:levels': 2, 'roof:height': '2 m' }, 'building', 8],
    [{ building: 'house', height: '10', 'building:levels': '5' }, 'building', 10],
    [{ building: 'yes' }, 'building', 6],
    [{ 'building:part': 'yes', height: '30' }, 'building', 30],
    [{ man_made: 'tower', height: '45' }, 'building', 45],
    [{ natural: 'wood' }, 'trees', 15],
    [{ landuse: 'forest', height: '22' }, 'trees', 22],
    [{ barrier: 'hedge' }, 'trees', 1.5],
    [{ barrier: 'wall', area: 'yes', height: 3 }, 'building', 3],
    [{ barrier: 'wall' }, 'wall', 2],
    [{}, 'building', 6],
  ])('an area tagged %j: %s, %d m', (tags, kind, heightM) => {
    expect(one(tags)).toMatchObject({ kind, heightM, closed: true });
  });

  test.each([
    [{ barrier: 'wall', height: '2.4 m' }, 'wall', 2.4],
    [{ barrier: 'fence' }, 'wall', 1.5],
    [{ barrier: 'city_wall' }, 'wall', 2],
    [{ natural: 'tree_row' }, 'trees', 8],
    [{ barrier: 'hedge', height: '3' }, 'trees', 3],
  ])('a line tagged %j: %s, %d m', (tags, kind, heightM) => {
    const obstacle = one(tags, line([13.76, 45.65], [13.77, 45.65]));
    expect(obstacle).toMatchObject({ kind, heightM, closed: false });
  });

  test('a closed line is a house if tagged so, and open inside if it is a wall', () => {
    expect(one({ building: 'yes' }, line(...square(13.76, 45.65)))).toMatchObject({
      kind: 'building',
      closed: true,
    });
    expect(one({ barrier: 'wall' }, line(...square(13.76, 45.65)))).toMatchObject({
      kind: 'wall',
      closed: true,
    });
  });

  test('a part of a building that begins above the ground keeps its underside', () => {
    expect(one({ 'building:part': 'yes', height: '20', min_height: '8' }).crownBaseM).toBe(8);
    expect(
      one({ 'building:part': 'yes', height: '20', 'building:min_level': '2' }).crownBaseM,
    ).toBe(6);
    expect(one({ 'building:part': 'yes', height: '20', min_height: '25' }).crownBaseM).toBe(0);
  });

  test('leaves: broad ones fall, needles stay, as tagged', () => {
    // Heisler 1986: about 80 % less light in leaf, nearly 40 % less when leafless.
    expect(passes({ natural: 'tree_row' })).toEqual([0.2, 0.6]);
    expect(passes({ natural: 'tree_row', leaf_cycle: 'evergreen' })).toEqual([0.15, 0.15]);
    expect(passes({ natural: 'tree_row', leaf_type: 'needleleaved' })).toEqual([0.15, 0.15]);
    expect(
      passes({ natural: 'tree_row', leaf_type: 'needleleaved', leaf_cycle: 'deciduous' }),
    ).toEqual([0.2, 0.6]);
  });

  test('a tree is a crown round its point, as wide as it says', () => {
    const tree = one(
      { natural: 'tree', height: '9', diameter_crown: '10' },
      { type: 'Point', coordinates: [13.76, 45.65] },
    );
    expect(tree).toMatchObject({ kind: 'trees', heightM: 9, crownBaseM: 2, closed: true });
    const north = Math.max(...tree.outline.map(([, latitude]) => latitude));
    // 5 m at 111,150 m a degree.
    expect(north - 45.65).toBeCloseTo(5 / 111_150, 6);
  });

  test.each([
    [{ highway: 'residential' }, 'tagged highway, which is no building, wall or trees'],
    [{ natural: 'water' }, 'tagged natural, which is no building, wall or trees'],
    [{ building: 'no' }, 'underground, or said to be no building'],
    [{ building: 'yes', location: 'underground' }, 'underground, or said to be no building'],
  ])('%j hides no sky', (tags, why) => {
    const text = collection(
      feature(tags, polygon(square(1, 1))),
      feature({}, polygon(square(2, 2))),
    );
    expect(read(text).skipped).toEqual([{ count: 1, why }]);
  });
});

describe('what was assumed is counted', () => {
  test('3 of 4 buildings without a height, one by its floors', () => {
    const text = collection(
      feature({ building: 'yes', height: '12' }, polygon(square(1, 1))),
      feature({ building: 'yes' }, polygon(square(2, 1))),
      feature({ building: 'yes' }, polygon(square(3, 1))),
      feature({ building: 'yes', 'building:levels': '2' }, polygon(square(4, 1))),
    );
    expect(read(text).notes).toEqual([
      '2 of 4 buildings had no height: taken as 6 m.',
      '1 heights come from floors, 3 m each.',
    ]);
  });

  test.each(['99999', -4, 'tall', 0, '1e9', { a: 1 }])('a height of %j cannot be', (height) => {
    const { outlines, notes } = read(collection(feature({ height }, polygon(square(1, 1)))));
    expect(outlines[0]?.obstacle.heightM).toBe(6);
    expect(notes[0]).toContain('1 heights cannot be (such as');
  });

  test('outlines that cross themselves, too many corners, lost courtyards, the antimeridian', () => {
    const bowTie = [
      [1, 1],
      [1.001, 1.001],
      [1.001, 1],
      [1, 1.001],
      [1, 1],
    ];
    const round = Array.from({ length: 3001 }, (_, n) => [
      2 + 0.01 * Math.cos((n * Math.PI) / 1500),
      2 + 0.01 * Math.sin((n * Math.PI) / 1500),
    ]);
    const across = [
      [179.999, 5],
      [-179.999, 5],
      [-179.999, 5.001],
      [179.999, 5.001],
      [179.999, 5],
    ];
    const hole = [
      [179.9995, 5.0003],
      [-179.9995, 5.0003],
      [-179.9995, 5.0006],
      [179.9995, 5.0003],
    ];
    const { outlines, notes } = read(
      collection(
        feature({ height: 5 }, polygon(bowTie)),
        feature({ height: 5 }, polygon(round)),
        feature({ height: 5 }, polygon(across, hole)),
      ),
    );
    expect(outlines).toHaveLength(4);
    expect(notes).toEqual([
      '1 outlines cross themselves: kept, each of their loops counts.',
      '1 outlines had more than 2,000 corners: corners close together were left out.',
      '1 outlines cross the antimeridian: cut in two there.',
      '1 courtyards could not be kept: they count as filled.',
    ]);
    expect(outlines[1]?.obstacle.outline.length).toBeLessThanOrEqual(2000);
    const [west, east] = outlines.slice(2).map(({ obstacle }) => obstacle.outline);
    expect(west).toEqual(
      expect.arrayContaining([
        [179.999, 5],
        [180, 5],
        [180, 5.001],
      ]),
    );
    expect(east).toEqual(
      expect.arrayContaining([
        [-179.999, 5],
        [-180, 5],
        [-180, 5.001],
      ]),
    );
  });
});

describe('what cannot be read says what was found and what was expected', () => {
  const good = collection(feature({ building: 'yes' }, polygon(square(1, 1))));

  test.each([
    ['an empty file', '', 'found an empty file'],
    ['a web page', '<!doctype html><p>Too busy', 'found markup'],
    ['a file cut short', good.slice(0, -30), 'cut short'],
    [
      'a file that is no JSON',
      'outlines: none',
      'no JSON: it cannot be read on from line 1, column 1',
    ],
    ['other JSON', '{"spots":[]}', 'a “type”'],
    ['JSON of another type', '{"type":"Topology"}', 'type “Topology”'],
    ['a list', '[1,2]', 'a “type”'],
    ['a collection without features', '{"type":"FeatureCollection"}', 'found none in it'],
    ['no feature', collection(), 'no feature'],
    [
      'nothing that hides sky',
      collection(feature({ highway: 'path' }, line([1, 1], [2, 2]))),
      'tagged highway',
    ],
    [
      'no geometry',
      collection({ type: 'Feature', properties: {}, geometry: null }),
      '1 without a geometry',
    ],
    [
      'metres of a projection',
      collection(feature({}, polygon(square(3_412_345, 5_062_345, 20)))),
      'look like metres of a map projection; expected degrees',
    ],
    [
      'latitude first',
      collection(feature({}, polygon(square(45.65, 113.76)))),
      'latitude seems to come first',
    ],
    [
      'another coordinate system by name',
      JSON.stringify({
        type: 'FeatureCollection',
        crs: { type: 'name', properties: { name: 'urn:ogc:def:crs:EPSG::25832' } },
        features: [],
      }),
      'said to be in “urn:ogc:def:crs:EPSG::25832”; expected degrees',
    ],
    ['a file too large', `"${' '.repeat(41e6)}"`, 'found 41.1 MB, expected at most 40 MB'],
  ])('%s', (_, text, sentence) => {
    expect(refused(text)).toContain(sentence);
  });

  test.each(['urn:ogc:def:crs:OGC:1.3:CRS84', 'EPSG:4326', 'urn:ogc:def:crs:EPSG::4326'])(
    'degrees under their older name %s are read',
    (name) => {
      const text = JSON.stringify({
        ...(JSON.parse(good) as object),
        crs: { type: 'name', properties: { name } },
      });
      expect(read(`\uFEFF${text}`).outlines).toHaveLength(1);
    },
  );

  test('20,001 outlines are too many', () => {
    const many = Array.from({ length: 20_001 }, (_, n) =>
      feature({ building: 'yes' }, polygon(square((n % 200) / 100, Math.floor(n / 200) / 100))),
    );
    expect(refused(collection(...many))).toContain('more than 20,000 outlines');
  });

  test.each([
    [
      'without area',
      polygon([
        [1, 1],
        [1.001, 1],
        [1.002, 1],
        [1, 1],
      ]),
    ],
    [
      'without area',
      polygon([
        [1, 1],
        [1, 1],
        [1, 1],
        [1, 1],
      ]),
    ],
    ['without area', polygon([])],
    ['without length', line([1, 1], [1, 1])],
    [
      'with a corner that is no pair of numbers',
      polygon([
        [1, 1],
        [1, null as never],
        [2, 2],
      ]),
    ],
    ['with a corner that is no pair of numbers', polygon([[1, 1], ['2', 1] as never, [2, 2]])],
    ['without coordinates', { type: 'Polygon', coordinates: 'none' }],
    ['without coordinates', { type: 'MultiPolygon', coordinates: [7] }],
    ['of no geometry that GeoJSON knows', { type: 'Circle', coordinates: [1, 1] }],
    [
      'running round a pole',
      polygon([
        [0, 80],
        [120, 80],
        [-120, 80],
        [0, 80],
      ]),
    ],
    ['with coordinates that look like metres, not degrees', polygon(square(500_000, 4e6, 9))],
  ])('one outline %s is skipped, the others are kept', (why, geometry) => {
    const reading = read(
      collection(
        feature({}, geometry),
        feature({}, polygon(square(1, 1))),
        feature({}, polygon(square(2, 2))),
      ),
    );
    expect(reading.outlines).toHaveLength(2);
    expect(reading.skipped).toEqual([{ count: 1, why }]);
  });

  test('names are kept as plain text of one line', () => {
    const name = '<b>Town</b>\n<script>alert(1)</script> hall\u202e';
    const text = collection(feature({ building: 'yes', name }, polygon(square(1, 1))));
    expect(read(text).outlines[0]?.name).toBe('Town hall');
  });

  test('whatever JSON is given, it answers', () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 6 }), (text) => {
        expect(typeof readOutlinesGeoJson(text).ok).toBe('boolean');
      }),
    );
    const geometry = fc.record({
      type: fc.constantFrom('Polygon', 'LineString', 'MultiPolygon', 'Point', 'GeometryCollection'),
      coordinates: fc.jsonValue({ maxDepth: 5 }),
      geometries: fc.jsonValue(),
    });
    fc.assert(
      fc.property(geometry, fc.jsonValue(), (where, properties) => {
        const text = JSON.stringify({ type: 'Feature', properties, geometry: where });
        expect(typeof readOutlinesGeoJson(text).ok).toBe('boolean');
      }),
    );
  });
});

describe('what is kept of an import', () => {
  const text = collection(
    feature(
      { building: 'yes', height: '12', name: 'Hall' },
      polygon(square(1, 1), square(1.00005, 1.00005, 0.0001)),
    ),
    feature({ barrier: 'wall' }, line([1.1, 1], [1.1, 1.1], [1.2, 1.1])),
    feature({ barrier: 'wall' }, line(...square(1.3, 1))),
    feature({ natural: 'wood' }, polygon(square(1.4, 1, 0.01))),
    feature({ natural: 'tree' }, { type: 'Point', coordinates: [1.5, 1] }),
  );
  const reading = read(text);

  test('is read back quickly as the same outlines, by number', () => {
    const again = outlinesOfSet(reading.text, {});
    expect(again).toEqual(
      reading.outlines.map(({ obstacle, name }, index) => ({ ...obstacle, name, index })),
    );
    expect(again.map(({ index }) => index)).toEqual([0, 1, 2, 3, 4]);
  });

  test('less those taken out', () => {
    const shown = outlinesOfSet(reading.text, { '1': true, '4': true });
    expect(shown.map(({ index }) => index)).toEqual([0, 2, 3]);
  });

  test('is itself a file that can be imported, with nothing changed and nothing to note', () => {
    const again = read(reading.text);
    expect(again).toEqual({ ...reading, notes: [], skipped: [] });
  });

  test.each(['', '{', '[]', '{"features":7}', '{"features":[null,{"type":"Feature"}]}'])(
    'a set that holds %j has no outline and breaks nothing',
    (broken) => {
      expect(outlinesOfSet(broken, {})).toEqual([]);
    },
  );

  test('an outline in a set that is not as kept is passed over, the numbers of the others stay', () => {
    const collected = JSON.parse(reading.text) as {
      features: { properties: { height: number } }[];
    };
    const [first] = collected.features;
    if (first !== undefined) first.properties.height = 1e6;
    expect(outlinesOfSet(JSON.stringify(collected), {}).map(({ index }) => index)).toEqual([
      1, 2, 3, 4,
    ]);
  });
});
