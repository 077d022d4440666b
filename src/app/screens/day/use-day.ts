import { useMemo, useState } from 'react';

import type { SetupColumn } from '../../../core/plan/setup-column.ts';
import {
  addDays,
  clockTime,
  instantAtClock,
  utcOffsetMin,
} from '../../../core/units/civil-time.ts';
import type { PlotFrame } from '../../charts/plot-frame.ts';
import { heldMinute } from '../../charts/strip-time.ts';
import { editShoot } from '../../../core/plan/edits.ts';
import { useEditShoot, useKit, useShoot } from '../../state/documents.tsx';
import { look, useView } from '../../state/view.ts';
import { blockEndMs, blockTime } from './block-time.ts';
import { daySpan } from './day-span.ts';
import {
  askedColumns,
  firstMinuteMs,
  setupKey,
  skyColumns,
  spotKey,
  spotsInOrder,
  type DaySpot,
} from './day-model.ts';
import { shownSetup } from './shown-setup.ts';
import { useDayColumns } from './use-day-columns.ts';

const TO_EV = 18;

export type Day = {
  readonly spots: readonly DaySpot[];
  readonly selected: DaySpot;
  readonly frame: PlotFrame;
  /** The minute chosen; the cursor rests there. */
  readonly chosenMs: number;
  readonly columns: ReadonlyMap<string, SetupColumn>;
  /** Clocks of the spots do not agree. */
  readonly zonesDiffer: boolean;
  readonly changeDate: (byDays: number) => void;
};

type Shown = {
  readonly fromEv: number;
  /** To the end of nautical twilight at least. */
  readonly withNight: boolean;
  readonly underAllSkies: boolean;
};

/** What the day shows; null without spots. */
export function useDay({ fromEv, withNight, underAllSkies }: Shown): Day | null {
  const shoot = useShoot();
  const kit = useKit();
  const edit = useEditShoot();
  const { spotId: viewedSpot, setupId, minuteMs } = useView();
  const [openedAtMs] = useState(minuteMs);
  const spotId =
    viewedSpot !== null && shoot.spots[viewedSpot] ? viewedSpot : spotsInOrder(shoot)[0]?.[0];

  const span = useMemo(() => {
    const blocks = Object.values(shoot.setups).flatMap((setup) => {
      const zone = shoot.spots[setup.spotId]?.zone;
      if (zone === undefined) return [];
      const block = blockTime(setup, shoot.date, zone);
      return [block.startMs, blockEndMs(block)];
    });
    const places = spotsInOrder(shoot).map(([, spot]) => ({ place: spot, zone: spot.zone }));
    return daySpan(places, shoot.date, {
      least: withNight ? 'nautical' : 'civil',
      instantsMs: openedAtMs === null ? blocks : [...blocks, openedAtMs],
    });
  }, [shoot, openedAtMs, withNight]);
  const frame = useMemo(() => ({ ...span, fromEv, toEv: TO_EV }), [span, fromEv]);

  const isOfDay = minuteMs !== null && minuteMs >= span.startMs && minuteMs <= span.endMs;
  const chosenMs = heldMinute(
    isOfDay ? minuteMs : firstMinuteMs(shoot, spotId ?? '', setupId),
    span,
  );

  const spots = useMemo(
    () =>
      spotsInOrder(shoot).map(([id, spot]): DaySpot => {
        const shown = shownSetup(shoot, id, { selectedId: setupId, minuteMs: chosenMs });
        return {
          spotId: id,
          spot,
          shown,
          columnKey: shown === null ? spotKey(id) : setupKey(shown[0]),
        };
      }),
    [shoot, setupId, chosenMs],
  );
  const selected = spots.find((each) => each.spotId === spotId);
  const shownId = selected?.shown?.[0] ?? null;
  const drawnKeys = spots.map(({ columnKey }) => columnKey).join('\n');
  const asked = useMemo(
    () => [
      ...askedColumns(shoot, kit, drawnKeys.split('\n')),
      ...(underAllSkies && shownId !== null ? skyColumns(shoot, kit, shownId) : []),
    ],
    [shoot, kit, drawnKeys, underAllSkies, shownId],
  );
  const columns = useDayColumns(asked);
  if (selected === undefined) return null;

  const { zone } = selected.spot;
  const changeDate = (byDays: number): void => {
    const date = addDays(shoot.date, byDays);
    edit(byDays < 0 ? 'day before' : 'day after', editShoot({ date }));
    look({ minuteMs: instantAtClock(date, clockTime(chosenMs, zone), zone) });
  };
  const offsets = new Set(spots.map(({ spot }) => utcOffsetMin(chosenMs, spot.zone)));
  return { spots, selected, frame, chosenMs, columns, zonesDiffer: offsets.size > 1, changeDate };
}
