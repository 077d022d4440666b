import type { SetupCaseInput } from '../../../core/plan/setup-case.ts';
import type { SetupView, WorkingSetup } from '../../../core/plan/setup-view.ts';

/** A recipe that works, and what it was asked from. */
export type StepsProps = {
  readonly asked: SetupCaseInput;
  readonly view: SetupView;
  readonly working: WorkingSetup;
};
