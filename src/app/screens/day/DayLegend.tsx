import { useMemo, type ReactNode } from 'react';

import { VERDICTS } from '../../../core/plan/verdicts.ts';
import { PlotLegend } from '../../charts/PlotLegend.tsx';
import { spanKind } from '../../charts/verdict-spans.ts';
import { useShoot } from '../../state/documents.tsx';
import type { Day } from './use-day.ts';

type DayLegendProps = { readonly day: Day; readonly underAllSkies: boolean };

/** The key to the marks that this day shows. */
export function DayLegend({ day, underAllSkies }: DayLegendProps): ReactNode {
  const { condition } = useShoot();
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
    <PlotLegend
      kinds={kinds}
      twoStates={underAllSkies || condition === 'broken-cloud'}
      otherReference={day.spots.some(
        ({ shown }) => shown !== null && shown[1].holdUnder !== 'patch',
      )}
    />
  );
}
