import { useMemo, type ReactNode } from 'react';

import { setupView } from '../../../core/plan/setup-view.ts';
import type { Kit } from '../../../core/plan/kit.ts';
import type { Setup } from '../../../core/plan/setup-schema.ts';
import type { Shoot } from '../../../core/plan/shoot.ts';
import { formatDate, instantAtClock } from '../../../core/units/civil-time.ts';
import { useKit, useShoot } from '../../state/documents.tsx';
import { CONDITION_NAMES } from '../../ui/condition-names.ts';
import { CAUTIONS } from '../../ui/cautions.ts';
import { LightTimes } from './LightTimes.tsx';
import { SetupRow } from './SetupRow.tsx';
import './call-sheet.css';

/** The day as a plain list that prints on one page. */
export function CallSheetScreen(): ReactNode {
  const shoot = useShoot();
  const kit = useKit();
  const rows = useMemo(() => rowsOf(shoot, kit), [shoot, kit]);
  return (
    <article className="call-sheet" data-first-figures="drawn">
      <header>
        <div>
          <h1>{shoot.title}</h1>
          <p>{formatDate(shoot.date, 'en-GB')}</p>
        </div>
        <button type="button" className="no-print" onClick={() => window.print()}>
          Print
        </button>
      </header>
      <LightTimes />
      <p>
        <strong>Sky</strong> planned for {CONDITION_NAMES[shoot.condition]}. Every figure is an
        estimate from a model with the spread beside it: meter on the day.
      </p>
      <p>
        <strong>Meet</strong> <span className="blank" /> <strong>Nearest hospital</strong>{' '}
        <span className="blank" /> <strong>Emergency number</strong> <span className="blank" />
      </p>
      <h2>Setups in the order of the clock</h2>
      {rows.length === 0 ? <p>No setup yet. Add one on the Day screen.</p> : null}
      <ol>
        {rows.map(({ id, setup, view }) => (
          <SetupRow key={id} id={id} setup={setup} spot={shoot.spots[setup.spotId]} view={view} />
        ))}
      </ol>
      <section>
        <h2>Take care</h2>
        <ul className="take-care">
          {CAUTIONS.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </section>
    </article>
  );
}

type SheetRow = {
  readonly id: string;
  readonly setup: Setup;
  readonly view: ReturnType<typeof setupView> | null;
};

const rowsOf = (shoot: Shoot, kit: Kit): readonly SheetRow[] =>
  Object.entries(shoot.setups)
    .toSorted(([, first], [, second]) => (first.startClock < second.startClock ? -1 : 1))
    .map(([id, setup]) => {
      const zone = shoot.spots[setup.spotId]?.zone;
      const instantMs =
        zone === undefined ? null : instantAtClock(shoot.date, setup.startClock, zone);
      return {
        id,
        setup,
        view: instantMs === null ? null : setupView({ shoot, kit, setupId: id, instantMs }),
      };
    });
