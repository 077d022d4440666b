import { framesPerMinute, popsBeforeRest, popsPerCharge, recycleS } from '../strobe/battery.ts';
import type { Head } from './kit.ts';

/** How fast a light's head fires at its power, and for how long. */
export type LightPace = {
  readonly lightId: string;
  readonly recycleS: number;
  /** From one charge, the cold taken off. */
  readonly popsPerCharge: number;
  /** Pops in a row before it rests; null: nothing is known of a limit. */
  readonly popsBeforeRest: number | null;
  readonly restS: number;
  /** Kept up for minutes, its rests included. */
  readonly framesPerMinute: number;
};

export function lightPace(
  lit: { readonly lightId: string; readonly head: Head; readonly powerStops: number },
  capacityShare: number,
): LightPace {
  const { lightId, head, powerStops } = lit;
  const pause = recycleS({ recycleAtFullS: head.recycleS, powerStops });
  const inARow = head.burstPops === null ? null : popsBeforeRest(head.burstPops, powerStops);
  return {
    lightId,
    recycleS: pause,
    popsPerCharge: popsPerCharge(
      { popsPerChargeAtFull: head.popsPerCharge, powerStops },
      capacityShare,
    ),
    popsBeforeRest: inARow,
    restS: head.burstRestS,
    framesPerMinute: framesPerMinute({
      recycleS: pause,
      popsBeforeRest: inARow,
      restS: head.burstRestS,
    }),
  };
}

/** Frames a minute of all lights together: the slowest sets it; null without lights. */
export const slowestPace = (paces: readonly LightPace[]): LightPace | null =>
  paces.reduce<LightPace | null>(
    (slowest, pace) =>
      slowest === null || pace.framesPerMinute < slowest.framesPerMinute ? pace : slowest,
    null,
  );
