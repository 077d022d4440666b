/** Stops that high-speed sync costs on entering, until measured: 1.5 to 2.3 in print (D2 to D5). [practitionerPages] */
export const HSS_LOSS_STOPS = 2;

/** t0.1 over t0.5 of a pulse that decays exponentially: ln 10 / ln 2. [iso2827] */
const TOTAL_OVER_HALF_DURATION = Math.log(10) / Math.log(2);

export const totalFlashDurationS = (halfPeakDurationS: number): number =>
  halfPeakDurationS * TOTAL_OVER_HALF_DURATION;

/**
 * Share of a flash, 0 to 1, that comes after the shutter has closed. The pulse is taken as an
 * exponential decay from its peak at opening; it falls to a tenth in t0.1 [iso2827], so what is
 * left of its light after a time t is 10^(−t/t0.1). Trigger delay comes off the shutter time.
 * A tail-cut flash at part power is shorter, a voltage-controlled one longer than at full.
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
