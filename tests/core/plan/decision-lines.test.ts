import { describe, expect, test } from 'vitest';

import { decide, decisionLines, type DecisionLine } from '../../../src/core/plan/decision-lines.ts';
import { editSetup } from '../../../src/core/plan/edits.ts';
import type { SetupCaseInput } from '../../../src/core/plan/setup-case.ts';
import { formatEvAsSettings } from '../../../src/core/exposure/camera-settings.ts';
import { attemptRecipe } from '../../../src/core/strobe/attempt-recipe.ts';
import { instantAtClock } from '../../../src/core/units/civil-time.ts';
import { defined } from '../../support/defined.ts';
import { caseOfMinute, demoMinute } from '../../support/demo-minute.ts';

const linesOf = (asked: SetupCaseInput): readonly DecisionLine[] => {
  const lines = decisionLines(asked);
  if (!lines.ok) throw new Error(`expected lines, found ${JSON.stringify(lines.problem)}`);
  return lines.value;
};

describe('decision lines', () => {
  const at = { startClock: '20:20', durationMin: 15 };
  const asked = demoMinute('quartet', '20:20', 'clear', editSetup('quartet', at));
  const lines = linesOf(asked);

  test('stand an hour before, half an hour before and at the first frame', () => {
    expect(lines.map(({ sentence }) => sentence.slice(0, 5))).toEqual(['19:20', '19:50', '20:20']);
  });

  test('predict what the setup’s own light shows at that minute', () => {
    for (const { atMs, predictedEv, sentence } of lines) {
      const { light } = caseOfMinute({ ...asked, instantMs: atMs });
      expect(predictedEv).toBe(defined(light.skyInFrame).patchEv);
      expect(sentence).toContain(`predicted ${formatEvAsSettings(predictedEv)}`);
    }
  });

  test('are said as on a call sheet: time, bearing, settings, limit', () => {
    expect(lines[0]?.sentence).toMatch(
      /^19:20, facing \d+°: predicted f\/\d+(\.\d)?( \+ 0\.\d)? at 1\/250, ISO 100; brighter by more than \d\.\d: plan B/,
    );
  });

  test('a tenth more than the line allows no longer works in some frame, the line itself does', () => {
    const { brighterStops } = defined(lines[2]);
    const clocks = ['20:20', '20:35'];
    const worksAt = (stops: number): boolean =>
      clocks.every((clock) => {
        const instantMs = defined(instantAtClock(asked.shoot.date, clock, 'Europe/Rome'));
        const input = defined(caseOfMinute({ ...asked, instantMs }).input);
        const { patchEv, meanEv } = input.sky;
        return attemptRecipe({
          ...input,
          sky: { patchEv: defined(patchEv) + stops, meanEv: meanEv + stops },
        }).ok;
      });
    expect(brighterStops).toBeGreaterThan(0);
    expect(worksAt(defined(brighterStops))).toBe(true);
    expect(worksAt(defined(brighterStops) + 0.1)).toBe(false);
  });

  test('look to the last frame for how much darker it may be', () => {
    const late = demoMinute(
      'quartet',
      '20:50',
      'clear',
      editSetup('quartet', { startClock: '20:50', durationMin: 20 }),
    );
    const darkerStops = defined(linesOf(late)[0]?.darkerStops);
    const works = (clock: string, stops: number): boolean => {
      const instantMs = defined(instantAtClock(late.shoot.date, clock, 'Europe/Rome'));
      const input = defined(caseOfMinute({ ...late, instantMs }).input);
      const { patchEv, meanEv } = input.sky;
      return attemptRecipe({
        ...input,
        sky: { patchEv: defined(patchEv) - stops, meanEv: meanEv - stops },
      }).ok;
    };
    expect(darkerStops).toBeLessThan(3);
    expect(works('21:10', darkerStops)).toBe(true);
    expect(works('21:10', darkerStops + 0.1)).toBe(false);
    expect(works('20:50', darkerStops + 0.1)).toBe(true);
  });

  test('decide by the difference, either way', () => {
    const line = defined(lines[1]);
    expect(decide(line, line.predictedEv)).toEqual({ kind: 'as-planned', offStops: 0 });
    expect(decide(line, line.predictedEv + defined(line.brighterStops) + 0.1).kind).toBe('plan-b');
    expect(decide(line, line.predictedEv + defined(line.brighterStops)).kind).toBe('as-planned');
    expect(decide(line, line.predictedEv - 9).kind).toBe('plan-b');
  });

  test('a deeper hold leaves less, and one out of reach says plan B at once', () => {
    const holding = (holdStops: number): number => {
      const changed = editSetup('quartet', { ...at, holdStops });
      return defined(linesOf(demoMinute('quartet', '20:20', 'clear', changed))[0]?.brighterStops);
    };
    expect(holding(0.5) - holding(1.5)).toBeCloseTo(1, 9);
    const [never] = linesOf(
      demoMinute('quartet', '20:20', 'clear', editSetup('quartet', { ...at, holdStops: 9 })),
    );
    expect(never?.brighterStops).toBeNull();
    expect(never?.sentence).toMatch(/does not work as predicted: plan B\.$/);
    expect(never && decide(never, never.predictedEv).kind).toBe('plan-b');
  });

  test('under the incident reading the dome at the face is predicted', () => {
    const [line] = linesOf(
      demoMinute(
        'quartet',
        '20:20',
        'clear',
        editSetup('quartet', { ...at, holdUnder: 'incident', holdStops: -1 }),
      ),
    );
    const { light } = caseOfMinute({ ...asked, instantMs: defined(line).atMs });
    expect(line?.read.kind).toBe('incident');
    expect(line?.predictedEv).toBeCloseTo(light.incidentEv, 6);
  });

  test('without a clock time, or without the setup, there are none', () => {
    const gone = decisionLines({ ...asked, setupId: 'none' });
    expect(!gone.ok && gone.problem.kind).toBe('gone');
  });
});
