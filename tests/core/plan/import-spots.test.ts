import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { destination } from '../../../src/core/place/geodesy.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import { planImport } from '../../../src/core/plan/import-spots.ts';
import type { Waypoint } from '../../../src/core/plan/waypoint.ts';
import { defined } from '../../support/defined.ts';
import { waypointsArbitrary } from '../../support/waypoint-arbitrary.ts';

const pier = defined(demoShoot().spots['pier']);

/** A waypoint at a distance from the pier, along the WGS 84 ellipsoid (Karney's algorithms). */
const away = (distanceM: number, bearingDeg: number, name: string | null): Waypoint => {
  const { latitudeDeg, longitudeDeg } = destination(pier, { distanceM, bearingDeg });
  return {
    name,
    latitudeDeg,
    longitudeDeg,
    elevationM: null,
    note: '',
    bearingDeg: null,
    takenAtMs: null,
  };
};

const onlyRow = (waypoint: Waypoint): ReturnType<typeof planImport>['rows'][number] =>
  defined(planImport(demoShoot(), [waypoint]).rows[0]);

describe('a waypoint is known again', () => {
  test.each([0, 45, 90, 180, 300])(
    '14.9 m from a spot, towards %i°, whatever its name',
    (bearing) => {
      expect(onlyRow(away(14.9, bearing, 'Something else'))).toMatchObject({
        action: 'already-there',
        spotId: 'pier',
        because: 'Already a spot: Pier head 15 m away.',
      });
    },
  );

  test.each([0, 90, 225])('not 15.1 m from it, towards %i°, by another name', (bearing) => {
    expect(onlyRow(away(15.1, bearing, 'Something else'))).toMatchObject({
      action: 'add',
      spotId: null,
      because: 'No spot stands within 15 m, none of this name within 100 m.',
    });
  });

  test('99 m from it by the same name, whatever its case and spaces; not at 101 m', () => {
    expect(onlyRow(away(99, 60, ' PIER  head '))).toMatchObject({
      action: 'already-there',
      because: 'Already a spot: Pier head, of the same name, 99 m away.',
    });
    expect(onlyRow(away(101, 60, 'Pier head')).action).toBe('add');
  });

  test('a name written with a combining accent is the same name', () => {
    const shoot = { spots: { one: { ...pier, name: 'Caf\u00e9' } } };
    expect(planImport(shoot, [away(50, 0, 'Cafe\u0301')]).rows[0]?.action).toBe('already-there');
  });

  test('two without a name are not one by their name', () => {
    expect(planImport({ spots: {} }, [away(0, 0, null), away(50, 0, null)]).rows[1]?.action).toBe(
      'add',
    );
  });

  test('across the antimeridian', () => {
    const shoot = { spots: { one: { ...pier, latitudeDeg: -17, longitudeDeg: 179.99995 } } };
    // 0.0001° of longitude at 17° S is 10.6 m.
    const waypoint = { ...away(0, 0, null), latitudeDeg: -17, longitudeDeg: -179.99995 };
    expect(planImport(shoot, [waypoint]).rows[0]?.action).toBe('already-there');
  });
});

describe('within one file', () => {
  test('the second of two at one place is not added again, and says so', () => {
    const rows = planImport({ spots: {} }, [away(0, 0, 'Quay'), away(8, 90, 'Quay east')]).rows;
    expect(rows.map(({ action, because }) => [action, because])).toEqual([
      ['add', 'No spot stands within 15 m, none of this name within 100 m.'],
      ['already-there', 'Comes twice here: Quay 8 m away.'],
    ]);
    expect(rows[1]?.spotId).toBeNull();
  });
});

test('the nearest spot is the one that is named', () => {
  const at = (distanceM: number, name: string): typeof pier => ({
    ...pier,
    ...away(distanceM, 0, null),
    name,
    elevationM: 0,
  });
  const spots = { far: at(12, 'Far'), near: at(3, 'Near') };
  expect(planImport({ spots }, [away(0, 0, null)]).rows[0]).toMatchObject({
    spotId: 'near',
    because: 'Already a spot: Near 3 m away.',
  });
});

test('a file read a second time into the same shoot adds nothing', () => {
  fc.assert(
    fc.property(waypointsArbitrary, (waypoints) => {
      const spots = Object.fromEntries(
        waypoints.map((waypoint, index) => [
          `s${index}`,
          { ...pier, ...waypoint, name: waypoint.name ?? 'Spot', elevationM: 0 },
        ]),
      );
      for (const row of planImport({ spots }, waypoints).rows)
        expect(row.action).toBe('already-there');
    }),
  );
});
