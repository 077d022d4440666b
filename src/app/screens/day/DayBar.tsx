import { useMemo, type ReactNode } from 'react';

import { formatDate } from '../../../core/units/civil-time.ts';
import { PlotLegend } from '../../charts/PlotLegend.tsx';
import { spanKind } from '../../charts/verdict-spans.ts';
import { VERDICTS } from '../../../core/plan/setup-column.ts';
import { useShoot } from '../../state/documents.tsx';
import { Switch } from '../../ui/Switch.tsx';
import type { Day } from './use-day.ts';

type DayBarProps = {
  readonly day: Day;
  readonly night: boolean;
  readonly underAllSkies: boolean;
  readonly onNight: (night: boolean) => void;
  readonly onUnderAllSkies: (on: boolean) => void;
};

/** The date and what is shown of it, with the key to the marks. */
export function DayBar(props: DayBarProps): ReactNode {
  const { day, night, underAllSkies, onNight, onUnderAllSkies } = props;
  const shoot = useShoot();
  const { shown } = day.selected;
  const kinds = useMemo(
    () =>
      new Set(
        [...day.columns.values()]
          .flatMap(({ verdict }) => [...new Set(verdict)])
          .flatMap((place) => spanKind(VERDICTS[place] ?? 'not-asked') ?? []),
      ),
    [day.columns],
  );
  return (
    <div className="day-bar">
      <div className="day-date">
        <button type="button" data-day-before aria-label="Day before" onClick={() => day.changeDate(-1)}>
          ←
        </button>
        <strong>{formatDate(shoot.date, 'en-GB')}</strong>
        <button type="button" data-day-after aria-label="Day after" onClick={() => day.changeDate(1)}>
          →
        </button>
      </div>
      <Switch label="from EV −6" field="day-night" on={night} onTurn={onNight} />
      <Switch
        label={shown === null ? 'All five skies' : `All five skies: ${shown[1].name}`}
        field="day-all-skies"
        on={underAllSkies}
        disabled={shown === null}
        onTurn={onUnderAllSkies}
      />
      <PlotLegend
        kinds={kinds}
        twoStates={underAllSkies || shoot.condition === 'broken-cloud'}
        otherReference={day.spots.some((each) => each.shown !== null && each.shown[1].holdUnder !== 'patch')}
      />
    </div>
  );
}
