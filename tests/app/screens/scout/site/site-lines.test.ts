import { describe, expect, test } from 'vitest';

import { siteLines } from '../../../../../src/app/screens/scout/site/site-lines.ts';
import {
  PERMISSION_WORDS,
  permissionGap,
} from '../../../../../src/app/screens/scout/site/site-words.ts';
import { demoSpots } from '../../../../../src/core/plan/demo-spots.ts';
import type { Spot } from '../../../../../src/core/plan/shoot.ts';
import { PERMISSIONS } from '../../../../../src/core/plan/spot-schema.ts';
import { defined } from '../../../../support/defined.ts';

const pier = (fields: Partial<Spot> = {}): Spot => ({ ...defined(demoSpots().pier), ...fields });
const line = (spot: Spot, name: string): string | undefined =>
  siteLines(spot).find(([one]) => one === name)?.[1];

describe('what is noted of a spot, in lines', () => {
  test('a permission says number, by whom, from, until and conditions', () => {
    const granted = pier({
      permission: 'granted',
      permissionNote: 'port office',
      permissionNumber: 'K 17',
      permissionFrom: '2027-05-10',
      permissionUntil: '2027-05-20',
      permissionConditions: 'no stands on the rails',
    });
    expect(line(granted, 'Permission')).toBe(
      'granted, port office, number K 17, from 2027-05-10, until 2027-05-20, no stands on the rails',
    );
  });

  test('no state of a permission reads as if none were needed', () => {
    for (const state of PERMISSIONS)
      expect(PERMISSION_WORDS[state]).not.toMatch(/not needed|not required|free|none/i);
  });

  test('the scouting list counts what is done and names what comes next', () => {
    const checklist = {
      one: { order: 'a', text: 'Skyline traced', done: true },
      two: { order: 'b', text: 'Sky read with the meter', done: false },
    };
    expect(line(pier({ checklist }), 'Scouting list')).toBe(
      '1 of 2 done, next: Sky read with the meter',
    );
  });

  test('a surface says what it is, what it reflects and where', () => {
    const surfaces = {
      wall: {
        order: 'a',
        name: 'Lime wash',
        kind: 'wall' as const,
        reflectance: 0.78,
        note: 'north',
      },
    };
    expect(line(pier({ surfaces }), 'Surfaces')).toBe('Lime wash (wall) 78 %, north');
  });

  test('what is not known has no line', () => {
    expect(line(pier(), 'Toilets')).toBeUndefined();
    expect(line(pier(), 'Shelter')).toBeUndefined();
  });
});

describe('a permission that does not cover the date says so', () => {
  const granted = {
    permission: 'granted',
    permissionFrom: '2027-05-10',
    permissionUntil: '2027-05-20',
  } as const;

  test.each([
    ['2027-05-09', 'granted only from 2027-05-10: not yet on 2027-05-09'],
    ['2027-05-21', 'granted only until 2027-05-20: no longer on 2027-05-21'],
    ['2027-05-10', null],
    ['2027-05-20', null],
  ])('on %s', (date, gap) => expect(permissionGap(granted, date)).toBe(gap));

  test('one that was only asked for has no dates to miss', () => {
    expect(permissionGap({ ...granted, permission: 'asked' }, '2027-06-01')).toBeNull();
  });
});
