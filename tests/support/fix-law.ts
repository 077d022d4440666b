import { produce } from 'immer';
import { expect } from 'vitest';

import type { Edit } from '../../src/core/plan/edits.ts';
import type { SetupCaseInput } from '../../src/core/plan/setup-case.ts';
import { fixEdit, type SetupChange, type SetupFix } from '../../src/core/plan/setup-fix.ts';
import { setupFixes } from '../../src/core/plan/setup-fixes.ts';
import { setupView, type SetupView } from '../../src/core/plan/setup-view.ts';
import type { Shoot } from '../../src/core/plan/shoot.ts';
import { instantAtClock } from '../../src/core/units/civil-time.ts';
import { defined } from './defined.ts';
import { viewOfMinute } from './demo-minute.ts';

/** The setup solved again on the document with an edit made, at its new time where it moved. */
export function afterEdit(asked: SetupCaseInput, edit: Edit<Shoot>): SetupView | null {
  const shoot = produce(asked.shoot, edit);
  const clock = shoot.setups[asked.setupId]?.startClock;
  const moved = clock !== asked.shoot.setups[asked.setupId]?.startClock;
  const instantMs = moved
    ? defined(instantAtClock(shoot.date, defined(clock), 'Europe/Rome'))
    : asked.instantMs;
  const view = setupView({ ...asked, shoot, instantMs });
  return view.ok ? view.value : null;
}

const inHand = (view: SetupView | null): number | null =>
  view?.answer.ok === true ? view.answer.value.recipe.inHandStops : null;

/** One step less of a change that goes in small steps: 0.05 m (0.01 close by), a tenth of a stop, a degree. */
function oneStepWeaker(fix: SetupFix): SetupFix | null {
  const change = defined(fix.changes.at(-1));
  const weaker = (() => {
    switch (change.kind) {
      case 'distance': {
        const stepM = change.distanceM < 0.75 - 1e-9 ? 0.01 : 0.05;
        return { ...change, distanceM: change.distanceM + (change.closer ? stepM : -stepM) };
      }
      case 'feather':
        return { ...change, featherDeg: change.featherDeg + (change.more ? -1 : 1) };
      case 'hold':
        return { ...change, holdStops: change.holdStops + (change.deeper ? -0.1 : 0.1) };
      case 'unlit-under':
        return { ...change, unlitUnderStops: change.unlitUnderStops + 0.1 };
      default:
        return null;
    }
  })();
  return weaker === null ? null : { ...fix, changes: [...fix.changes.slice(0, -1), weaker] };
}

/** Sky and flash alike: none of these brings a sky within reach. */
const NEVER_FOR_REACH: readonly SetupChange['kind'][] = [
  'nd',
  'head-nd',
  'tripod',
  'part-on',
  'unlit-under',
  'shade',
];

/** Every fix that a minute offers, tried; the law that a fix fixes. */
export function expectFixesToFix(asked: SetupCaseInput): readonly SetupFix[] {
  const view = viewOfMinute(asked);
  if (view.answer.ok) {
    expect(setupFixes(asked)).toEqual([]);
    return [];
  }
  const { kind } = view.answer.problem;
  const fixes = setupFixes(asked);
  const written = fixes.map(({ changes }) => JSON.stringify(changes));
  expect(written, 'the same fix twice').toEqual([...new Set(written)]);
  for (const fix of fixes) {
    const what = JSON.stringify(fix.changes);
    if (kind === 'sky-above-reach')
      for (const change of fix.changes) {
        expect(NEVER_FOR_REACH, what).not.toContain(change.kind);
        expect(change.kind === 'unpin' ? change.pin : 'none', what).not.toMatch(
          /aperture|iso|filters/,
        );
      }
    const edit = fixEdit(asked.setupId, fix);
    if (edit === null) {
      expect(
        fix.changes.some((change) =>
          ['sync-shutter', 'polariser', 'nd', 'head-nd'].includes(change.kind),
        ),
        what,
      ).toBe(true);
      continue;
    }
    const left = inHand(afterEdit(asked, edit));
    expect(left, `${what} does not fix`).not.toBeNull();
    expect(left, what).toBeCloseTo(fix.inHandStops, 6);
    expect(left, what).toBeGreaterThanOrEqual(-1e-6);
    const weaker = oneStepWeaker(fix);
    if (weaker === null) continue;
    // A degree at the edge of a grid's beam is more than a fifth of a stop.
    if (kind === 'sky-above-reach' && weaker.changes.at(-1)?.kind !== 'feather')
      expect(left, what).toBeLessThanOrEqual(0.2);
    const stillShort = afterEdit(asked, defined(fixEdit(asked.setupId, weaker)));
    expect(inHand(stillShort), `${what} is more than is needed`).toBeNull();
  }
  return fixes;
}
