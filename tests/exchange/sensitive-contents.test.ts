import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { demoShoot } from '../../src/core/plan/demo-shoot.ts';
import { editSpot, together } from '../../src/core/plan/edits.ts';
import { applyEdit } from '../../src/core/plan/history.ts';
import { addPhoto, addReading } from '../../src/core/plan/photo-edits.ts';
import { sensitiveContents, withoutContents } from '../../src/exchange/sensitive-contents.ts';
import { defined } from '../support/defined.ts';
import { plainPhoto } from '../support/plain-photo.ts';
import { shootWithKitArbitrary } from '../support/shoot-arbitrary.ts';

const PHOTO = {
  ...plainPhoto,
  name: 'IMG_2034.jpg',
  latitudeDeg: 45.6503,
  longitudeDeg: 13.7571,
  note: 'Anna’s parents live behind',
};

const shoot = applyEdit(
  demoShoot(),
  together(
    editSpot('pier', {
      latitudeDeg: 45.6503,
      longitudeDeg: -13.7671,
      terrain: {
        altitudesDeg: Array.from({ length: 360 }, () => 1),
        origin: 'a tile',
        dated: '2027-05-01',
        latitudeDeg: 45.6503,
        longitudeDeg: -13.7671,
        voidShare: 0,
      },
      permissionNote: 'Harbour office, +39 040 555 01 23',
      permissionNumber: 'Permit 4711',
      powerNote: ' ',
      contacts: { c: { order: 'n', role: 'warden', note: '+39 040 555 99 99' } },
      checklist: { k: { order: 'n', text: 'ring at number 12', done: false } },
      surfaces: {
        s: { order: 'n', name: 'wall', kind: 'wall', reflectance: 0.5, note: 'the Rossi house' },
      },
    }),
    addPhoto('pier', 'p', PHOTO),
    addReading('pier', 'r', {
      order: 'n',
      atMs: null,
      ev100: 13,
      bearingDeg: null,
      from: 'photo',
      photoId: 'p',
      note: 'over the neighbour’s fence',
    }),
  ),
).document;

const contents = sensitiveContents(shoot);
const ofPier = contents.filter(({ spotId }) => spotId === 'pier');
const named = (...fields: readonly string[]): typeof ofPier =>
  ofPier.filter(({ field }) => fields.includes(field));

describe('what goes along with a shoot', () => {
  test.each([
    ['position', 'Pier head, position', '45.6503, -13.7671', 'rounding'],
    [
      'permissionNote',
      'Pier head, permission note',
      'Harbour office, +39 040 555 01 23',
      'emptying',
    ],
    ['permissionNumber', 'Pier head, permission number', 'Permit 4711', 'emptying'],
    ['contacts.c', 'Pier head, warden', 'warden: +39 040 555 99 99', 'removing'],
    ['checklist.k', 'Pier head, checklist', 'ring at number 12', 'removing'],
    ['surfaces.s.note', 'Pier head, wall, note', 'the Rossi house', 'emptying'],
    ['readings.r.note', 'Pier head, note', 'over the neighbour’s fence', 'emptying'],
    ['photos.p', 'Pier head, photo', 'IMG_2034.jpg, 1600 × 1067 px', 'removing'],
    ['photos.p.position', 'Pier head, IMG_2034.jpg, position', '45.6503, 13.7571', 'emptying'],
    ['photos.p.note', 'Pier head, IMG_2034.jpg, note', 'Anna’s parents live behind', 'emptying'],
  ])('%s is listed', (field, what, text, leftOutBy) => {
    expect(named(field)).toMatchObject([{ spotId: 'pier', field, what, text, leftOutBy }]);
  });

  test('a note that says nothing is not listed', () => {
    expect(named('powerNote')).toEqual([]);
  });

  test('the places of photos, and nothing else, go along only where they are asked for', () => {
    expect(contents.filter(({ onlyIfAsked }) => onlyIfAsked).map(({ field }) => field)).toEqual([
      'photos.p.position',
    ]);
  });

  test('what is left out is gone, and nothing else is', () => {
    const without = withoutContents(shoot, named('position', 'permissionNumber'));
    const pier = defined(shoot.spots['pier']);
    const place = { latitudeDeg: 45.65, longitudeDeg: -13.77 };
    expect(without).toEqual({
      ...shoot,
      spots: {
        ...shoot.spots,
        pier: {
          ...pier,
          ...place,
          terrain: { ...defined(pier.terrain), ...place },
          permissionNumber: '',
        },
      },
    });
    expect(JSON.stringify(without)).not.toContain('4711');
  });

  test('a photo left out takes its place and note along; its reading stays without it', () => {
    const without = defined(withoutContents(shoot, named('photos.p')).spots['pier']);
    expect(without.photos).toEqual({});
    expect(without.readings['r']).toMatchObject({ ev100: 13, photoId: null });
  });

  test('with its place left out a photo keeps everything else', () => {
    const without = defined(withoutContents(shoot, named('photos.p.position')).spots['pier']);
    expect(without.photos['p']).toEqual({ ...PHOTO, latitudeDeg: null, longitudeDeg: null });
  });

  test('whatever a shoot holds, with everything left out no typed text, photo or outline is left in it', () => {
    fc.assert(
      fc.property(shootWithKitArbitrary, ({ shoot: any }) => {
        const before = structuredClone(any);
        const without = withoutContents(any, sensitiveContents(any));
        expect(any).toEqual(before);
        expect(without.obstacles).toEqual({});
        expect(without.outlineSets).toEqual({});
        for (const spot of Object.values(without.spots)) {
          expect([spot.photos, spot.contacts, spot.checklist]).toEqual([{}, {}, {}]);
          for (const place of [spot, spot.terrain ?? spot])
            expect(place.latitudeDeg).toBeCloseTo(Math.round(place.latitudeDeg * 100) / 100, 9);
        }
        expect(typedTexts(without)).toEqual([]);
        expect(sensitiveContents(without).every(({ field }) => field === 'position')).toBe(true);
      }),
      { numRuns: 100 },
    );
  });
});

/** Texts under a name that ends as notes do, wherever they lie. */
const typedTexts = (value: unknown, key = ''): readonly string[] => {
  if (typeof value === 'string')
    return TYPED.test(key) && value.trim() !== '' ? [`${key}: ${value}`] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, child]) => typedTexts(child, name));
};

const TYPED = /^(?:.*note|.*origin|permissionNumber|permissionConditions|text|geoJson)$/i;
