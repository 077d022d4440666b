import { describe, expect, test } from 'vitest';

import { SKY_CONDITIONS } from '../../../src/core/daylight/sky-condition.ts';
import { alignmentLight, type AlignmentLight } from '../../../src/core/plan/alignment-light.ts';
import { editLight, editSetup, editSetupFraming } from '../../../src/core/plan/edits.ts';
import { caseOfMinute, demoMinute, viewOfMinute } from '../../support/demo-minute.ts';

const lightOf = (asked: ReturnType<typeof demoMinute>): AlignmentLight => {
  const { scene, question } = caseOfMinute(asked);
  return alignmentLight(scene, question)(asked.instantMs);
};

describe('the light of a date is that of its setup’s own page at the same minute', () => {
  test.each(SKY_CONDITIONS)('%s: sky, reference, spread and what is in hand', (condition) => {
    let working = 0;
    for (const clock of ['06:20', '12:00', '19:40', '20:25'])
      for (const under of ['patch', 'frame', 'incident'] as const) {
        const asked = demoMinute(
          'quartet',
          clock,
          condition,
          editSetup('quartet', { holdUnder: under }),
        );
        const view = viewOfMinute(asked);
        const { hold, skyEv, skySpreadStops, sunInFrame } = lightOf(asked);
        expect(skyEv).toBe(view.light.skyInFrame?.meanEv);
        expect(skySpreadStops).toBe(view.light.frameSpreadStops);
        expect(sunInFrame).toBe(view.light.skyInFrame?.sunInFrame);
        expect(hold?.referenceEv).toBe(view.referenceEv);
        expect(hold?.referenceSpreadStops).toBe(view.referenceSpreadStops);
        // The page solves dials and powers; the verdict here takes them as continuous.
        if (view.answer.ok) {
          working += 1;
          expect(hold?.verdict).toBe('works');
          expect(hold?.inHandStops).toBeCloseTo(view.answer.value.recipe.inHandStops, 6);
        } else if (view.answer.problem.kind === 'sky-above-reach') {
          expect(hold?.verdict).toBe('sky-above-reach');
          expect(hold?.shortByStops).toBeCloseTo(view.answer.problem.shortByStops, 6);
          expect(hold?.role).toBe(view.answer.problem.role);
        }
      }
    expect(working).toBeGreaterThan(0);
  });
});

const held = (headCount: number): number =>
  lightOf(demoMinute('cello', '19:30', 'clear', editLight('cello', 'key', { headCount }))).hold
    ?.inHandStops ?? NaN;

test('a key twice as strong has one stop more in hand, or another light runs out first', () => {
  const gainedStops = held(2) - held(1);
  expect(gainedStops).toBeGreaterThan(0);
  expect(gainedStops).toBeLessThanOrEqual(1.000001);
});

test('without a setup there is the light alone; without sky there is neither', () => {
  const asked = demoMinute('quartet', '19:40', 'clear');
  const { scene } = caseOfMinute(asked);
  const alone = alignmentLight(scene, null)(asked.instantMs);
  expect(alone.hold).toBeNull();
  expect(alone.skyEv).toBe(lightOf(asked).skyEv);
  const ground = lightOf(
    demoMinute('quartet', '19:40', 'clear', editSetupFraming('quartet', { tiltDeg: -60 })),
  );
  expect(ground).toMatchObject({ skyEv: null, hold: null, sunInFrame: false });
});

test('a camera turned at the sun has it in the frame', () => {
  const asked = demoMinute('quartet', '19:40', 'clear');
  const { azimuthDeg, apparentAltitudeDeg } = viewOfMinute(asked).light.sun;
  const at = { bearingDeg: azimuthDeg, tiltDeg: apparentAltitudeDeg };
  expect(
    lightOf(demoMinute('quartet', '19:40', 'clear', editSetupFraming('quartet', at))).sunInFrame,
  ).toBe(true);
});
