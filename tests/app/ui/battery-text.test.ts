import { produce } from 'immer';
import { describe, expect, test } from 'vitest';

import { batteryNeedText } from '../../../src/app/ui/battery-text.ts';
import { batteriesFor } from '../../../src/core/plan/batteries-for-day.ts';
import { demoKit } from '../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import type { Setup } from '../../../src/core/plan/setup-schema.ts';
import { defined } from '../../support/defined.ts';

const said = (fields: Partial<Setup>, batteryId: string | null = 'battery-90'): string => {
  const kit = produce(demoKit(), (draft) => {
    Object.assign(defined(draft.heads['head-600']), { popsPerCharge: 100, batteryId });
  });
  const setup = { ...defined(demoShoot().setups['cello']), airC: 20, ...fields };
  return batteriesFor([{ setupId: 'cello', setup, views: [] }], kit)
    .map(batteryNeedText)
    .join('. ');
};

describe('what is said of batteries', () => {
  test('charges with their span, batteries, what is owned and what is missing', () => {
    expect(said({ frames: 140 })).toBe(
      'Battery head, 600 Ws: 1.4 charges (1.3 to 1.6), lights without a recipe counted at full power: 2 batteries, you own 1: short by 1',
    );
  });

  test('one that suffices, and the far end where that takes one more', () => {
    expect(said({ frames: 50 })).toMatch(/: 1 battery, you own 1$/);
    expect(said({ frames: 95 })).toMatch(/: 1 battery, you own 1, 2 at the far end$/);
  });

  test('a battery that is not named', () => {
    expect(said({ frames: 50 }, null)).toMatch(
      /: 1 battery; which battery it takes is not in the kit$/,
    );
  });
});
