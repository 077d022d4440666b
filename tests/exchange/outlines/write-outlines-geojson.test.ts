import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { readOutlinesGeoJson } from '../../../src/exchange/outlines/read-outlines-geojson.ts';
import {
  writeOutlinesGeoJson,
  type NamedObstacle,
} from '../../../src/exchange/outlines/write-outlines-geojson.ts';
import { plainBuilding, plainTrees, plainWall } from '../../support/metres-round.ts';

const steps = fc.integer({ min: -50_000, max: 50_000 });

/** Corners on whole microdegrees round a middle, so that outlines do not cross themselves. */
const outline = fc
  .tuple(steps, steps, fc.array(fc.integer({ min: 100, max: 400 }), { minLength: 3, maxLength: 9 }))
  .map(([east, north, reaches]) =>
    reaches.map((reach, n): readonly [number, number] => {
      const angle = (2 * Math.PI * n) / reaches.length;
      return [
        Math.round(13e6 + east + reach * Math.cos(angle)) / 1e6,
        Math.round(45e6 + north + reach * Math.sin(angle)) / 1e6,
      ];
    }),
  );

const obstacle: fc.Arbitrary<NamedObstacle> = fc
  .record({
    form: fc.constantFrom(plainBuilding, plainWall, { ...plainWall, closed: true }, plainTrees, {
      ...plainTrees,
      closed: false,
    }),
    outline,
    heightM: fc.integer({ min: 50, max: 100_000 }).map((cm) => cm / 100),
    passesInLeaf: fc.integer({ min: 0, max: 20 }).map((parts) => parts / 20),
    footElevationM: fc.option(fc.integer({ min: -400, max: 8000 })),
    name: fc.constantFrom('', 'Town hall', '7 “Quay” St.'),
  })
  .map(({ form, passesInLeaf, ...fields }) => ({
    ...form,
    ...fields,
    passesInLeaf: form.kind === 'trees' ? passesInLeaf : 0,
    crownBaseM: Math.min(form.crownBaseM, fields.heightM),
  }));

const asSet = (corners: NamedObstacle['outline']): readonly string[] =>
  corners.map(String).toSorted();

describe('outlines written as GeoJSON', () => {
  test('come back as they were, the way round aside', () => {
    fc.assert(
      fc.property(fc.array(obstacle, { minLength: 1, maxLength: 5 }), (obstacles) => {
        const reading = readOutlinesGeoJson(writeOutlinesGeoJson(obstacles));
        if (!reading.ok) throw new Error(reading.problem);
        const again = reading.value.outlines.map(({ obstacle: one, name }) => ({ ...one, name }));
        expect(again.map((one) => ({ ...one, outline: asSet(one.outline) }))).toEqual(
          obstacles.map((one) => ({ ...one, outline: asSet(one.outline) })),
        );
      }),
    );
  });

  test('keep to the right-hand rule and close their rings (RFC 7946, 3.1.6)', () => {
    const clockwise = [
      [1, 1],
      [1, 2],
      [2, 2],
      [2, 1],
    ] as const;
    const hole = [
      [1.2, 1.2],
      [1.8, 1.2],
      [1.8, 1.8],
      [1.2, 1.8],
    ] as const;
    const text = writeOutlinesGeoJson([{ ...plainBuilding, outline: clockwise, holes: [hole] }]);
    expect(JSON.parse(text)).toMatchObject({
      type: 'FeatureCollection',
      features: [
        {
          type: 'Feature',
          properties: { kind: 'building', height: 10 },
          geometry: {
            type: 'Polygon',
            coordinates: [
              [
                [2, 1],
                [2, 2],
                [1, 2],
                [1, 1],
                [2, 1],
              ],
              [
                [1.2, 1.8],
                [1.8, 1.8],
                [1.8, 1.2],
                [1.2, 1.2],
                [1.2, 1.8],
              ],
            ],
          },
        },
      ],
    });
  });

  test('one drawn over the antimeridian leaves as two, each within ±180° (RFC 7946, 3.1.9)', () => {
    const text = writeOutlinesGeoJson([
      {
        ...plainWall,
        outline: [
          [179.9, 10],
          [-179.9, 10.2],
        ],
      },
      {
        ...plainBuilding,
        outline: [
          [179.9, 20],
          [-179.9, 20],
          [-179.9, 20.1],
          [179.9, 20.1],
        ],
      },
    ]);
    const { features } = JSON.parse(text) as {
      features: { geometry: { type: string; coordinates: unknown } }[];
    };
    expect(features.map(({ geometry }) => geometry.type)).toEqual([
      'LineString',
      'LineString',
      'Polygon',
      'Polygon',
    ]);
    expect(features[0]?.geometry.coordinates).toEqual([
      [179.9, 10],
      [180, 10.1],
    ]);
    expect(features[1]?.geometry.coordinates).toEqual([
      [-180, 10.1],
      [-179.9, 10.2],
    ]);
  });
});
