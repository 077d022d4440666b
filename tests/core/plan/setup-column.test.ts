import { produce } from 'immer';
import { describe, expect, test } from 'vitest';

import { SKY_CONDITIONS } from '../../../src/core/daylight/sky-condition.ts';
import { demoKit } from '../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import { setupColumn, type SetupColumn } from '../../../src/core/plan/setup-column.ts';
import { COLUMN_ROLES, VERDICTS } from '../../../src/core/plan/verdicts.ts';
import { setupScene } from '../../../src/core/plan/setup-light.ts';
import { setupQuestion } from '../../../src/core/plan/setup-lights.ts';
import { defined } from '../../support/defined.ts';
import { demoMinute, viewOfMinute } from '../../support/demo-minute.ts';

const columnOf = (setupId: string, condition: (typeof SKY_CONDITIONS)[number]): SetupColumn => {
  const shoot = { ...demoShoot(), condition };
  const setup = defined(shoot.setups[setupId]);
  const spot = defined(shoot.spots[setup.spotId]);
  const question = setupQuestion(setup, spot, demoKit());
  if (!question.ok) throw new Error('expected a question');
  const scene = setupScene(shoot, setup, spot);
  return setupColumn({ scene, question: question.value, date: shoot.date, stepMin: 10 });
};

const CASES = SKY_CONDITIONS.flatMap((condition) =>
  Object.keys(demoShoot().setups).map((setupId) => ({ setupId, condition })),
);

describe('a day of a setup', () => {
  test.each(CASES)(
    '$setupId, $condition: each step says what the setup says at that minute',
    ({ setupId, condition }) => {
      const column = columnOf(setupId, condition);
      expect(column.instantMs).toHaveLength(144);
      for (const at of [0, 33, 40, 47, 61, 78, 96, 108, 115, 119, 121, 124, 127, 143]) {
        const instantMs = defined(column.instantMs[at]);
        const asked = { ...demoMinute(setupId, '12:00', condition), instantMs };
        const view = viewOfMinute(asked);
        const verdict = defined(VERDICTS[defined(column.verdict[at])]);
        const { answer } = view;
        expect(column.referenceEv[at]).toBeCloseTo(view.referenceEv, 9);
        expect(column.ambientHiddenEv[at]).toBeCloseTo(view.light.ambientHiddenEv, 9);
        if (answer.ok) {
          expect(verdict).toBe('works');
          expect(column.inHandStops[at]).toBeCloseTo(answer.value.recipe.inHandStops, 9);
          expect(column.reachEv[at]).toBeCloseTo(answer.value.recipe.reachEv, 9);
          expect(column.shortByStops[at]).toBe(0);
          expect(COLUMN_ROLES[defined(column.limitingRole[at])]).toBe(
            answer.value.recipe.limitingRole,
          );
        } else {
          const { kind, limit, shortByStops } = answer.problem;
          expect(verdict).toBe(
            kind === 'no-setting' ? (limit === 'too-bright' ? 'too-bright' : 'too-dark') : kind,
          );
          expect(column.shortByStops[at]).toBeCloseTo(shortByStops, 9);
        }
      }
    },
  );

  test('a lens that cannot be closed far enough, without ND, is too bright at noon', () => {
    const shoot = { ...demoShoot(), condition: 'clear' as const };
    // Bare heads so near that they reach the sky of noon.
    const setup = produce(defined(shoot.setups.viola), (draft) => {
      const hard = { modifierId: 'reflector', diffuser: false, distanceM: 2 };
      Object.assign(defined(draft.lights.key), hard);
      Object.assign(defined(draft.lights.fill), hard);
    });
    const spot = defined(shoot.spots.arches);
    const kit = produce(demoKit(), (draft) => {
      draft.filters = {};
      defined(draft.lenses['lens-24-70']).maxFNumber = 4;
    });
    const question = setupQuestion(setup, spot, kit);
    if (!question.ok) throw new Error('expected a question');
    const scene = setupScene(shoot, setup, spot);
    // f/4 at 1/250 and ISO 100 is EV 12.0; at noon the sky is brighter by far.
    const column = setupColumn({ scene, question: question.value, date: shoot.date, stepMin: 60 });
    expect(column.referenceEv[13]).toBeGreaterThan(12);
    expect(VERDICTS[defined(column.verdict[13])]).toBe('too-bright');
    expect(VERDICTS[defined(column.verdict[1])]).not.toBe('too-bright');
  });

  test('without lights to ask for it is the light alone, and no minute is judged', () => {
    const shoot = demoShoot();
    const setup = defined(shoot.setups.quartet);
    const scene = setupScene(shoot, setup, defined(shoot.spots.pier));
    const column = setupColumn({ scene, question: null, date: shoot.date, stepMin: 60 });
    expect(new Set(column.verdict)).toEqual(new Set([VERDICTS.indexOf('not-asked')]));
    expect(column.patchEv[12]).toBeGreaterThan(10);
    expect(column.reachEv.every(Number.isNaN)).toBe(true);
  });

  test('the day on which clocks go forward has 23 hours, the one on which they go back 25', () => {
    const shoot = demoShoot();
    const scene = setupScene(shoot, defined(shoot.setups.cello), defined(shoot.spots.lighthouse));
    const steps = (date: string): number =>
      setupColumn({ scene, question: null, date, stepMin: 60 }).instantMs.length;
    expect(steps('2027-03-28')).toBe(23);
    expect(steps('2027-10-31')).toBe(25);
  });
});
