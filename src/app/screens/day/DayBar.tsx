import type { ReactNode } from 'react';

import { formatDate } from '../../../core/units/civil-time.ts';
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

/** The date and what is shown of it. */
export function DayBar(props: DayBarProps): ReactNode {
  const { day, night, underAllSkies, onNight, onUnderAllSkies } = props;
  const { date } = useShoot();
  const { shown } = day.selected;
  return (
    <div className="day-bar">
      <div className="day-date">
        <button
          type="button"
          data-day-before
          aria-label="Day before"
          onClick={() => day.changeDate(-1)}
        >
          ←
        </button>
        <strong>{formatDate(date, 'en-GB')}</strong>
        <button
          type="button"
          data-day-after
          aria-label="Day after"
          onClick={() => day.changeDate(1)}
        >
          →
        </button>
      </div>
      <Switch label="night too, from EV −6" field="day-night" on={night} onTurn={onNight} />
      <Switch
        label={shown === null ? 'all five skies' : `all five skies for ${shown[1].name}`}
        field="day-all-skies"
        on={underAllSkies}
        disabled={shown === null}
        onTurn={onUnderAllSkies}
      />
    </div>
  );
}
