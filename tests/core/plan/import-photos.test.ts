import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import { applyEdit } from '../../../src/core/plan/history.ts';
import {
  addPhotos,
  isSamePhoto,
  photoWaypoints,
  type PhotoWithPlace,
} from '../../../src/core/plan/import-photos.ts';
import { inOrder } from '../../../src/core/plan/order-key.ts';
import { SHOOT } from '../../../src/core/plan/shoot.ts';
import { defined } from '../../support/defined.ts';
import { plainPhoto } from '../../support/plain-photo.ts';

const LATITUDE_DEG = 45.65;
/** The mean meridian degree of 111.1 km and the parallel's at 45.65°, good to 0.5 %. */
const METRES_NORTH_DEG = 1 / 111_140;
const METRES_EAST_DEG = 1 / 78_000;

const taken = (
  name: string,
  at: { readonly northM: number; readonly eastM?: number } | null,
  more: Partial<PhotoWithPlace> = {},
): PhotoWithPlace => ({
  name,
  latitudeDeg: at === null ? null : LATITUDE_DEG + at.northM * METRES_NORTH_DEG,
  longitudeDeg: at === null ? null : 13.75 + (at.eastM ?? 0) * METRES_EAST_DEG,
  elevationM: null,
  bearingDeg: null,
  takenAtMs: null,
  ...more,
});

const groups = (photos: readonly PhotoWithPlace[]): readonly (readonly string[])[] =>
  photoWaypoints(photos).map((waypoint) => waypoint.photos.map(({ name }) => name));

describe('photos become places', () => {
  test('photos 20 m apart are one place, 30 m apart two', () => {
    expect(groups([taken('a', { northM: 0 }), taken('b', { northM: 20 })])).toEqual([['a', 'b']]);
    expect(groups([taken('a', { northM: 0 }), taken('b', { northM: 30 })])).toEqual([['a'], ['b']]);
  });

  test('a walk along the shore does not run together into one place', () => {
    const walk = [0, 20, 40, 60, 80].map((northM) => taken(`at ${northM}`, { northM }));
    expect(groups(walk)).toEqual([['at 0', 'at 20'], ['at 40', 'at 60'], ['at 80']]);
  });

  test('a photo between two places goes to the nearer', () => {
    expect(
      groups([taken('a', { northM: 0 }), taken('b', { northM: 40 }), taken('c', { northM: 22 })]),
    ).toEqual([['a'], ['b', 'c']]);
  });

  test('a place stands where the first of its photos was taken, whatever their order', () => {
    const early = taken('early.jpg', { northM: 0 }, { takenAtMs: 1000, bearingDeg: null });
    const late = taken(
      'late.jpg',
      { northM: 10 },
      { takenAtMs: 2000, bearingDeg: 80, elevationM: 3 },
    );
    for (const photos of [
      [early, late],
      [late, early],
    ])
      expect(photoWaypoints(photos)).toEqual([
        {
          name: 'early',
          latitudeDeg: early.latitudeDeg,
          longitudeDeg: early.longitudeDeg,
          elevationM: 3,
          note: '',
          bearingDeg: 80,
          takenAtMs: 1000,
          photos: [early, late],
        },
      ]);
  });

  test('two photos on either side of the antimeridian are one place', () => {
    const west = { ...taken('w', { northM: 0 }), longitudeDeg: 179.9999 };
    const east = { ...taken('e', { northM: 0 }), longitudeDeg: -179.9999 };
    // 0.0002° of the parallel at 45.65° is 15.6 m.
    expect(groups([west, east])).toEqual([['w', 'e']]);
  });

  test('photos without a position are in no place', () => {
    expect(groups([taken('a', null), taken('b', { northM: 0 })])).toEqual([['b']]);
    expect(photoWaypoints([])).toEqual([]);
  });

  test('every photo with a position is in exactly one place, within 25 m of it', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: -60, max: 60 }), fc.integer({ min: -60, max: 60 }))),
        (places) => {
          const photos = places.map(([northM, eastM], at) => taken(`${at}`, { northM, eastM }));
          const waypoints = photoWaypoints(photos);
          expect(waypoints.flatMap((one) => one.photos).length).toBe(photos.length);
          for (const { latitudeDeg, longitudeDeg, photos: own } of waypoints)
            for (const photo of own) {
              const northM =
                (defined(photo.latitudeDeg ?? undefined) - latitudeDeg) / METRES_NORTH_DEG;
              const eastM =
                (defined(photo.longitudeDeg ?? undefined) - longitudeDeg) / METRES_EAST_DEG;
              // The flat metres above are good to 0.5 %.
              expect(Math.hypot(northM, eastM)).toBeLessThan(25.2);
            }
        },
      ),
    );
  });
});

describe('photos are added to a spot', () => {
  const exposed = { ...plainPhoto, fNumber: 8, shutterS: 1 / 256, iso: 100 };

  test('behind those it has, in their order, each with the reading it makes, as one step', () => {
    const { document } = applyEdit(
      demoShoot(),
      addPhotos('pier', defined(demoShoot().spots['pier']), [
        { photoId: 'a', photo: { ...exposed, name: 'one' }, readingId: 'ra' },
        { photoId: 'b', photo: { ...exposed, name: 'two' }, readingId: null },
        { photoId: 'c', photo: { ...plainPhoto, name: 'three' }, readingId: 'rc' },
      ]),
    );
    const again = applyEdit(
      document,
      addPhotos('pier', defined(document.spots['pier']), [
        { photoId: 'first', photo: { ...exposed, name: 'four' }, readingId: 'r4' },
      ]),
    ).document;
    const pier = defined(again.spots['pier']);
    expect(inOrder(pier.photos).map(([, { name }]) => name)).toEqual([
      'one',
      'two',
      'three',
      'four',
    ]);
    expect(inOrder(pier.readings).map(([id, { photoId, ev100 }]) => [id, photoId, ev100])).toEqual([
      ['ra', 'a', 14],
      ['r4', 'first', 14],
    ]);
    expect(SHOOT.safeParse(again).success).toBe(true);
  });

  test('the same picture is known by its bytes, or by name and time', () => {
    const first = { ...plainPhoto, takenAtMs: 5 };
    expect(isSamePhoto(first, { ...first, name: 'copy.jpg' })).toBe(true);
    expect(isSamePhoto(first, { ...first, contentHash: 'b'.repeat(64) })).toBe(true);
    expect(isSamePhoto(first, { ...first, contentHash: 'b'.repeat(64), takenAtMs: 6 })).toBe(false);
    expect(isSamePhoto(plainPhoto, { ...plainPhoto, contentHash: 'b'.repeat(64) })).toBe(false);
  });
});
