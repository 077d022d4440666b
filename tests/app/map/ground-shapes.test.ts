import { describe, expect, test } from 'vitest';

import { groundShapes, type GroundOutline } from '../../../src/app/map/ground-shapes.ts';
import { outlineAt } from '../../../src/app/map/outline-at.ts';
import type { Corner } from '../../../src/core/skyline/obstacle.ts';

const square = (west: number, south: number, sizeDeg: number): readonly Corner[] => [
  [west, south],
  [west + sizeDeg, south],
  [west + sizeDeg, south + sizeDeg],
  [west, south + sizeDeg],
];

const outline = (key: string, rings: readonly (readonly Corner[])[]): GroundOutline => ({
  key,
  kind: 'building',
  closed: true,
  solid: true,
  rings,
});

const place = (longitudeDeg: number, latitudeDeg: number) => ({ longitudeDeg, latitudeDeg });

describe('what stands at a place of the map', () => {
  const block = outline('block', [square(13, 45, 0.01), square(13.004, 45.004, 0.002)]);

  test('a block is found on itself, not in its courtyard and not beside it', () => {
    const shapes = groundShapes([block]);
    expect(outlineAt(shapes, place(13.001, 45.001), 17)).toBe('block');
    expect(outlineAt(shapes, place(13.005, 45.005), 17)).toBeNull();
    expect(outlineAt(shapes, place(13.012, 45.001), 17)).toBeNull();
  });

  test('it does not matter which way its rings were drawn', () => {
    const turned = outline(
      'turned',
      block.rings.map((ring) => ring.toReversed()),
    );
    const shapes = groundShapes([turned]);
    expect(outlineAt(shapes, place(13.001, 45.001), 17)).toBe('turned');
    expect(outlineAt(shapes, place(13.005, 45.005), 17)).toBeNull();
  });

  test('of two over one another the smaller', () => {
    const tower = outline('tower', [square(13.001, 45.001, 0.001)]);
    for (const order of [
      [block, tower],
      [tower, block],
    ])
      expect(outlineAt(groundShapes(order), place(13.0015, 45.0015), 17)).toBe('tower');
  });

  test('a house across the antimeridian is one house, from either side', () => {
    const shapes = groundShapes([
      outline('far', [
        [
          [179.999, 10],
          [-179.999, 10],
          [-179.999, 10.001],
          [179.999, 10.001],
        ],
      ]),
    ]);
    expect(outlineAt(shapes, place(179.9995, 10.0005), 17)).toBe('far');
    expect(outlineAt(shapes, place(-179.9995, 10.0005), 17)).toBe('far');
    expect(outlineAt(shapes, place(0, 10.0005), 17)).toBeNull();
  });

  test('a wall is found within eight pixels of it: 4.8 m at zoom 17 on the equator are 4 px', () => {
    const wall: GroundOutline = {
      key: 'wall',
      kind: 'wall',
      closed: false,
      solid: false,
      rings: [
        [
          [0, 0],
          [0.01, 0],
        ],
      ],
    };
    const shapes = groundShapes([wall]);
    // A pixel is 360°/256/2¹⁷ = 1.073e-5°.
    expect(outlineAt(shapes, place(0.005, 4 * 1.073e-5), 17)).toBe('wall');
    expect(outlineAt(shapes, place(0.005, 12 * 1.073e-5), 17)).toBeNull();
    expect(outlineAt(shapes, place(0.01 + 12 * 1.073e-5, 0), 17)).toBeNull();
  });
});
