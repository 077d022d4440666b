import { useMemo, type ReactNode } from 'react';

import { SKY_CONDITIONS } from '../../../core/daylight/sky-condition.ts';
import { ColumnPlot } from '../../charts/ColumnPlot.tsx';
import { EvAxis } from '../../charts/EvAxis.tsx';
import { fullHours } from '../../charts/strip-time.ts';
import { useShoot } from '../../state/documents.tsx';
import { CONDITION_NAMES } from '../../ui/condition-names.ts';
import { blockEndMs, blockTime } from './block-time.ts';
import { skyKey } from './day-model.ts';
import { verdictOfColumn } from './minute-figures.ts';
import type { Day } from './use-day.ts';

/** The selected setup under each sky condition, side by side. */
export function SkyColumns({ day }: { readonly day: Day }): ReactNode {
  const shoot = useShoot();
  const { spot, shown } = day.selected;
  const { frame } = day;
  const hours = useMemo(() => fullHours(frame, spot.zone, 1), [frame, spot.zone]);
  if (shown === null) return null;
  const [setupId, setup] = shown;
  const block = blockTime(setup, shoot.date, spot.zone);
  const share = (ms: number): number => (ms - frame.startMs) / (frame.endMs - frame.startMs);
  return SKY_CONDITIONS.map((condition) => {
    const column = day.columns.get(skyKey(setupId, condition)) ?? null;
    return (
      <section
        key={condition}
        className="day-column sky-column"
        data-sky-column={condition}
        data-selected={condition === shoot.condition || undefined}
        aria-label={`${setup.name} under ${CONDITION_NAMES[condition]}`}
      >
        <header className="column-head">
          <p className="column-name">{CONDITION_NAMES[condition]}</p>
        </header>
        <div className="column-body" data-plot>
          {column === null ? null : (
            <>
              <ColumnPlot
                column={column}
                frame={frame}
                shaded={setup.shaded}
                otherReference={setup.holdUnder !== 'patch'}
                hours={hours}
              />
              <div
                className="sky-block"
                style={{
                  top: `${100 * share(block.startMs)}%`,
                  height: `${100 * (share(blockEndMs(block)) - share(block.startMs))}%`,
                }}
              >
                <span data-figure={`in-hand-${condition}`}>
                  {verdictOfColumn(column, block.startMs)}
                </span>
              </div>
            </>
          )}
        </div>
        <EvAxis frame={frame} every={8} />
      </section>
    );
  });
}
