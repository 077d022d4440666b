/** Stops that high-speed sync costs on entering, until measured: 1.5 to 2.3 in print (D2 to D5). [practitionerPages] */
export const HSS_LOSS_STOPS = 2;

/** t0.1 over t0.5 of a pulse that decays exponentially: ln 10 / ln 2. [iso2827] */
const TOTAL_OVER_HALF_DURATION = Math.log(10) / Math.log(2);

export const totalFlashDurationS = (halfPeakDurationS: number): number =>
  halfPeakDurationS * TOTAL_OVER_HALF_DURATION;

/** How long a head's flash is at both ends of its power. */
export type FlashDurations = {
  /** t0.1 at full power; absent: not known. */
  readonly flashDurationS?: number | undefined;
  /** t0.1 at the lowest power; absent: as at full. */
  readonly flashDurationLowestS?: number | undefined;
  /** Lowest power, stops below full. */
  readonly minPowerStops: number;
};

/**
 * t0.1 at a power, 0 full: straight in stops between full and lowest, held outside; null where the
 * one at full power is not known. Makers state both ends; what lies between is common practice.
 * [iso2827] [lightingPractice]
 */
export const flashDurationAtS = (head: FlashDurations, powerStops: number): number | null => {
  const { flashDurationS: fullS, flashDurationLowestS: lowestS, minPowerStops } = head;
  if (fullS === undefined) return null;
  if (lowestS === undefined || lowestS <= 0 || fullS <= 0 || minPowerStops >= 0) return fullS;
  const down = Math.min(1, Math.max(0, powerStops / minPowerStops));
  return fullS * (lowestS / fullS) ** down;
};

/** A tail that is cut makes the flash shorter at low power, a lower voltage makes it longer. [iso2827] */
export type PowerControl = 'tail-cut' | 'voltage' | 'not-known';

/** How a head lowers its power, by the lengths of its flash at both ends; within a tenth they say nothing. */
export const powerControl = ({
  flashDurationS: fullS,
  flashDurationLowestS: lowestS,
}: Pick<FlashDurations, 'flashDurationS' | 'flashDurationLowestS'>): PowerControl => {
  if (fullS === undefined || lowestS === undefined) return 'not-known';
  if (lowestS < 0.9 * fullS) return 'tail-cut';
  return lowestS > 1.1 * fullS ? 'voltage' : 'not-known';
};

/**
 * Share of a flash, 0 to 1, that comes after the shutter has closed. The pulse is taken as an
 * exponential decay from its peak at opening; it falls to a tenth in t0.1 [iso2827], so what is
 * left of its light after a time t is 10^(−t/t0.1). Trigger delay comes off the shutter time.
 */
export const clippedShare = (shot: {
  readonly shutterS: number;
  /** t0.1. */
  readonly flashDurationS: number;
  readonly triggerDelayS?: number | undefined;
}): number =>
  shot.flashDurationS <= 0
    ? 0
    : 10 ** (-Math.max(0, shot.shutterS - (shot.triggerDelayS ?? 0)) / shot.flashDurationS);

export const clippedStops = (shot: Parameters<typeof clippedShare>[0]): number =>
  -Math.log2(1 - clippedShare(shot));

/**
 * The shutter time by which a flash divides to compare it with ambient light: the shutter's own up
 * to sync speed. In high-speed sync the light is continuous, so what a shutter t takes of it is
 * t/t_sync · 2^−b and the ratio to ambient no longer depends on t: t_sync · 2^b (F8).
 * [practitionerPages]
 */
export const flashShutterS = (shot: {
  readonly shutterS: number;
  readonly syncShutterS: number;
  readonly hssLossStops: number;
}): number => (isHighSpeedSync(shot) ? shot.syncShutterS * 2 ** shot.hssLossStops : shot.shutterS);

/**
 * A shutter faster than sync; one that only its exact value makes faster is sync itself: 1/512 is
 * what a camera does that states 1/500. [iso516]
 */
export const isHighSpeedSync = (shot: {
  readonly shutterS: number;
  readonly syncShutterS: number;
}): boolean => shot.shutterS < shot.syncShutterS * FASTER_THAN_SYNC;

/** Below this share of the time it is another shutter, no longer another name: 0.15 stop. [iso516] */
const FASTER_THAN_SYNC = 2 ** -0.15;

/** Usable flash lost in high-speed sync against the same flash at sync speed: b + log2(t_sync/t) (F8). [practitionerPages] */
export const hssFlashLossStops = (shot: {
  readonly shutterS: number;
  readonly syncShutterS: number;
  readonly hssLossStops: number;
}): number =>
  isHighSpeedSync(shot) ? shot.hssLossStops + Math.log2(shot.syncShutterS / shot.shutterS) : 0;
