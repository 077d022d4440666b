import { produce } from 'immer';
import { describe, expect, test } from 'vitest';

import { demoKit } from '../../../src/core/plan/demo-kit.ts';
import { editLight, editSetup } from '../../../src/core/plan/edits.ts';
import type { SetupSource } from '../../../src/core/plan/setup-source.ts';
import { inWind } from '../../../src/core/plan/stand-in-wind.ts';
import { blockedByWind, windVersions } from '../../../src/core/plan/wind-versions.ts';
import { defined } from '../../support/defined.ts';
import { caseOfMinute, demoMinute, viewOfMinute } from '../../support/demo-minute.ts';
import { afterEdit } from '../../support/fix-law.ts';
import { fixEdit } from '../../../src/core/plan/setup-fix.ts';

const kit = demoKit();
/** A box of 0.8 m² at 2.2 m on legs that lever 0.25 m, as the worked example has it; nothing weighs. */
const example = {
  carrier: { ...defined(kit.stands['stand-light']), legSpreadM: 0.5, massKg: 0, maxGustMS: 12 },
  head: { ...defined(kit.heads['head-600']), massKg: 0 },
  modifier: {
    ...defined(kit.modifiers.octabox),
    widthM: 0.8,
    heightM: 1,
    round: false,
    massKg: 0,
  },
  light: {
    ...defined(caseOfMinute(demoMinute('quartet', '20:00', 'clear')).sources[0]).light,
    heightM: 2.2,
  },
};

describe('what a stand is weighed down with', () => {
  // J8: 13, 34, 53 kg at the middle; half way out on the windward leg the lever is 0.5 m, not 0.25.
  test.each([
    [5, 13 / 2],
    [8, 34 / 2],
    [10, 53 / 2],
  ])('0.8 m² at 2.2 m in %d m/s: half of what hangs at the middle, about %d kg', (gustMS, kg) => {
    const wind = inWind(example, gustMS);
    if (wind.kind !== 'ballast') throw new Error(wind.kind);
    // The example rounds to a kilogram.
    expect(Math.abs(wind.ballastKg - kg)).toBeLessThan(0.5);
    expect(wind.gustMS).toBe(gustMS);
  });

  test('no kilogram without a wind, none without a stand, none above the limit', () => {
    expect(inWind(example, null)).toEqual({ kind: 'wind-not-known' });
    expect(inWind({ ...example, carrier: null }, 8)).toEqual({ kind: 'no-stand' });
    expect(inWind(example, 13)).toEqual({ kind: 'above-limit', gustMS: 13, maxGustMS: 12 });
    expect(inWind(example, 12).kind).toBe('ballast');
  });

  test('the weight of stand, head and modifier counts; a round face has π/4 of its square', () => {
    const heavy = inWind({ ...example, head: { ...example.head, massKg: 40 } }, 5);
    expect(heavy).toMatchObject({ kind: 'ballast', ballastKg: 0 });
    const round = inWind({ ...example, modifier: { ...example.modifier, round: true } }, 5);
    expect(round).toMatchObject({ sailAreaM2: 0.2 * Math.PI });
  });
});

describe('a gust above what the stand is put up in', () => {
  const stormy = demoMinute(
    'viola',
    '20:20',
    'clear',
    editSetup('viola', { gustMS: 9 }),
    editLight('viola', 'key', { standId: 'stand-light' }),
    editLight('viola', 'fill', { standId: 'stand-heavy' }),
  );
  const base = caseOfMinute(stormy);

  test('blocks that light alone', () => {
    expect(blockedByWind(base).map(({ lightId }: SetupSource) => lightId)).toEqual(['key']);
    const calm = caseOfMinute({
      ...stormy,
      shoot: produce(stormy.shoot, editSetup('viola', { gustMS: null })),
    });
    expect(blockedByWind(calm)).toEqual([]);
  });

  test('has the smallest modifier on a stand that bears it, and in the hand, each solved again', () => {
    const versions = windVersions(stormy, base, 'key');
    expect(versions.map(({ changes }) => changes[0])).toMatchObject([
      { kind: 'stand', standId: 'stand-heavy', modifierId: 'reflector' },
      { kind: 'stand', standId: null, modifierId: 'reflector' },
    ]);
    for (const version of versions) {
      const after = defined(afterEdit(stormy, defined(fixEdit('viola', version))));
      expect(blockedByWind(after)).toEqual([]);
      expect(after.answer.ok).toBe(version.problem === null);
      if (after.answer.ok)
        expect(after.answer.value.recipe.inHandStops).toBeCloseTo(version.inHandStops, 6);
      // A small hard reflector brings more light than the box did.
      const before = viewOfMinute(stormy).answer;
      if (before.ok) expect(version.inHandStops).toBeGreaterThan(before.value.recipe.inHandStops);
    }
  });

  test('keeps a modifier that is pinned', () => {
    const pinned = {
      ...stormy,
      shoot: produce(stormy.shoot, editLight('viola', 'key', { modifierPinned: true })),
    };
    const versions = windVersions(pinned, caseOfMinute(pinned), 'key');
    for (const { changes } of versions)
      expect(changes[0]).toMatchObject({ modifierId: 'octabox', light: { diffuser: true } });
  });
});
