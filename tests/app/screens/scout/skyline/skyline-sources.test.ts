import { describe, expect, test } from 'vitest';

import {
  makersOf,
  obstacleCounts,
  sharesOf,
} from '../../../../../src/app/screens/scout/skyline/skyline-sources.ts';
import { movedSinceM } from '../../../../../src/app/screens/scout/skyline/source-lines.ts';
import { demoShoot } from '../../../../../src/core/plan/demo-shoot.ts';
import { groundedSpot } from '../../../../../src/core/plan/grounded-spot.ts';
import type { Spot } from '../../../../../src/core/plan/shoot.ts';
import type { Obstacle } from '../../../../../src/core/skyline/obstacle.ts';
import { defined } from '../../../../support/defined.ts';

const pier = defined(demoShoot().spots['pier']);
const flat = (altitudeDeg: number): Spot['terrain'] => ({
  altitudesDeg: Array.from({ length: 360 }, () => altitudeDeg),
  origin: 'N45E013.hgt',
  dated: '2027-05-01',
  latitudeDeg: pier.latitudeDeg,
  longitudeDeg: pier.longitudeDeg,
  voidShare: 0,
});

/** 20 m high, its near face 20 m to the north and 40 m long. */
const building: Obstacle = {
  kind: 'building',
  closed: true,
  outline: [
    [-20, 20],
    [20, 20],
    [20, 40],
    [-20, 40],
  ].map(([eastM = 0, northM = 0]) => [
    pier.longitudeDeg + eastM / (111_320 * Math.cos((pier.latitudeDeg * Math.PI) / 180)),
    pier.latitudeDeg + northM / 111_132,
  ]),
  heightM: 20,
  crownBaseM: 0,
  passesInLeaf: 0,
  passesBare: 0,
  footElevationM: null,
};

const noTrace = { ...pier, skyline: {} };

describe('who makes the skyline', () => {
  test('a trace alone decides all of it; nothing known, nobody', () => {
    expect(sharesOf(pier)).toEqual({ terrain: 0, obstacles: 0, trace: 1 });
    expect(sharesOf(noTrace)).toEqual({ terrain: 0, obstacles: 0, trace: 0 });
    expect(makersOf(noTrace)).toEqual([{ fromDeg: 0, toDeg: 360, by: null }]);
  });

  test('terrain at 4° decides where the trace is lower', () => {
    // The trace rises through 4° at 40° and falls through it at 130°, straight between its points.
    const spot = groundedSpot({ ...pier, terrain: flat(4) }, [], '2027-05-14');
    const { terrain, obstacles, trace } = sharesOf(spot);
    expect(trace).toBeCloseTo(90 / 360, 2);
    expect(terrain + trace).toBeCloseTo(1, 9);
    expect(obstacles).toBe(0);
  });

  test('a building north of the camera decides the quarter that its face fills, over terrain and without', () => {
    for (const terrain of [null, flat(2)]) {
      const spot = groundedSpot({ ...noTrace, terrain }, [building], '2027-05-14');
      // 40 m long, 20 m off: from −45° to 45°, and nothing of it at the corners' outer sides.
      expect(sharesOf(spot).obstacles).toBeCloseTo(0.25, 2);
      const by = makersOf(spot).filter((made) => made.by === 'obstacles');
      expect(by.map(({ fromDeg, toDeg }) => [Math.round(fromDeg), Math.round(toDeg)])).toEqual([
        [0, 45],
        [315, 360],
      ]);
    }
  });

  test('over a lower trace the building takes its quarter, the trace keeps the rest', () => {
    const spot = groundedSpot({ ...pier, terrain: null }, [building], '2027-05-14');
    expect(sharesOf(spot).obstacles).toBeCloseTo(0.25, 2);
    expect(sharesOf(spot).trace).toBeCloseTo(0.75, 2);
  });
});

test('a spot that moved 0.001° of latitude is 111 m from where its terrain was worked out', () => {
  expect(movedSinceM(noTrace)).toBeNull();
  const spot = { ...noTrace, terrain: flat(0), latitudeDeg: pier.latitudeDeg + 0.001 };
  // A degree of latitude at 45° is 111,132 m long on WGS 84.
  expect(movedSinceM(spot)).toBeCloseTo(111.1, 0);
});

test('imported outlines are counted without those taken out', () => {
  const shoot = demoShoot();
  const set = {
    order: 'm',
    name: 'harbour',
    origin: 'a file',
    dated: '2027-05-01',
    outlineCount: 40,
    geoJson: '{}',
    hidden: { '3': true as const, '7': true as const },
  };
  expect(obstacleCounts({ ...shoot, obstacles: {}, outlineSets: { a: set } })).toEqual({
    drawn: 0,
    imported: 38,
    sets: 1,
  });
});
