import { produce } from 'immer';
import { describe, expect, test } from 'vitest';

import { isNeutral } from '../../../src/core/colour/seen-light.ts';
import {
  filterChoices,
  gelChoices,
  type ColourChoice,
} from '../../../src/core/plan/colour-choices.ts';
import { editLight, editSetup, type Edit } from '../../../src/core/plan/edits.ts';
import type { Gel, Kit } from '../../../src/core/plan/kit.ts';
import { seenLights } from '../../../src/core/plan/seen-lights.ts';
import type { SetupCaseInput } from '../../../src/core/plan/setup-case.ts';
import type { SetupView } from '../../../src/core/plan/setup-view.ts';
import type { Shoot } from '../../../src/core/plan/shoot.ts';
import { defined } from '../../support/defined.ts';
import { demoMinute, viewOfMinute } from '../../support/demo-minute.ts';

const gel = (name: string, stops: number, miredShift: number, greenStops = 0): Gel => ({
  order: name,
  name,
  stops,
  miredShift,
  greenStops,
});

const gels = {
  full: gel('Full CTO', 1.1, 167),
  'three-quarter': gel('3/4 CTO', 0.8, 131),
  half: gel('1/2 CTO', 0.45, 81),
  blue: gel('1/2 CTB', 0.9, -68),
  green: gel('Window green', 0.5, 0, 0.7),
};

const kitWith = (kit: Kit): Kit =>
  produce(kit, (draft) => {
    draft.gels = { ...gels };
    for (const head of Object.values(draft.heads)) head.flashKelvin = 5500;
    draft.filters['magenta'] = {
      ...defined(draft.filters['blue-80a']),
      name: 'Magenta 30',
      stops: 0.5,
      miredShift: 0,
      greenStops: -0.7,
    };
  });

const asked = (...edits: readonly Edit<Shoot>[]): SetupCaseInput => {
  const minute = demoMinute(
    'quartet',
    '20:00',
    'clear',
    editSetup('quartet', {
      people: 1,
      holdStops: 0.5,
      ambientKelvin: 5500,
      whiteBalanceKelvin: 5500,
    }),
    editLight('quartet', 'key', { distanceM: 2 }),
    editLight('quartet', 'fill', { distanceM: 2 }),
    ...edits,
  );
  return { ...minute, kit: kitWith(minute.kit) };
};

const seen = (
  minute: SetupCaseInput,
): { readonly asked: SetupCaseInput; readonly view: SetupView } => ({
  asked: minute,
  view: viewOfMinute(minute),
});

const after = (minute: SetupCaseInput, { edit }: ColourChoice): SetupView =>
  viewOfMinute({ ...minute, shoot: produce(minute.shoot, (draft) => edit(draft)) });

describe('gels that make the ambient bluer and leave the skin neutral', () => {
  test('131 mired bluer than daylight: three quarters CTO and 3200 K', () => {
    // Lighting handbook recipe: 3/4 CTO on the flash, white balance 3200 K, the sky turns blue.
    const [best] = gelChoices(seen(asked()), 131);
    expect(best?.gelIds).toEqual(['three-quarter']);
    expect(Math.abs(defined(best).whiteBalance.kelvin - 3200)).toBeLessThan(25);
    expect(Math.abs(defined(best).ambient.warmerMired + 131)).toBeLessThan(2);
    expect(isNeutral(defined(best).skin)).toBe(true);
  });

  test('162 mired: two half CTO on each other and 2910 K', () => {
    // Stacked gels add: 81 + 81 on 5500 K leave 2909 K.
    const [best] = gelChoices(seen(asked()), 162);
    expect(best?.gelIds).toEqual(['half', 'half']);
    expect(Math.abs(defined(best).whiteBalance.kelvin - 2909)).toBeLessThan(15);
    expect(best?.gelStops).toBeCloseTo(0.9, 9);
  });

  test('warmer takes blue on the flash', () =>
    expect(gelChoices(seen(asked()), -68)[0]?.gelIds).toEqual(['blue']));

  test('each costs its stops of what is in hand, and is solved so', () => {
    const minute = asked();
    const { view } = seen(minute);
    if (!view.answer.ok) throw new Error('expected a recipe');
    const { inHandStops } = view.answer.value.recipe;
    for (const choice of gelChoices({ asked: minute, view }, 131)) {
      expect(choice.inHandStops).toBeCloseTo(inHandStops - choice.gelStops, 1);
      const now = after(minute, choice);
      if (now.answer.ok)
        expect(now.answer.value.recipe.inHandStops).toBeCloseTo(defined(choice.inHandStops), 9);
      else expect(choice.works).toBe(false);
    }
  });

  test('used, the key and the fill look as was said, in one edit', () => {
    const minute = asked();
    const choice = defined(gelChoices(seen(minute), 131)[0]);
    const view = after(minute, choice);
    const { sources, ambient } = seenLights(view, minute.kit);
    expect(sources.map(({ role }) => role)).toEqual(['key', 'fill']);
    for (const { seen: look } of sources) expect(isNeutral(look)).toBe(true);
    expect(ambient.warmerMired).toBeCloseTo(choice.ambient.warmerMired, 6);
  });

  test('a green gel is balanced by the tint', () => {
    const minute = asked();
    const only = {
      ...minute,
      kit: produce(minute.kit, (draft) => void (draft.gels = { green: gels.green })),
    };
    const choice = defined(gelChoices(seen(only), 0).find(({ gelIds }) => gelIds.length === 1));
    expect(choice.whiteBalance.tint).toBeGreaterThan(5);
    expect(isNeutral(choice.skin)).toBe(true);
    expect(choice.ambient.greener).toBeLessThan(-5);
  });

  test('nothing is offered that the camera cannot be set to', () => {
    const minute = asked();
    const kit = produce(
      minute.kit,
      (draft) => void (defined(draft.cameras.camera).minKelvin = 4000),
    );
    for (const { whiteBalance } of gelChoices(seen({ ...minute, kit }), 167))
      expect(whiteBalance.kelvin).toBeGreaterThanOrEqual(4000);
  });

  test('behind a blue filter the white balance is the filter’s too, and no more than the camera has', () => {
    const minute = asked(editSetup('quartet', { pinnedFilterIds: { 'blue-80a': true } }));
    const { maxKelvin } = defined(minute.kit.cameras.camera);
    const choices = gelChoices(seen(minute), 131);
    expect(choices.length).toBeGreaterThan(0);
    for (const { whiteBalance, skin } of choices) {
      expect(whiteBalance.kelvin).toBeLessThanOrEqual(maxKelvin);
      expect(isNeutral(skin)).toBe(true);
    }
    // −131 and three quarters CTO: the flash is daylight again.
    const best = defined(choices.find(({ gelIds }) => gelIds.join() === 'three-quarter'));
    expect(Math.abs(best.whiteBalance.kelvin - 5500)).toBeLessThan(40);
  });

  test('a setup without a key gets none', () => {
    const minute = asked(editLight('quartet', 'key', { role: 'background' }));
    expect(gelChoices(seen(minute), 80)).toEqual([]);
    expect(filterChoices(seen(minute))).toEqual([]);
  });
});

