import { useMemo } from 'react';

import { inOrder } from '../../../core/plan/order-key.ts';
import type { Setup } from '../../../core/plan/setup-schema.ts';
import type { Spot } from '../../../core/plan/shoot.ts';
import { useShoot } from '../../state/documents.tsx';
import { useView } from '../../state/view.ts';
import { defaultMinuteMs, isOfDate, setupHere } from './scout-minute.ts';
import { sunDay, type SunDay } from './sun-day.ts';

export type Scouted = {
  readonly id: string;
  readonly spot: Spot;
  readonly setup: readonly [id: string, setup: Setup] | null;
  readonly sun: SunDay;
};

/** The spot that is looked at, null in a shoot without spots, and the minute. */
export function useScouted(): { readonly scouted: Scouted | null; readonly minuteMs: number } {
  const shoot = useShoot();
  const view = useView();
  const ids = inOrder(shoot.spots).map(([id]) => id);
  const setupSpotId = view.setupId === null ? undefined : shoot.setups[view.setupId]?.spotId;
  const id = [view.spotId, setupSpotId].find((one) => one && shoot.spots[one]) ?? ids[0] ?? null;
  const spot = (id === null ? undefined : shoot.spots[id]) ?? null;
  const setup = id === null ? null : setupHere(shoot, id, view.setupId);
  const sunAsked = useMemo(
    () =>
      spot &&
      JSON.stringify({ ...spot, name: '', order: '', terrain: null, photos: {}, readings: {} }),
    [spot],
  );
  const sun = useMemo(
    () => (sunAsked === null ? null : sunDay(JSON.parse(sunAsked) as Spot, shoot.date)),
    [sunAsked, shoot.date],
  );
  const minuteMs =
    view.minuteMs !== null && isOfDate(view.minuteMs, shoot.date, spot?.zone ?? 'Etc/UTC')
      ? view.minuteMs
      : defaultMinuteMs(shoot.date, spot, setup?.[1] ?? null);
  const scouted = id === null || spot === null || sun === null ? null : { id, spot, setup, sun };
  return { scouted, minuteMs };
}
