import { describe, expect, test } from 'vitest';

import { SKY_CONDITIONS } from '../../../src/core/daylight/sky-condition.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import {
  editLight,
  editSetup,
  editSetupFraming,
  removeLight,
} from '../../../src/core/plan/edits.ts';
import { setupView, type SetupView } from '../../../src/core/plan/setup-view.ts';
import { HOLD_REFERENCES } from '../../../src/core/plan/setup-schema.ts';
import { demoMinute, viewOfMinute } from '../../support/demo-minute.ts';

const answer = (view: SetupView) => {
  if (!view.answer.ok) throw new Error(`expected a recipe, found ${view.answer.problem.kind}`);
  return view.answer.value;
};

const aside = (angleDeg: number): readonly string[] =>
  viewOfMinute(
    demoMinute('cello', '18:00', 'haze', editLight('cello', 'key', { angleDeg, distanceM: 3 })),
  ).lightsInFrame;

describe('a setup at a minute', () => {
  test('says what is missing instead of guessing', () => {
    const asked = demoMinute('quartet', '20:00', 'clear');
    expect(setupView({ ...asked, setupId: 'gone' })).toEqual({
      ok: false,
      problem: { kind: 'gone' },
    });
    const noHead = demoMinute(
      'quartet',
      '20:00',
      'clear',
      editLight('quartet', 'key', { headId: 'x' }),
    );
    expect(setupView(noHead)).toEqual({
      ok: false,
      problem: { kind: 'not-in-kit', what: 'head', id: 'x' },
    });
    const ground = demoMinute(
      'quartet',
      '20:00',
      'clear',
      editSetupFraming('quartet', { tiltDeg: -60 }),
    );
    expect(setupView(ground)).toEqual({ ok: false, problem: { kind: 'no-sky' } });
  });

  test.each(SKY_CONDITIONS)(
    'every recipe of the demo through a day lands by the second path, %s',
    (condition) => {
      for (const setupId of Object.keys(demoShoot().setups))
        for (const clock of [
          '06:00',
          '07:30',
          '09:00',
          '12:00',
          '15:00',
          '18:00',
          '20:20',
          '20:45',
          '21:00',
        ]) {
          const view = setupView(demoMinute(setupId, clock, condition));
          expect(view.ok, `${setupId} ${clock}`).toBe(true);
          if (!view.ok || !view.value.answer.ok) continue;
          const { forward, recipe } = view.value.answer.value;
          expect(forward.worstStops).toBeLessThanOrEqual(1 / 6 + 1e-4);
          expect(recipe.inHandStops).toBeGreaterThanOrEqual(-1e-6);
          expect(recipe.unlitOutStops).toBeLessThanOrEqual(
            -view.value.setup.unlitUnderStops + 1 / 6 + 1e-6,
          );
        }
    },
  );

  test('a hold counted from another reference and asked for there is the same camera setting', () => {
    const from = viewOfMinute(demoMinute('quartet', '20:42', 'broken-cloud'));
    for (const under of HOLD_REFERENCES) {
      const asked = demoMinute(
        'quartet',
        '20:42',
        'broken-cloud',
        editSetup('quartet', { holdUnder: under, holdStops: from.hold[under] }),
      );
      const to = viewOfMinute(asked);
      expect(to.referenceEv + to.setup.holdStops).toBeCloseTo(from.referenceEv + 2, 9);
      for (const other of HOLD_REFERENCES) expect(to.hold[other]).toBeCloseTo(from.hold[other], 9);
    }
  });

  test('what is in hand at the bright end is what is in hand less the spread of the reference', () => {
    const view = viewOfMinute(demoMinute('quartet', '20:00', 'broken-cloud'));
    const { recipe, brightEndInHandStops } = answer(view);
    // Broken cloud: level ±1.0, patch ±1.2.
    expect(view.referenceSpreadStops).toBeCloseTo(Math.hypot(1, 1.2), 9);
    expect(brightEndInHandStops).toBeCloseTo(recipe.inHandStops - Math.hypot(1, 1.2), 9);
    const byIncident = viewOfMinute(
      demoMinute(
        'quartet',
        '20:42',
        'broken-cloud',
        editSetup('quartet', { holdUnder: 'incident', holdStops: 8 }),
      ),
    );
    expect(byIncident.referenceSpreadStops).toBe(1);
  });

  test('the light that empties first is the one with the fewest pops per charge', () => {
    for (const [setupId, clock] of [
      ['quartet', '20:42'],
      ['two-violins', '07:30'],
      ['viola', '18:20'],
    ] as const) {
      const { pace, emptiesFirstLightId } = answer(
        viewOfMinute(demoMinute(setupId, clock, 'broken-cloud')),
      );
      const [first] = pace.toSorted((one, other) => one.popsPerCharge - other.popsPerCharge);
      expect(emptiesFirstLightId).toBe(first?.lightId);
    }
  });

  test('the filters it names are those of the kit that take what the recipe says', () => {
    const clear = answer(viewOfMinute(demoMinute('two-violins', '07:30', 'clear')));
    expect(clear.filters.reduce((sum, { stops }) => sum + stops, 0)).toBe(clear.recipe.ndStops);
    const pinned = demoMinute(
      'quartet',
      '20:42',
      'broken-cloud',
      editSetup('quartet', { pinnedFilterIds: { 'nd-3': true } }),
    );
    expect(answer(viewOfMinute(pinned)).filters.map(({ name }) => name)).toEqual(['ND 3 stops']);
  });

  test('a panel takes the beam off the face and leaves the light of the sky', () => {
    const sunny = viewOfMinute(demoMinute('cello', '13:00', 'clear'));
    const shaded = viewOfMinute(
      demoMinute('cello', '13:00', 'clear', editSetup('cello', { shaded: true })),
    );
    const { planeLux, beamPlaneLux } = sunny.light.subject;
    expect(beamPlaneLux).toBeGreaterThan(planeLux / 2);
    expect(sunny.input.ambientOutEv).toBeCloseTo(Math.log2(planeLux / 2.5), 9);
    for (const ev of [shaded.input.ambientOutEv, shaded.input.ambientOnSubjectEv])
      expect(ev).toBeCloseTo(Math.log2((planeLux - beamPlaneLux) / 2.5), 9);
    expect(shaded.referenceEv).toBe(sunny.referenceEv);
  });

  test('lights whose face stands in the picture are named', () => {
    expect(aside(0)).toEqual(['key']);
    expect(aside(100)).toEqual([]);
  });

  test('a setup without lights holds any sky and says that no role runs out', () => {
    const bare = demoMinute('cello', '18:00', 'haze', removeLight('cello', 'key'));
    const view = viewOfMinute(bare);
    if (view.answer.ok) expect(view.answer.value.recipe.limitingRole).toBeNull();
    else expect(view.answer.problem.kind).not.toBe('sky-above-reach');
  });
});