const ofFilter = (id: string, minute = asked()): ColourChoice =>
  defined(filterChoices(seen(minute)).find(({ filterId }) => filterId === id));

describe('a colour filter on the lens with its complement on the flash', () => {
  test('80A takes three quarters CTO: 131 mired each way', () => {
    // Light-balancing filter 80A −131 mired, 3/4 CTO +131; practice: 80A with CTO, a deep blue sky.
    const choice = ofFilter('blue-80a');
    expect(choice.gelIds).toEqual(['three-quarter']);
    expect(isNeutral(choice.skin)).toBe(true);
    expect(Math.abs(choice.ambient.warmerMired + 131)).toBeLessThan(2);
  });

  test('a magenta filter takes window green: normal skin, a magenta sky', () => {
    // A practitioner's recipe of 2014: lens filter 30 magenta and a full window-green gel.
    const choice = ofFilter('magenta');
    expect(choice.gelIds).toEqual(['green']);
    expect(isNeutral(choice.skin)).toBe(true);
    expect(choice.ambient.greener).toBeLessThan(-5);
  });

  test('the filter costs flash and ambient alike, the gel the flash alone', () => {
    const minute = asked(editSetup('quartet', { pinnedFilterIds: {} }));
    const { view } = seen(minute);
    if (!view.answer.ok) throw new Error('expected a recipe');
    const choice = ofFilter('blue-80a', minute);
    expect(choice.inHandStops).toBeCloseTo(view.answer.value.recipe.inHandStops - 0.8, 1);
  });

  test('used, the filter is on the lens, the white balance stays and the skin is neutral', () => {
    const minute = asked(editSetup('quartet', { pinnedFilterIds: { 'nd-2': true } }));
    const view = after(minute, ofFilter('blue-80a', minute));
    expect(view.setup.pinnedFilterIds).toEqual({ 'nd-2': true, 'blue-80a': true });
    expect(view.setup.whiteBalanceKelvin).toBe(5500);
    for (const { seen: look } of seenLights(view, minute.kit).sources)
      expect(isNeutral(look)).toBe(true);
  });
});

const under = (whiteBalanceKelvin: number) => {
  const minute = asked(editSetup('quartet', { whiteBalanceKelvin, ambientKelvin: 5600 }));
  return seenLights(viewOfMinute(minute), minute.kit);
};

const kelvin = (...edits: readonly Edit<Shoot>[]): number => {
  const minute = demoMinute(
    'cello',
    '16:30',
    'clear',
    editSetup('cello', { ambientKelvin: null }),
    ...edits,
  );
  return seenLights(viewOfMinute(minute), minute.kit).ambientKelvin;
};

const of = (minute: SetupCaseInput) => seenLights(viewOfMinute(minute), minute.kit);

describe('what the lights look like under the white balance', () => {
  test('a tungsten setting over daylight: everything 134 mired bluer at 5600 K', () => {
    // 'Art of the Mired': 3200 K over 5600 K is −134 mired.
    expect(Math.abs(under(3200).ambient.warmerMired + 134)).toBeLessThan(0.5);
    // 1e6/3200 − 1e6/5500 = 130.7, whatever the sky.
    expect(under(3200).sky.warmerMired - under(5500).sky.warmerMired).toBeCloseTo(-130.7, 1);
  });

  test('without a stated colour the ambient follows the sky: bluer in open shade than in the sun', () => {
    expect(kelvin(editSetup('cello', { shaded: true }))).toBeGreaterThan(kelvin() + 500);
  });

  test('a blue filter on the lens makes every light bluer', () => {
    const bare = asked(editSetup('quartet', { pinnedFilterIds: {} }));
    const blue = asked(editSetup('quartet', { pinnedFilterIds: { 'blue-80a': true } }));
    for (const [place, { seen: look }] of of(blue).sources.entries())
      expect(look.warmerMired - defined(of(bare).sources[place]).seen.warmerMired).toBeCloseTo(
        -131,
        0,
      );
    expect(of(blue).sky.warmerMired).toBeLessThan(of(bare).sky.warmerMired - 5);
  });
});
