import { SKY_CONDITIONS, type SkyCondition } from '../../../core/daylight/sky-condition.ts';
import type { Kit } from '../../../core/plan/kit.ts';
import { inOrder } from '../../../core/plan/order-key.ts';
import { setupsAt } from '../../../core/plan/setup-light.ts';
import type { Setup } from '../../../core/plan/setup-schema.ts';
import type { Shoot, Spot } from '../../../core/plan/shoot.ts';
import { dayBoundsMs, instantAtClock } from '../../../core/units/civil-time.ts';
import { setupColumnInput, spotColumnInput } from '../../state/columns.ts';
import { blockTime } from './block-time.ts';
import type { AskedColumn } from './use-day-columns.ts';

/** One spot of the day with the setup whose reach its column shows. */
export type DaySpot = {
  readonly spotId: string;
  readonly spot: Spot;
  readonly shown: readonly [id: string, setup: Setup] | null;
  /** Of the column that is drawn. */
  readonly columnKey: string;
};

export const setupKey = (setupId: string): string => `setup ${setupId}`;
export const spotKey = (spotId: string): string => `spot ${spotId}`;
export const skyKey = (setupId: string, condition: SkyCondition): string =>
  `setup ${setupId} under ${condition}`;

/** Every column of the day: those drawn first, then those of the other setups, for their blocks. */
export function askedColumns(
  shoot: Shoot,
  kit: Kit,
  drawnKeys: readonly string[],
): readonly AskedColumn[] {
  const drawn = new Set(drawnKeys);
  const all = spotsInOrder(shoot).flatMap(([spotId]) => {
    const here = setupsAt(shoot, spotId);
    if (here.length === 0) return asked(spotKey(spotId), spotColumnInput(shoot, spotId));
    return here.flatMap(([id]) => asked(setupKey(id), setupColumnInput(shoot, kit, id)));
  });
  return all.toSorted((one, other) => Number(drawn.has(other.key)) - Number(drawn.has(one.key)));
}

/** A setup's column under each of the five sky conditions. */
export const skyColumns = (shoot: Shoot, kit: Kit, setupId: string): readonly AskedColumn[] =>
  SKY_CONDITIONS.flatMap((condition) =>
    asked(skyKey(setupId, condition), setupColumnInput({ ...shoot, condition }, kit, setupId)),
  );

const asked = (key: string, input: AskedColumn['input'] | null): readonly AskedColumn[] =>
  input === null ? [] : [{ key, input }];

const WITHOUT_SETUP = '19:00';
const MS_PER_HOUR = 3_600_000;

/** Until a minute is chosen: the start of the setup, else of the first there, else 19:00. */
export function firstMinuteMs(shoot: Shoot, spotId: string, setupId: string | null): number {
  const zone = shoot.spots[spotId]?.zone ?? 'Etc/UTC';
  const here = setupsAt(shoot, spotId);
  const setup = (here.find(([id]) => id === setupId) ?? here[0])?.[1];
  if (setup !== undefined) return blockTime(setup, shoot.date, zone).startMs;
  return (
    instantAtClock(shoot.date, WITHOUT_SETUP, zone) ??
    dayBoundsMs(shoot.date, zone).startMs + 12 * MS_PER_HOUR
  );
}

export const spotsInOrder = (shoot: Shoot): readonly (readonly [id: string, spot: Spot])[] =>
  inOrder(shoot.spots);
