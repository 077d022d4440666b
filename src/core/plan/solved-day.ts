import { instantAtClock } from '../units/civil-time.ts';
import type { Kit } from './kit.ts';
import { inOrder } from './order-key.ts';
import type { Setup } from './setup-schema.ts';
import { setupView, type SetupView } from './setup-view.ts';
import type { Shoot } from './shoot.ts';

/** A setup with what it shows at its first and at its last frame; what cannot be asked is left out. */
export type SolvedSetup = {
  readonly setupId: string;
  readonly setup: Setup;
  readonly views: readonly SetupView[];
};

const MS_PER_MIN = 60_000;

/** Every setup of a shoot, in their order. */
export const solvedDay = (shoot: Shoot, kit: Kit): readonly SolvedSetup[] =>
  inOrder(shoot.setups).map(([setupId, setup]) => ({
    setupId,
    setup,
    views: framesOf(shoot, setup).flatMap((instantMs) => {
      const seen = setupView({ shoot, kit, setupId, instantMs });
      return seen.ok ? [seen.value] : [];
    }),
  }));

/** When its first and its last frame is taken; none where its spot or its clock time is missing. */
export function framesOf(shoot: Shoot, setup: Setup): readonly number[] {
  const zone = shoot.spots[setup.spotId]?.zone;
  const startMs = zone === undefined ? null : instantAtClock(shoot.date, setup.startClock, zone);
  return startMs === null ? [] : [startMs, startMs + setup.durationMin * MS_PER_MIN];
}
