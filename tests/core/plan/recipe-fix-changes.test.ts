import { produce } from 'immer';
import { describe, expect, test } from 'vitest';

import { editLight, editSetup, putKitItem } from '../../../src/core/plan/edits.ts';
import { GENERIC_LENSES } from '../../../src/core/plan/generic-kit.data.ts';
import { recipeFixChanges } from '../../../src/core/plan/recipe-fix-changes.ts';
import type { SetupCaseInput } from '../../../src/core/plan/setup-case.ts';
import type { SetupChange } from '../../../src/core/plan/setup-fix.ts';
import type { Fix } from '../../../src/core/strobe/recipe.ts';
import { defined } from '../../support/defined.ts';
import { caseOfMinute, demoMinute } from '../../support/demo-minute.ts';

/** The key stands at 2.9 m. */
const asked = demoMinute(
  'quartet',
  '19:00',
  'clear',
  editLight('quartet', 'key', { distanceM: 2.9 }),
);
const changes = (fix: Fix, input: SetupCaseInput = asked): readonly SetupChange[] =>
  recipeFixChanges(input, caseOfMinute(input), fix);
const distance: Fix = { kind: 'distance', value: 1.8, unit: 'm', lights: [0] };

describe('what a fix of the figures means for the setup', () => {
  test('a distance moves the light that stands at that place, unless it is pinned', () => {
    expect(changes(distance)).toEqual([
      { kind: 'distance', lightIds: ['key'], distanceM: 1.8, closer: true },
    ]);
    expect(changes({ ...distance, value: 4 })).toMatchObject([{ closer: false }]);
    const pinned = demoMinute(
      'quartet',
      '19:00',
      'clear',
      editLight('quartet', 'key', { distancePinned: true }),
    );
    expect(changes(distance, pinned)).toEqual([]);
    expect(changes({ ...distance, lights: [1] }, pinned)).toHaveLength(1);
  });

  test('a hold is spoken of in tenths and stays where it is pinned', () => {
    const fix: Fix = { kind: 'hold', value: 1.2000001, unit: 'stops' };
    expect(changes(fix)).toEqual([{ kind: 'hold', holdStops: 1.2, deeper: false }]);
    expect(changes({ ...fix, value: 3 })).toMatchObject([{ deeper: true }]);
    const pinned = demoMinute(
      'quartet',
      '19:00',
      'clear',
      editSetup('quartet', { holdPinned: true }),
    );
    expect(changes(fix, pinned)).toEqual([]);
  });

  test('a tripod lets the shutter be slower, unless the camera stands on one', () => {
    const fix: Fix = { kind: 'slower-shutter', value: 1 / 15, unit: 's' };
    expect(changes(fix)).toEqual([{ kind: 'tripod' }]);
    const stands = demoMinute('quartet', '19:00', 'clear', editSetup('quartet', { tripod: true }));
    expect(changes(fix, stands)).toEqual([]);
  });

  test('faster sync means the cameras and leaf shutters owned that do it, else the speed to look for', () => {
    const fix: Fix = { kind: 'sync-shutter', value: 1 / 500, unit: 's' };
    expect(changes(fix)).toEqual([{ kind: 'sync-shutter', shutterS: 1 / 500 }]);
    const camera = { ...defined(asked.kit.cameras.camera), name: 'Fast', syncShutterS: 1 / 500 };
    const leaf = {
      ...defined(GENERIC_LENSES.find(({ leafShutterS }) => leafShutterS !== null)),
      order: 'z',
    };
    const withCamera = produce(asked.kit, putKitItem('cameras', 'fast', camera));
    expect(changes(fix, { ...asked, kit: withCamera })).toEqual([
      { kind: 'camera', cameraId: 'fast', syncShutterS: 1 / 500 },
    ]);
    // Not at 35 mm, for which it is too long.
    const withLeaf = produce(asked.kit, putKitItem('lenses', 'leaf', leaf));
    expect(changes(fix, { ...asked, kit: withLeaf })).toMatchObject([{ kind: 'sync-shutter' }]);
    const short = produce(
      asked.kit,
      putKitItem('lenses', 'leaf', { ...leaf, minFocalLengthMm: 35 }),
    );
    expect(changes(fix, { ...asked, kit: short })).toEqual([
      { kind: 'lens', lensId: 'leaf', syncShutterS: 1 / 800 },
    ]);
    const slow = produce(
      asked.kit,
      putKitItem('cameras', 'fast', { ...camera, syncShutterS: 1 / 320 }),
    );
    expect(changes(fix, { ...asked, kit: slow })).toMatchObject([{ kind: 'sync-shutter' }]);
  });

  test('filters, light left out and pins given up keep their figures', () => {
    expect(changes({ kind: 'nd', value: 4, unit: 'stops' })).toEqual([{ kind: 'nd', stops: 4 }]);
    expect(changes({ kind: 'head-nd', value: 2, unit: 'stops', lights: [1] })).toEqual([
      { kind: 'head-nd', lightIds: ['fill'], stops: 2 },
    ]);
    expect(changes({ kind: 'leave-out', value: 1, unit: 'lights', lights: [1] })).toEqual([
      { kind: 'leave-out', lightIds: ['fill'] },
    ]);
    expect(changes({ kind: 'unlit-under', value: 1.4, unit: 'stops' })).toEqual([
      { kind: 'unlit-under', unlitUnderStops: 1.4 },
    ]);
    expect(changes({ kind: 'unpin-power', value: 0.7, unit: 'stops', lights: [0] })).toEqual([
      { kind: 'unpin', pin: 'power', lightIds: ['key'], costsStops: 0.7 },
    ]);
    for (const [kind, pin] of [
      ['unpin-shutter', 'shutter'],
      ['unpin-aperture', 'aperture'],
      ['unpin-iso', 'iso'],
      ['unpin-nd', 'filters'],
    ] as const)
      expect(changes({ kind, value: 1, unit: 'stops' })).toMatchObject([{ kind: 'unpin', pin }]);
  });
});
