import { describe, expect, test } from 'vitest';

import { demoShoot } from '../../src/core/plan/demo-shoot.ts';
import { editSpot } from '../../src/core/plan/edits.ts';
import { applyEdit } from '../../src/core/plan/history.ts';
import { sensitiveContents, withoutContents } from '../../src/exchange/sensitive-contents.ts';
import { defined } from '../support/defined.ts';

const shoot = applyEdit(
  demoShoot(),
  editSpot('pier', {
    latitudeDeg: 45.6503,
    longitudeDeg: -13.7671,
    permissionNote: 'Permit 4711, +39 040 555 01 23',
    powerNote: ' ',
  }),
).document;

const ofPier = sensitiveContents(shoot).filter(({ spotId }) => spotId === 'pier');

describe('what goes along with a shoot', () => {
  test('the position, the permission’s number and every note that says something are listed', () => {
    expect(ofPier).toContainEqual({
      spotId: 'pier',
      field: 'position',
      what: 'Pier head, position',
      text: '45.6503, -13.7671',
      leftOutBy: 'rounding',
    });
    expect(ofPier).toContainEqual({
      spotId: 'pier',
      field: 'permissionNote',
      what: 'Pier head, permission note',
      text: 'Permit 4711, +39 040 555 01 23',
      leftOutBy: 'emptying',
    });
    expect(ofPier.map(({ field }) => field)).not.toContain('powerNote');
  });

  test('every text that someone typed about a spot is on the list', () => {
    for (const [spotId, spot] of Object.entries(shoot.spots)) {
      const typed = Object.entries(spot)
        .filter(
          ([field, value]) =>
            (field.endsWith('Note') || field === 'skylineOrigin') &&
            typeof value === 'string' &&
            value.trim() !== '',
        )
        .map(([field]) => field);
      const listed: readonly string[] = sensitiveContents(shoot)
        .filter((content) => content.spotId === spotId && content.field !== 'position')
        .map(({ field }) => field);
      expect(listed.toSorted()).toEqual(typed.toSorted());
    }
  });

  test('what is left out is gone, and nothing else is', () => {
    const without = withoutContents(shoot, [
      { spotId: 'pier', field: 'position' },
      { spotId: 'pier', field: 'permissionNote' },
    ]);
    expect(without).toEqual({
      ...shoot,
      spots: {
        ...shoot.spots,
        pier: {
          ...defined(shoot.spots['pier']),
          latitudeDeg: 45.65,
          longitudeDeg: -13.77,
          permissionNote: '',
        },
      },
    });
    expect(JSON.stringify(without)).not.toContain('4711');
  });

  test('with everything left out no typed note is left', () => {
    const left = sensitiveContents(withoutContents(shoot, sensitiveContents(shoot)));
    expect(left.every(({ field }) => field === 'position')).toBe(true);
  });
});
