import { useMemo, type ReactNode } from 'react';

import type { SetupCaseInput } from '../../../core/plan/setup-case.ts';
import { fixEdit, type SetupFix } from '../../../core/plan/setup-fix.ts';
import type { SetupView } from '../../../core/plan/setup-view.ts';
import type { RecipeProblem } from '../../../core/strobe/recipe.ts';
import { clockTime } from '../../../core/units/civil-time.ts';
import { useEditShoot } from '../../state/documents.tsx';
import type { Services } from '../../state/services.ts';
import { look } from '../../state/view.ts';
import { fixKind, fixText } from './fix-text.ts';
import { problemText } from './problem-text.ts';
import { useSettled } from './use-settled.ts';
import { useWorkedOut } from './use-worked-out.ts';

type ShortByProps = {
  readonly asked: SetupCaseInput;
  readonly view: SetupView;
  readonly problem: RecipeProblem;
};

/** Why it does not work at this minute, by how much, and what would end it. */
export function ShortBy({ asked, view, problem }: ShortByProps): ReactNode {
  const { headline, why } = problemText(view, problem);
  const settled = useSettled(asked);
  const fixes = useWorkedOut(settled, askFixes);
  return (
    <div className="short-by">
      <p className="figure-line">
        At {clockTime(asked.instantMs, view.spot.zone)}:{' '}
        <strong data-figure="problem">{headline}</strong>
      </p>
      <p className="quiet">{why}</p>
      {fixes.state === 'done' && fixes.last !== null ? (
        <Fixes fixes={fixes.last.answer} asked={asked} view={view} />
      ) : (
        <p className="quiet looking" data-fixes={fixes.state}>
          {fixes.state === 'failed'
            ? 'What would fix it could not be worked out.'
            : 'Working out what would fix it …'}
        </p>
      )}
      {problem.kind === 'sky-above-reach' ? (
        <p className="quiet">
          Opening up, ISO and ND change sky and flash alike: they cure nothing here.
        </p>
      ) : null}
    </div>
  );
}

const askFixes = (
  compute: Services['compute'],
  input: SetupCaseInput,
): Promise<readonly SetupFix[] | null> =>
  compute.request('setup fixes', { kind: 'setup-fixes', input });

type FixesProps = {
  readonly fixes: readonly SetupFix[];
  readonly asked: SetupCaseInput;
  readonly view: SetupView;
};

function Fixes({ fixes, asked, view }: FixesProps): ReactNode {
  const rows = useMemo(
    () => fixes.map((fix) => ({ fix, text: fixText(fix, { base: view, kit: asked.kit }) })),
    [fixes, view, asked.kit],
  );
  if (rows.length === 0)
    return (
      <p data-fixes="done">
        No single change and no pair of them ends it: another spot, another hour, or more light.
      </p>
    );
  return (
    <ul className="fixes" data-fixes="done">
      {rows.map(({ fix, text }, at) => (
        <li key={`${fixKind(fix)} ${at}`} data-fix={fixKind(fix)}>
          <p>
            {text.sentence}: <b>{text.inHand}</b>
            {text.blocked === null ? null : <span className="quiet"> {text.blocked}</span>}
          </p>
          <UseThis fix={fix} asked={asked} label={text.sentence} blocked={text.blocked !== null} />
        </li>
      ))}
    </ul>
  );
}

type UseThisProps = {
  readonly fix: SetupFix;
  readonly asked: SetupCaseInput;
  readonly label: string;
  readonly blocked: boolean;
};

function UseThis({ fix, asked, label, blocked }: UseThisProps): ReactNode {
  const edit = useEditShoot();
  const made = fixEdit(asked.setupId, fix);
  return (
    <button
      type="button"
      disabled={blocked || made === null}
      aria-label={`Use this: ${label}`}
      onClick={() => {
        if (made === null) return;
        edit(label, made);
        if (fix.changes.some(({ kind }) => kind === 'clock')) look({ minuteMs: null });
      }}
    >
      Use this
    </button>
  );
}
