import { memo, useMemo, type ReactNode } from 'react';

import { addSetup } from '../../../core/plan/edits.ts';
import type { SetupColumn } from '../../../core/plan/setup-column.ts';
import { framingOf } from '../../../core/plan/picture-geometry.ts';
import { setupsAt } from '../../../core/plan/setup-light.ts';
import { newSetup } from '../../../core/plan/new-setup.ts';
import type { Setup } from '../../../core/plan/setup-schema.ts';
import type { Spot } from '../../../core/plan/shoot.ts';
import { clockTime, utcOffsetMin, utcOffsetText } from '../../../core/units/civil-time.ts';
import { ColumnPlot } from '../../charts/ColumnPlot.tsx';
import { EvAxis } from '../../charts/EvAxis.tsx';
import type { PlotFrame } from '../../charts/plot-frame.ts';
import { fullHours, shareOf } from '../../charts/strip-time.ts';
import { useEditShoot, useKit, useShoot } from '../../state/documents.tsx';
import { useServices } from '../../state/services.ts';
import { look, say } from '../../state/view.ts';
import { bearingText } from '../../ui/figure-text.ts';
import { snapped } from './block-time.ts';
import { setupKey } from './day-model.ts';
import { SetupBlocks } from './SetupBlocks.tsx';

type SpotColumnProps = {
  readonly spotId: string;
  readonly spot: Spot;
  readonly shown: readonly [id: string, setup: Setup] | null;
  readonly column: SetupColumn | null;
  readonly columns: ReadonlyMap<string, SetupColumn>;
  readonly frame: PlotFrame;
  readonly selected: boolean;
  /** Zone whose clocks stand in the gutter. */
  readonly clocksOf: string;
  readonly zonesDiffer: boolean;
  readonly chosenMs: number;
};

/** One spot's day: its light, the reach of one of its setups, and all its setups as blocks. */
export const SpotColumn = memo(function SpotColumn(props: SpotColumnProps): ReactNode {
  const { spotId, spot, shown, column, columns, frame, selected, clocksOf, zonesDiffer, chosenMs } =
    props;
  const shoot = useShoot();
  const hours = useMemo(() => fullHours(frame, spot.zone, 1), [frame, spot.zone]);
  const here = setupsAt(shoot, spotId);
  const setup = shown?.[1] ?? null;
  const framing = setup === null ? spot.framing : framingOf(setup, spot);
  const ownClocks = utcOffsetMin(chosenMs, spot.zone) !== utcOffsetMin(chosenMs, clocksOf);
  return (
    <section
      className="day-column"
      data-column={spotId}
      data-selected={selected || undefined}
      aria-label={spot.name}
    >
      <header className="column-head">
        <button
          type="button"
          className="bare column-name"
          aria-pressed={selected}
          onClick={() => look(shown === null ? { spotId } : { spotId, setupId: shown[0] })}
        >
          {spot.name}
        </button>
        <AddSetup spotId={spotId} spot={spot} chosenMs={chosenMs} />
        <p className="quiet">
          faces {bearingText(framing.bearingDeg)} · {framing.focalLengthMm} mm
          {zonesDiffer ? ` · ${utcOffsetText(chosenMs, spot.zone)}` : ''}
        </p>
        <p className={setup === null ? 'reach-of none' : 'reach-of'}>
          {setup === null ? 'no setup here: light only' : setup.name}
        </p>
      </header>
      <div className="column-body" data-plot>
        {column === null ? (
          <p className="column-note">working out the day…</p>
        ) : (
          <ColumnPlot
            column={column}
            frame={frame}
            shaded={setup?.shaded === true}
            otherReference={setup !== null && setup.holdUnder !== 'patch'}
            hours={hours}
          />
        )}
        {column !== null && column.skyShare.every((share) => share === 0) ? (
          <p className="column-note">No sky in this frame: skyline or ground fills it.</p>
        ) : null}
        {ownClocks
          ? hours.map(({ ms, text }) => (
              <span key={ms} className="own-hour" style={{ top: `${100 * shareOf(ms, frame)}%` }}>
                {text}
              </span>
            ))
          : null}
        <SetupBlocks
          setups={here}
          zone={spot.zone}
          frame={frame}
          shownId={shown?.[0] ?? null}
          columnOf={(id) => columns.get(setupKey(id)) ?? null}
        />
      </div>
      <EvAxis frame={frame} every={4} />
    </section>
  );
});

type AddSetupProps = { readonly spotId: string; readonly spot: Spot; readonly chosenMs: number };

function AddSetup({ spotId, spot, chosenMs }: AddSetupProps): ReactNode {
  const shoot = useShoot();
  const kit = useKit();
  const edit = useEditShoot();
  const { newId } = useServices();
  const add = (): void => {
    const startClock = clockTime(snapped(chosenMs, 5), spot.zone);
    const name = `Setup ${Object.keys(shoot.setups).length + 1}`;
    const made = newSetup(shoot, kit, { name, spotId, startClock, lightId: newId() });
    if (!made.ok) {
      say(made.problem);
      return;
    }
    const setupId = newId();
    edit(`add ${made.value.name}`, addSetup(setupId, made.value));
    look({ spotId, setupId });
  };
  return (
    <button
      type="button"
      className="add-setup"
      data-add-setup={spotId}
      aria-label={`Add a setup at ${spot.name}`}
      onClick={add}
    >
      + setup
    </button>
  );
}
