import { produce } from 'immer';
import { describe, expect, test } from 'vitest';

import { demoKit } from '../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import type { Kit, Reading } from '../../../src/core/plan/kit.ts';
import { readingDoubt, readingEffect } from '../../../src/core/plan/reading-effect.ts';
import { setupView } from '../../../src/core/plan/setup-view.ts';
import { framesOf } from '../../../src/core/plan/solved-day.ts';
import { defined } from '../../support/defined.ts';
import { largestError } from '../../support/largest-error.ts';

const FOOT_M = 0.3048;
const reading = (fields: Partial<Reading>): Reading => ({
  fNumber: 16,
  iso: 100,
  distanceM: 2,
  ambientFNumber: null,
  powerStops: 0,
  diffuser: false,
  baffle: false,
  grid: false,
  ...fields,
});

describe('a reading against the rated figure', () => {
  test('rated 125 ft, metered f/16 + 0.9 at 6 ft and ISO 200: 0.86 stop less than rated', () => {
    // A practitioner's measured table, 'Numbers: show me the numbers': really 93 ft.
    const error = largestError('metered against rated, a published shot', 'stop');
    const kit = produce(demoKit(), (draft) => {
      Object.assign(defined(draft.heads['head-400']), { guideNumberM: 125 * FOOT_M });
      Object.assign(defined(draft.modifiers['umbrella']), {
        lossStops: 0,
        widthM: 0.05,
        heightM: 0.05,
      });
    });
    const effect = readingEffect(
      { shoot: demoShoot(), kit },
      {
        headId: 'head-400',
        modifierId: 'umbrella',
        reading: reading({ fNumber: 16 * 2 ** 0.45, iso: 200, distanceM: 6 * FOOT_M }),
      },
    );
    // Rounded to a tenth of a stop on the meter and to a foot in print.
    expect(error(defined(effect ?? undefined).changedStops + 0.86)).toBeLessThan(0.05);
    expect(effect?.after.origin).toBe('metered');
    expect(defined(effect ?? undefined).after.spreadStops).toBeLessThan(
      defined(effect ?? undefined).before.spreadStops,
    );
  });
});

describe('what a reading changes in the setups', () => {
  const shoot = demoShoot();
  const kit = demoKit();
  const through = { headId: 'head-400', modifierId: 'umbrella' };
  const keptIn = (reads: Reading): Kit =>
    produce(kit, (draft) => {
      defined(draft.heads['head-400']).readings['umbrella'] = reads;
    });

  test('names the setups that use this head through this modifier, and no other', () => {
    const effect = readingEffect({ shoot, kit }, { ...through, reading: reading({}) });
    expect(effect?.setups.map(({ setupId }) => setupId)).toEqual(['viola', 'quartet']);
  });

  test('says before keeping what keeping shows', () => {
    const reads = reading({ fNumber: 11 });
    const effect = readingEffect({ shoot, kit }, { ...through, reading: reads });
    for (const { setupId, after } of defined(effect ?? undefined).setups) {
      const [instantMs] = framesOf(shoot, defined(shoot.setups[setupId]));
      const seen = setupView({
        shoot,
        kit: keptIn(reads),
        setupId,
        instantMs: defined(instantMs),
      });
      if (!seen.ok) throw new Error('expected a view');
      const { answer } = seen.value;
      expect(after.works).toBe(answer.ok);
      if (answer.ok) expect(after.inHandStops).toBe(answer.value.recipe.inHandStops);
      else if (answer.problem.kind === 'sky-above-reach')
        expect(after.inHandStops).toBeCloseTo(-answer.problem.shortByStops, 6);
    }
  });

  const effectOf = (fNumber: number) =>
    defined(
      readingEffect({ shoot, kit }, { ...through, reading: reading({ fNumber }) }) ?? undefined,
    );
  test('a brighter reading never leaves less in hand, a darker one never more', () => {
    const [dark, bright] = [effectOf(4), effectOf(32)];
    expect(bright.changedStops - dark.changedStops).toBeCloseTo(6, 9);
    dark.setups.forEach(({ after }, place) => {
      expect(defined(bright.setups[place]).after.inHandStops).toBeGreaterThan(after.inHandStops);
    });
  });

  test('dropping the one metered shot of the demo widens what is known', () => {
    const effect = defined(
      readingEffect(
        { shoot, kit },
        { headId: 'head-600', modifierId: 'reflector', reading: null },
      ) ?? undefined,
    );
    expect(effect.before.origin).toBe('metered');
    expect(effect.after.origin).toBe('guide-number');
    for (const { before, after } of effect.setups)
      expect(after.spreadStops).toBeGreaterThan(before.spreadStops + 0.5);
  });

  test('a head that is not in the kit has no effect', () => {
    expect(
      readingEffect({ shoot, kit }, { headId: 'gone', modifierId: 'umbrella', reading: null }),
    ).toBeNull();
  });
});

describe('a reading to doubt', () => {
  test('half ambient, or far from what was thought, is said; a clean one is not', () => {
    expect(readingDoubt({ fNumber: 11, ambientFNumber: 8 }, 0)).toMatch(/^Ambient is 53 %/);
    expect(readingDoubt({ fNumber: 11, ambientFNumber: 4 }, -3)).toMatch(/^That is 3.0 stops less/);
    expect(readingDoubt({ fNumber: 11, ambientFNumber: null }, -0.9)).toBeNull();
  });
});
