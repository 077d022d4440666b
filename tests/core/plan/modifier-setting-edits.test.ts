import { produce } from 'immer';
import { describe, expect, test } from 'vitest';

import { demoKit } from '../../../src/core/plan/demo-kit.ts';
import { KIT } from '../../../src/core/plan/kit.ts';
import {
  editModifierSetting,
  putModifierSetting,
  removeModifierSetting,
} from '../../../src/core/plan/modifier-setting-edits.ts';

const narrow = { order: 'n', name: 'ring 3', beamDeg: 30, stops: -1.2 };

describe('the table of a focusing modifier', () => {
  test('takes a row, changes it and lets it go, the other modifiers untouched', () => {
    const before = demoKit();
    const added = produce(before, putModifierSetting('long-throw', 'ring-3', narrow));
    expect(added.modifiers['long-throw']?.settings['ring-3']).toEqual(narrow);
    expect(added.modifiers['reflector']).toBe(before.modifiers['reflector']);
    const changed = produce(added, editModifierSetting('long-throw', 'ring-3', { stops: -1 }));
    expect(changed.modifiers['long-throw']?.settings['ring-3']).toEqual({ ...narrow, stops: -1 });
    expect(produce(changed, removeModifierSetting('long-throw', 'ring-3'))).toEqual(before);
  });

  test('a modifier that is gone takes nothing', () => {
    const before = demoKit();
    expect(produce(before, putModifierSetting('gone', 'ring-3', narrow))).toBe(before);
    expect(produce(before, editModifierSetting('long-throw', 'gone', { stops: 1 }))).toBe(before);
  });

  test('a row belongs to the kit’s document as it is checked', () => {
    const added = produce(demoKit(), putModifierSetting('long-throw', 'ring-3', narrow));
    expect(KIT.safeParse(added).success).toBe(true);
  });
});
