import './minute-panel.css';
import { useMemo, type ReactNode } from 'react';

import { setupLightAt, type SetupColumn } from '../../../core/plan/setup-column.ts';
import { setupScene, type SetupLight } from '../../../core/plan/setup-light.ts';
import { setupView, type SetupView, type SetupViewGap } from '../../../core/plan/setup-view.ts';
import type { Kit } from '../../../core/plan/kit.ts';
import type { Shoot } from '../../../core/plan/shoot.ts';
import { clockTime } from '../../../core/units/civil-time.ts';
import type { Result } from '../../../core/units/result.ts';
import { spotColumnInput } from '../../state/columns.ts';
import { useKit, useShoot } from '../../state/documents.tsx';
import { bearingText, tenths } from '../../ui/figure-text.ts';
import { useCursorState, type DayCursor } from './day-cursor.ts';
import type { DaySpot } from './day-model.ts';
import {
  figuresOfColumn,
  figuresOfLight,
  verdictOfColumn,
  type MinuteFigures,
} from './minute-figures.ts';
import { RecipePart } from './RecipePart.tsx';
import { SkyPart } from './SkyPart.tsx';

type MinutePanelProps = {
  readonly cursor: DayCursor;
  readonly spot: DaySpot;
  readonly column: SetupColumn | null;
};

/** Solved for the minute itself, once the cursor stands still. */
type Exact = { readonly light: SetupLight; readonly view: Result<SetupView, SetupViewGap> | null };

/** The selected spot at the cursor: read off its column in passing, computed when it rests. */
export function MinutePanel({ cursor, spot: day, column }: MinutePanelProps): ReactNode {
  const { minuteMs, moving } = useCursorState(cursor);
  const shoot = useShoot();
  const kit = useKit();
  const { spotId, spot, shown } = day;
  const setupId = shown?.[0] ?? null;
  const exact = useMemo(
    () => (moving ? null : exactAt(shoot, kit, { spotId, setupId, minuteMs })),
    [moving, shoot, kit, spotId, setupId, minuteMs],
  );
  const figures =
    exact !== null
      ? figuresOfLight(exact.light)
      : column === null
        ? null
        : figuresOfColumn(column, minuteMs);
  return (
    <aside className="minute-panel" aria-label="At this minute" data-moving={moving || undefined}>
      <h1>
        At <span data-figure="day-clock">{clockTime(minuteMs, spot.zone)}</span>
      </h1>
      <p className="quiet">
        {spot.name}
        {figures === null ? '' : `, ${sunText(figures)}`}
      </p>
      {figures === null ? null : (
        <SkyPart
          figures={figures}
          condition={shoot.condition}
          patchIsFrame={exact?.light.skyInFrame?.patchIsFrame === true}
        />
      )}
      {shown === null ? (
        <p className="quiet">
          No setup stands here yet; “+ setup” over the column adds one at this minute.
        </p>
      ) : (
        <RecipePart
          setupId={shown[0]}
          setup={shown[1]}
          view={exact?.view ?? null}
          inPassing={column === null ? '' : verdictOfColumn(column, minuteMs)}
        />
      )}
      {figures?.sunInFrame === true ? (
        <p className="quiet" data-caution="sun">
          The sun stands in the frame: it clips at any hold, and within 5° of it the sky is brighter
          than shown. Never look at it through an optical finder or a long lens; ND filters and
          polarisers do not protect eyes.
        </p>
      ) : null}
    </aside>
  );
}

const sunText = ({ sunApparentAltitudeDeg, sunAzimuthDeg }: MinuteFigures): string =>
  `sun ${tenths(Math.abs(sunApparentAltitudeDeg))}° ${sunApparentAltitudeDeg < 0 ? 'down' : 'up'} at ${bearingText(sunAzimuthDeg)}`;

function exactAt(
  shoot: Shoot,
  kit: Kit,
  at: { readonly spotId: string; readonly setupId: string | null; readonly minuteMs: number },
): Exact | null {
  const { spotId, setupId, minuteMs: instantMs } = at;
  if (setupId === null) {
    const asked = spotColumnInput(shoot, spotId);
    return asked === null ? null : { light: setupLightAt(asked.scene, instantMs), view: null };
  }
  const view = setupView({ shoot, kit, setupId, instantMs });
  if (view.ok) return { light: view.value.light, view };
  const setup = shoot.setups[setupId];
  const spot = shoot.spots[spotId];
  if (setup === undefined || spot === undefined) return null;
  return { light: setupLightAt(setupScene(shoot, setup, spot), instantMs), view };
}
