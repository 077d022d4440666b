import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { checkDocument } from '../../../src/core/plan/check-document.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import { applyEdit } from '../../../src/core/plan/history.ts';
import { importEdit, type SpotFromWaypoint } from '../../../src/core/plan/import-edit.ts';
import { inOrder } from '../../../src/core/plan/order-key.ts';
import { SHOOT, type Shoot, type Spot } from '../../../src/core/plan/shoot.ts';
import type { Waypoint } from '../../../src/core/plan/waypoint.ts';
import { defined } from '../../support/defined.ts';
import { waypointsArbitrary } from '../../support/waypoint-arbitrary.ts';

const waypoint: Waypoint = {
  name: 'Quay',
  latitudeDeg: 45.66,
  longitudeDeg: 13.77,
  elevationM: 2,
  note: 'Gate opens at six',
  bearingDeg: 215,
  takenAtMs: null,
};

const addition = (fields: Partial<Waypoint>, spotId = 'new'): SpotFromWaypoint => ({
  waypoint: { ...waypoint, ...fields },
  spotId,
  zone: 'Europe/Rome',
  elevationM: 12,
});

const imported = (...additions: readonly SpotFromWaypoint[]): Shoot =>
  applyEdit(demoShoot(), importEdit(demoShoot(), additions)).document;

const spot = (fields: Partial<Waypoint>): Spot => defined(imported(addition(fields)).spots['new']);

describe('a spot out of a waypoint', () => {
  test('keeps name, place, elevation and bearing, and the note as its access note', () => {
    expect(spot({})).toMatchObject({
      name: 'Quay',
      latitudeDeg: 45.66,
      longitudeDeg: 13.77,
      elevationM: 2,
      zone: 'Europe/Rome',
      accessNote: 'Gate opens at six',
      framing: { bearingDeg: 215 },
    });
  });

  test('takes the elevation handed in where the waypoint has none or an impossible one', () => {
    expect(spot({ elevationM: null }).elevationM).toBe(12);
    expect(spot({ elevationM: 12_000 }).elevationM).toBe(12);
    expect(spot({ elevationM: Number.NaN }).elevationM).toBe(12);
  });

  test.each([
    ['Trieste', 45.66, 13.77],
    ['south of the equator', -33.87, 18.4],
  ])('without a bearing the camera faces the sunset, %s', (_, latitudeDeg, longitudeDeg) => {
    // Sunset azimuth from cos A = (sin δ − sin φ sin h) / (cos φ cos h): δ 18.6° on 14 May, h −0.83°.
    const rad = Math.PI / 180;
    const cosA =
      (Math.sin(18.6 * rad) - Math.sin(latitudeDeg * rad) * Math.sin(-0.83 * rad)) /
      (Math.cos(latitudeDeg * rad) * Math.cos(-0.83 * rad));
    const bearingDeg = 360 - Math.acos(cosA) / rad;
    const shoot = imported(
      addition({ bearingDeg: null, latitudeDeg: 60 }, 'elsewhere'),
      addition({ bearingDeg: null, latitudeDeg, longitudeDeg }),
    );
    const found = defined(shoot.spots['new']).framing.bearingDeg;
    // Whole degrees, and a declination of a tenth.
    expect(Math.abs(found - bearingDeg)).toBeLessThan(1);
  });

  test('without a name it is numbered, each by another number', () => {
    const shoot = imported(
      addition({ name: null }, 'a'),
      addition({ name: 'Spot 6' }, 'b'),
      addition({ name: null }, 'c'),
    );
    expect(['a', 'b', 'c'].map((id) => shoot.spots[id]?.name)).toEqual([
      'Spot 5',
      'Spot 6',
      'Spot 7',
    ]);
  });
});

test('whatever comes in, spots stand last in the order of the file and the shoot stays valid', () => {
  fc.assert(
    fc.property(waypointsArbitrary, (waypoints) => {
      const ids = waypoints.map((_, index) => `w${index}`);
      const shoot = imported(...waypoints.map((one, index) => addition(one, defined(ids[index]))));
      expect(
        inOrder(shoot.spots)
          .map(([id]) => id)
          .slice(-ids.length),
      ).toEqual(ids);
      expect(checkDocument(SHOOT, shoot)).toMatchObject({ ok: true });
    }),
    { numRuns: 50 },
  );
});

test('a whole import is one step: its inverse patches take back every spot and touch nothing else', () => {
  const change = applyEdit(
    demoShoot(),
    importEdit(demoShoot(), [addition({}, 'a'), addition({ name: 'Steps' }, 'b')]),
  );
  expect(Object.keys(change.document.spots).length).toBe(6);
  expect(change.inversePatches.map(({ op, path }) => [op, path.join('.')])).toEqual(
    expect.arrayContaining([
      ['remove', 'spots.a'],
      ['remove', 'spots.b'],
    ]),
  );
  expect(change.inversePatches.length).toBe(2);
});
