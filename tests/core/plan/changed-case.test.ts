import { describe, expect, test } from 'vitest';

import { changedCase, type ChangedCase } from '../../../src/core/plan/changed-case.ts';
import { editSetup } from '../../../src/core/plan/edits.ts';
import type { SetupChange } from '../../../src/core/plan/setup-fix.ts';
import { setupView } from '../../../src/core/plan/setup-view.ts';
import { defined } from '../../support/defined.ts';
import { caseOfMinute, demoMinute, viewOfMinute } from '../../support/demo-minute.ts';

/** So deep a hold that one stop of anything leaves the sky above the reach. */
const asked = demoMinute('quartet', '20:00', 'clear', editSetup('quartet', { holdStops: 4 }));
const base = caseOfMinute(asked);
const before = defined(base.input);
const changed = (...changes: readonly SetupChange[]): ChangedCase =>
  defined(changedCase(asked, base, changes));
const short = (one: ChangedCase): number => (one.answer.ok ? 0 : one.answer.problem.shortByStops);

describe('a setup with changes made', () => {
  test('with none it is what it was', () => {
    expect(changed().input).toEqual(before);
    const { answer } = viewOfMinute(asked);
    expect(short(changed())).toBeCloseTo(answer.ok ? NaN : answer.problem.shortByStops, 9);
  });

  test.each<readonly SetupChange[]>([
    [{ kind: 'tilt', tiltDeg: 20 }],
    [{ kind: 'bearing', bearingDeg: 20, sunBehind: false }],
    [{ kind: 'focal-length', focalLengthMm: 60, cameraDistanceM: 8.7 }],
    [{ kind: 'hold', holdStops: 1, deeper: false }],
    [{ kind: 'heads', lightId: 'fill', headCount: 2, owned: false }],
    [{ kind: 'shade' }],
  ])('%j is asked as the document with that change asks it', (change) => {
    const one = changed(change);
    const view = setupView(one.asked);
    expect(view.ok && view.value.input).toEqual(one.input);
  });

  test('another time changes sun and sky, the same time neither', () => {
    const later = changed({ kind: 'clock', clock: '20:40', later: true });
    expect(later.asked.instantMs - asked.instantMs).toBe(40 * 60_000);
    expect(later.input.sky.meanEv).toBeLessThan(before.sky.meanEv - 1);
    expect(changed({ kind: 'hold', holdStops: 1, deeper: false }).case.light).toBe(base.light);
  });

  test('a clock time that the day does not have cannot be asked', () => {
    expect(changedCase(asked, base, [{ kind: 'clock', clock: '25:00', later: true }])).toBeNull();
  });

  test('a camera turned at a wall shows no sky and cannot be asked', () => {
    expect(changedCase(asked, base, [{ kind: 'tilt', tiltDeg: -60 }])).toBeNull();
  });

  test('one stop of sync brings the sky one stop nearer, but for the ambient', () => {
    const faster = changed({ kind: 'sync-shutter', shutterS: 1 / 500 });
    expect(faster.input.camera.syncShutterS).toBe(1 / 500);
    expect(short(faster)).toBeGreaterThan(0);
    const gained = short(changed()) - short(faster);
    expect(gained).toBeGreaterThan(0.8);
    expect(gained).toBeLessThanOrEqual(1 + 1e-9);
  });

  test('a polariser darkens patch and frame alike and leaves the subject’s light', () => {
    const { input } = changed({ kind: 'polariser', upToStops: 0.7 });
    expect(defined(before.sky.patchEv) - defined(input.sky.patchEv)).toBeCloseTo(0.7, 12);
    expect(before.sky.meanEv - input.sky.meanEv).toBeCloseTo(0.7, 12);
    expect(input.ambientOnSubjectEv).toBe(before.ambientOnSubjectEv);
  });

  test('ND on the lens buys no reach, ND on a head takes that head’s light', () => {
    expect(short(changed())).toBeGreaterThan(1);
    expect(short(changed({ kind: 'nd', stops: 6 }))).toBeCloseTo(short(changed()), 9);
    const { input } = changed({ kind: 'head-nd', lightIds: ['fill'], stops: 2 });
    expect(
      input.lights.map(
        ({ lossStops }, place) => lossStops - defined(before.lights[place]).lossStops,
      ),
    ).toEqual([0, 2]);
  });

  test('two changes are both made', () => {
    const { input, asked: now } = changed(
      { kind: 'shade' },
      { kind: 'hold', holdStops: 0.5, deeper: false },
    );
    expect(input.hold.stops).toBe(0.5);
    expect(now.shoot.setups.quartet?.shaded).toBe(true);
  });
});
