import './day-screen.css';
import { useState, type ReactNode } from 'react';

import { PlotPatterns } from '../../charts/PlotPatterns.tsx';
import { look } from '../../state/view.ts';
import { SelectField } from '../../ui/SelectField.tsx';
import { DayBar } from './DayBar.tsx';
import { DayLegend } from './DayLegend.tsx';
import { DayGrid } from './DayGrid.tsx';
import { MinutePanel } from './MinutePanel.tsx';
import { SkyColumns } from './SkyColumns.tsx';
import { SpotColumn } from './SpotColumn.tsx';
import { useDayCursor } from './day-cursor.ts';
import type { DaySpot } from './day-model.ts';
import { useDay, type Day } from './use-day.ts';
import { useNarrow } from './use-narrow.ts';

const LOWEST_EV = 2;
const NIGHT_EV = -6;

/** Every spot's day side by side: time running down, brightness across. */
export function DayScreen(): ReactNode {
  const [night, setNight] = useState(false);
  const [underAllSkies, setUnderAllSkies] = useState(false);
  const day = useDay({ fromEv: night ? NIGHT_EV : LOWEST_EV, withNight: night, underAllSkies });
  if (day === null)
    return (
      <p className="waiting" data-first-figures="drawn">
        No spots yet. Add one on the map in <a href="#/scout">Scout</a>, and its day stands here.
      </p>
    );
  return (
    <DayOfSpots
      day={day}
      night={night}
      underAllSkies={underAllSkies && day.selected.shown !== null}
      onNight={setNight}
      onUnderAllSkies={setUnderAllSkies}
    />
  );
}

type DayOfSpotsProps = {
  readonly day: Day;
  readonly night: boolean;
  readonly underAllSkies: boolean;
  readonly onNight: (night: boolean) => void;
  readonly onUnderAllSkies: (on: boolean) => void;
};

function DayOfSpots({
  day,
  night,
  underAllSkies,
  onNight,
  onUnderAllSkies,
}: DayOfSpotsProps): ReactNode {
  const cursor = useDayCursor(day.chosenMs);
  const narrow = useNarrow();
  const { spots, selected, columns } = day;
  const inSight = narrow ? [selected] : spots;
  const drawn = inSight.every(({ columnKey }) => columns.has(columnKey));
  return (
    <div className="day" data-first-figures={drawn ? 'drawn' : undefined}>
      <PlotPatterns />
      <DayBar
        day={day}
        night={night}
        underAllSkies={underAllSkies}
        onNight={onNight}
        onUnderAllSkies={onUnderAllSkies}
      />
      <DayLegend day={day} underAllSkies={underAllSkies} />
      {narrow ? (
        <SelectField
          label="Spot"
          field="day-spot"
          value={selected.spotId}
          options={spots.map(({ spotId, spot }) => ({ value: spotId, text: spot.name }))}
          onChoose={(spotId) => selectSpot(spots, spotId)}
        />
      ) : null}
      <DayGrid
        day={day}
        cursor={cursor}
        columnCount={underAllSkies ? 5 : inSight.length}
        kind={underAllSkies ? 'skies' : 'spots'}
        onSelectSpot={(spotId) => selectSpot(spots, spotId)}
      >
        {underAllSkies ? (
          <SkyColumns day={day} />
        ) : (
          inSight.map((each) => (
            <SpotColumn
              key={each.spotId}
              spotId={each.spotId}
              spot={each.spot}
              shown={each.shown}
              column={columns.get(each.columnKey) ?? null}
              columns={columns}
              frame={day.frame}
              selected={each.spotId === selected.spotId}
              clocksOf={selected.spot.zone}
              zonesDiffer={day.zonesDiffer}
              chosenMs={day.chosenMs}
            />
          ))
        )}
      </DayGrid>
      <MinutePanel
        cursor={cursor}
        spot={selected}
        column={columns.get(selected.columnKey) ?? null}
      />
    </div>
  );
}

const selectSpot = (spots: readonly DaySpot[], spotId: string): void => {
  const shown = spots.find((each) => each.spotId === spotId)?.shown ?? null;
  look(shown === null ? { spotId } : { spotId, setupId: shown[0] });
};
