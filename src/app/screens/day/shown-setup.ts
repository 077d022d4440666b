import { setupsAt } from '../../../core/plan/setup-light.ts';
import type { Setup } from '../../../core/plan/setup-schema.ts';
import type { Shoot } from '../../../core/plan/shoot.ts';
import { blockEndMs, blockTime } from './block-time.ts';

/**
 * The setup whose reach a spot's column shows: the selected one when it stands there, else the one
 * whose block is nearest the minute; null at a spot without setups.
 */
export function shownSetup(
  shoot: Shoot,
  spotId: string,
  at: { readonly selectedId: string | null; readonly minuteMs: number },
): readonly [id: string, setup: Setup] | null {
  const here = setupsAt(shoot, spotId);
  const zone = shoot.spots[spotId]?.zone ?? 'Etc/UTC';
  const awayMs = (setup: Setup): number => {
    const block = blockTime(setup, shoot.date, zone);
    return Math.max(0, block.startMs - at.minuteMs, at.minuteMs - blockEndMs(block));
  };
  return (
    here.find(([id]) => id === at.selectedId) ??
    here.toSorted(([, one], [, other]) => awayMs(one) - awayMs(other))[0] ??
    null
  );
}
