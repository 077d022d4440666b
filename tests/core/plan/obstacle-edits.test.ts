import { produce } from 'immer';
import { describe, expect, test } from 'vitest';

import { checkDocument } from '../../../src/core/plan/check-document.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import type { Edit } from '../../../src/core/plan/edits.ts';
import {
  addObstacle,
  addOutlineSet,
  editObstacle,
  hideOutline,
  removeObstacle,
  removeOutlineSet,
  takeOverOutline,
} from '../../../src/core/plan/obstacle-edits.ts';
import type { ObstacleEntry, OutlineSet } from '../../../src/core/plan/obstacle-schema.ts';
import { SHOOT, type Shoot } from '../../../src/core/plan/shoot.ts';

const demo = demoShoot();
const edited = (edit: Edit<Shoot>): Shoot => produce(demo, edit);

const wall: ObstacleEntry = {
  order: 'n',
  name: 'Harbour wall',
  kind: 'wall',
  closed: false,
  outline: [
    [13.757, 45.65],
    [13.758, 45.65],
  ],
  heightM: 4,
  crownBaseM: 0,
  passesInLeaf: 0,
  passesBare: 0,
  footElevationM: null,
  origin: 'drawn on the map',
  dated: '2027-05-10',
};

const streets: OutlineSet = {
  order: 'n',
  name: 'Old town',
  origin: 'old-town.geojson',
  dated: '2027-05-10',
  outlineCount: 3,
  geoJson: '{"type":"FeatureCollection","features":[]}',
  hidden: {},
};

describe('what stands on the ground is put in, changed and taken out', () => {
  test('a wall, its height, its corners', () => {
    const built = edited(addObstacle('wall', wall));
    expect(built).toEqual({ ...demo, obstacles: { ...demo.obstacles, wall } });
    expect(checkDocument(SHOOT, built).ok).toBe(true);
    const moved = produce(
      built,
      editObstacle('wall', {
        heightM: 6,
        outline: [
          [13.7, 45.6],
          [13.8, 45.6],
        ],
      }),
    );
    expect(moved.obstacles['wall']).toEqual({
      ...wall,
      heightM: 6,
      outline: [
        [13.7, 45.6],
        [13.8, 45.6],
      ],
    });
    expect(produce(moved, removeObstacle('wall'))).toEqual(demo);
  });

  test('the outlines of an import, and one of them out of sight', () => {
    const imported = edited(addOutlineSet('town', streets));
    expect(imported.outlineSets['town']).toEqual(streets);
    const thinned = produce(imported, hideOutline('town', 2));
    expect(thinned.outlineSets['town']?.hidden).toEqual({ '2': true });
    expect(thinned.outlineSets['town']?.geoJson).toBe(streets.geoJson);
    expect(produce(thinned, removeOutlineSet('town'))).toEqual(demo);
  });
});

test('an outline taken over is an obstacle of its own and no longer one of its set', () => {
  const imported = edited(addOutlineSet('town', streets));
  const taken = produce(
    imported,
    takeOverOutline({ setId: 'town', index: 1, obstacleId: 'house', obstacle: wall }),
  );
  expect(taken.obstacles['house']).toEqual(wall);
  expect(taken.outlineSets['town']?.hidden).toEqual({ '1': true });
  expect(taken.spots).toEqual(imported.spots);
});

test('what is gone takes no edit: another tab may have removed it', () => {
  expect(edited(editObstacle('wall', { heightM: 9 }))).toEqual(demo);
  expect(edited(hideOutline('town', 1))).toEqual(demo);
  expect(
    edited(takeOverOutline({ setId: 'town', index: 1, obstacleId: 'house', obstacle: wall })),
  ).toEqual(demo);
});

test('what was put in does not change with the caller’s copy', () => {
  const outline: [number, number][] = [
    [13.757, 45.65],
    [13.758, 45.65],
  ];
  const built = edited(addObstacle('wall', { ...wall, outline }));
  outline[0] = [0, 0];
  expect(built.obstacles['wall']?.outline[0]).toEqual([13.757, 45.65]);
});
