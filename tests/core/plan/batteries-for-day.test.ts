import fc from 'fast-check';
import { produce } from 'immer';
import { describe, expect, test } from 'vitest';

import { batteriesFor, batteriesForDay } from '../../../src/core/plan/batteries-for-day.ts';
import { demoKit } from '../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import type { Head, Kit } from '../../../src/core/plan/kit.ts';
import { solvedDay, type SolvedSetup } from '../../../src/core/plan/solved-day.ts';
import type { Setup } from '../../../src/core/plan/setup-schema.ts';
import { defined } from '../../support/defined.ts';

const kitWith = (fields: Partial<Head>, owned = 1): Kit =>
  produce(demoKit(), (kit) => {
    Object.assign(defined(kit.heads['head-600']), { name: 'the 600 Ws head', ...fields });
    defined(kit.batteries['battery-90']).owned = owned;
  });

/** The cello's setup, one head, without a recipe: every frame counts at full power. */
const atFull = (fields: Partial<Setup>, headCount = 1): SolvedSetup => {
  const setup = produce(defined(demoShoot().setups['cello']), (draft) => {
    Object.assign(draft, { airC: 20, ...fields });
    defined(draft.lights['key']).headCount = headCount;
  });
  return { setupId: 'cello', setup, views: [] };
};

describe('batteries by the rule frames × power over rated pops', () => {
  const kit = kitWith({ popsPerCharge: 100 });

  test('140 full frames on packs of 100: 1.4 charges, 2 batteries, one owned: short by one', () => {
    const [need] = batteriesFor([atFull({ frames: 140 })], kit);
    expect(defined(need)).toMatchObject({ needed: 2, owned: 1, shortBy: 1, inHeads: 1 });
    expect(defined(defined(need).heads[0]).units[0]?.middle).toBeCloseTo(1.4, 9);
  });

  test('at freezing 0.65 of a charge is left: the same frames take 2.2 and a third battery', () => {
    // Middle of 0.5 to 0.8, published ranges of practitioners.
    const [need] = batteriesFor([atFull({ frames: 140, airC: 0 })], kit);
    expect(defined(need).heads[0]?.units[0]?.middle).toBeCloseTo(1.4 / 0.65, 9);
    expect(defined(need).needed).toBe(3);
    expect(defined(need).neededAtMost).toBeGreaterThan(3);
  });

  test('two heads in one light fire every frame: each empties a battery of its own', () => {
    const [need] = batteriesFor([atFull({ frames: 40 }, 2)], kit);
    expect(defined(need).heads[0]?.units.map(({ middle }) => middle)).toEqual([0.4, 0.4]);
    expect(defined(need)).toMatchObject({ needed: 2, inHeads: 2 });
  });

  test('the day adds up over its setups', () => {
    const [need] = batteriesFor([atFull({ frames: 60 }), atFull({ frames: 70 })], kit);
    expect(defined(need).heads[0]?.units[0]?.middle).toBeCloseTo(1.3, 9);
    expect(defined(need).needed).toBe(2);
  });

  test('heads on the same battery share what is owned', () => {
    const both = produce(kitWith({}), (draft) => {
      defined(draft.heads['head-400']).batteryId = 'battery-90';
    });
    const [need] = batteriesForDay(demoShoot(), both);
    expect(defined(need).heads.map(({ headId }) => headId)).toEqual(['head-600', 'head-400']);
    expect(defined(need)).toMatchObject({ needed: 2, inHeads: 2, shortBy: 1 });
  });

  test('a battery that is not named is counted, and nothing is said of what is owned', () => {
    const [need] = batteriesFor(
      [atFull({ frames: 140 })],
      kitWith({ popsPerCharge: 100, batteryId: null }),
    );
    expect(defined(need)).toMatchObject({ battery: null, owned: null, needed: 2, shortBy: 0 });
  });

  test('colder or more frames never take fewer batteries, and the span holds the middle', () =>
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 900 }),
        fc.integer({ min: 0, max: 300 }),
        fc.integer({ min: -20, max: 30 }),
        fc.integer({ min: 0, max: 20 }),
        (frames, moreFrames, airC, colder) => {
          const [mild] = batteriesFor([atFull({ frames, airC })], kit);
          const [harder] = batteriesFor(
            [atFull({ frames: frames + moreFrames, airC: airC - colder })],
            kit,
          );
          expect(defined(harder).needed).toBeGreaterThanOrEqual(defined(mild).needed);
          const unit = defined(defined(mild).heads[0]?.units[0]);
          expect(unit.least).toBeLessThanOrEqual(unit.middle);
          expect(unit.most).toBeGreaterThanOrEqual(unit.middle);
        },
      ),
    ));
});

describe('batteries of the demo’s day', () => {
  const shoot = produce(demoShoot(), (draft) => {
    for (const setup of Object.values(draft.setups)) Object.assign(setup, { airC: 20, frames: 90 });
  });
  const kit = demoKit();
  const solved = solvedDay(shoot, kit);

  test('each head gives what its recipes ask at the brighter of first and last frame', () => {
    for (const need of batteriesForDay(shoot, kit, solved))
      for (const { headId, head, units } of need.heads) {
        let expected = 0;
        for (const { setup, views } of solved)
          for (const [lightId, light] of Object.entries(setup.lights)) {
            if (light.headId !== headId) continue;
            const powers = views.flatMap(({ answer, sources }) => {
              const place = sources.findIndex((source) => source.lightId === lightId);
              return answer.ok ? [defined(answer.value.recipe.lights[place]).powerStops] : [];
            });
            const share = powers.length === 0 ? 1 : 2 ** Math.max(...powers);
            expected += (90 * Math.max(1 / 32, share)) / head.popsPerCharge;
          }
        expect(defined(units[0]).middle).toBeCloseTo(expected, 9);
      }
  });

  test('some recipe of it really counts below full power', () => {
    const powers = solved.flatMap(({ views }) =>
      views.flatMap(({ answer }) =>
        answer.ok ? answer.value.recipe.lights.map(({ powerStops }) => powerStops) : [],
      ),
    );
    expect(Math.min(...powers)).toBeLessThan(-0.5);
  });
});
