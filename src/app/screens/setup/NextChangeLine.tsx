import { useMemo, type ReactNode } from 'react';

import type { SetupCaseInput } from '../../../core/plan/setup-case.ts';
import type { SetupView, WorkingSetup } from '../../../core/plan/setup-view.ts';
import { clockTime } from '../../../core/units/civil-time.ts';
import { changeWords } from './change-words.ts';
import { nextChange } from './next-change.ts';
import { useSettled } from './use-settled.ts';

type NextChangeLineProps = {
  readonly asked: SetupCaseInput;
  readonly view: SetupView;
  readonly working: WorkingSetup;
  readonly presentMs: number | null;
};

/** When the next dial has to be turned, counted down while the screen follows the clock. */
export function NextChangeLine(props: NextChangeLineProps): ReactNode {
  const { asked, view, working, presentMs } = props;
  const settled = useSettled(view);
  const next = useMemo(
    () => (settled === null ? undefined : nextChange(settled, working.recipe, asked.instantMs)),
    [settled, working.recipe, asked.instantMs],
  );
  if (next === undefined) return <p className="quiet next-change">Next change: looking ahead …</p>;
  if (next === null)
    return <p className="quiet next-change">No dial has to be turned for an hour and a half.</p>;
  const camera = asked.kit.cameras[view.setup.cameraId];
  const wait = presentMs === null ? null : Math.max(0, Math.ceil((next.atMs - presentMs) / 60_000));
  return (
    <p className="next-change">
      {presentMs === null ? null : <strong>Now {clockTime(presentMs, view.spot.zone)}. </strong>}
      Next change <strong data-figure="next-change">{clockTime(next.atMs, view.spot.zone)}</strong>
      {wait === null ? null : <span data-figure="countdown">, in {wait} min</span>}:{' '}
      {next.recipe === null
        ? 'the setup no longer works'
        : changeWords(working.recipe, next.recipe, view, camera)}
    </p>
  );
}
