import { produce } from 'immer';

import type { SkyCondition } from '../../src/core/daylight/sky-condition.ts';
import { demoKit } from '../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../src/core/plan/demo-shoot.ts';
import { together, type Edit } from '../../src/core/plan/edits.ts';
import { setupCase, type SetupCase, type SetupCaseInput } from '../../src/core/plan/setup-case.ts';
import { setupView, type SetupView } from '../../src/core/plan/setup-view.ts';
import type { Shoot } from '../../src/core/plan/shoot.ts';
import { instantAtClock } from '../../src/core/units/civil-time.ts';
import { defined } from './defined.ts';

/** A setup of the demo at a clock time of its day, changed where a test wants it otherwise. */
export function demoMinute(
  setupId: string,
  clock: string,
  condition: SkyCondition,
  ...edits: readonly Edit<Shoot>[]
): SetupCaseInput {
  const shoot = produce({ ...demoShoot(), condition }, (draft) => together(...edits)(draft));
  return {
    shoot,
    kit: demoKit(),
    setupId,
    instantMs: defined(instantAtClock(shoot.date, clock, 'Europe/Rome')),
  };
}

export function viewOfMinute(asked: SetupCaseInput): SetupView {
  const view = setupView(asked);
  if (!view.ok) throw new Error(`expected a view, found ${JSON.stringify(view.problem)}`);
  return view.value;
}

export function caseOfMinute(asked: SetupCaseInput): SetupCase {
  const made = setupCase(asked);
  if (!made.ok) throw new Error(`expected a case, found ${JSON.stringify(made.problem)}`);
  return made.value;
}
