import './light-report.css';
import { useMemo, type ReactNode } from 'react';

import type { SetupCaseInput } from '../../../core/plan/setup-case.ts';
import { fixEdit } from '../../../core/plan/setup-fix.ts';
import type { SetupView } from '../../../core/plan/setup-view.ts';
import { isTooUneven, sideSpreads } from '../../../core/plan/side-spread.ts';
import type { SpreadFix } from '../../../core/plan/spread-fixes.ts';
import { useEditShoot } from '../../state/documents.tsx';
import type { Services } from '../../state/services.ts';
import { inHandText, tenths } from '../../ui/figure-text.ts';
import { fixKind, fixText } from './fix-text.ts';
import { useSettled } from './use-settled.ts';
import { useWorkedOut } from './use-worked-out.ts';

type SpreadFixesProps = { readonly asked: SetupCaseInput; readonly view: SetupView };

/** What would even faces that differ by more than the setup allows, and what each costs in reach. */
export function SpreadFixes({ asked, view }: SpreadFixesProps): ReactNode {
  const uneven = useMemo(
    () => sideSpreads(view.sources, view.setup).some((side) => isTooUneven(side, view.setup)),
    [view],
  );
  const settled = useSettled(asked);
  const fixes = useWorkedOut(uneven ? settled : null, askSpreadFixes);
  if (!uneven) return null;
  return (
    <section className="spread-fixes">
      <h3>What evens the faces</h3>
      {fixes.state === 'done' && fixes.last !== null ? (
        <List fixes={fixes.last.answer} asked={asked} view={view} />
      ) : (
        <p className="quiet" data-spread-fixes={fixes.state}>
          {fixes.state === 'failed' ? 'It could not be worked out.' : 'Working it out …'}
        </p>
      )}
    </section>
  );
}

const askSpreadFixes = (
  compute: Services['compute'],
  input: SetupCaseInput,
): Promise<readonly SpreadFix[] | null> =>
  compute.request('spread fixes', { kind: 'spread-fixes', input });

function List({
  fixes,
  asked,
  view,
}: SpreadFixesProps & { readonly fixes: readonly SpreadFix[] }): ReactNode {
  if (fixes.length === 0)
    return (
      <p className="quiet" data-spread-fixes="done">
        No single change evens them: move the people closer together, or take two steps of these one
        after the other: back, up, and turned off the near end.
      </p>
    );
  return (
    <ul className="fixes" data-spread-fixes="done">
      {fixes.map((fix) => (
        <Row key={JSON.stringify(fix.changes)} fix={fix} asked={asked} view={view} />
      ))}
    </ul>
  );
}

function Row({ fix, asked, view }: SpreadFixesProps & { readonly fix: SpreadFix }): ReactNode {
  const edit = useEditShoot();
  const { sentence, blocked } = fixText(fix, {
    base: view,
    kit: asked.kit,
    spread: 'said beside it',
  });
  const made = fixEdit(asked.setupId, fix);
  return (
    <li data-spread-fix={fixKind(fix)}>
      <p>
        {sentence}: the faces then differ by <b>{tenths(fix.spreadStops)}</b>,{' '}
        <b>{costText(fix.costsStops)}</b>, {inHandText(fix.inHandStops)}
        {blocked === null ? null : <span className="quiet"> {blocked}</span>}
      </p>
      <button
        type="button"
        aria-label={`Use this: ${sentence}`}
        disabled={blocked !== null || made === null}
        onClick={() => made !== null && edit(sentence, made)}
      >
        Use this
      </button>
    </li>
  );
}

function costText(costsStops: number): string {
  if (Math.abs(costsStops) < 0.05) return 'no reach lost';
  return costsStops > 0
    ? `costs ${tenths(costsStops)} of reach`
    : `gains ${tenths(-costsStops)} of reach`;
}
