import { ratioFromStops } from '../units/stops.ts';

/** What a charge gives in the cold, share of the rated figure at 20 °C. */
const COLD_SHARE = [
  { airC: -10, share: 0.4 },
  { airC: 0, share: 0.65 },
  { airC: 20, share: 1 },
] as const;

/**
 * Capacity of a battery in the cold, 0 to 1: the middles of 0.5 to 0.8 round freezing (F11) and of
 * 0.3 to 0.5 well below it (I7), straight between, held outside. [practitionerPages]
 */
export const coldCapacityShare = (airC: number): number => {
  const [coldest, freezing, warm] = COLD_SHARE;
  if (airC <= coldest.airC) return coldest.share;
  if (airC >= warm.airC) return warm.share;
  const [from, to] = airC < freezing.airC ? [coldest, freezing] : [freezing, warm];
  return from.share + ((to.share - from.share) * (airC - from.airC)) / (to.airC - from.airC);
};

/** How well the share left in the cold is known, ±; at 20 °C nothing is lost. [practitionerPages] */
export const COLD_SHARE_SPREAD = 0.15;

export type BatteryHead = {
  readonly popsPerChargeAtFull: number;
  /** 0 full, −1 half. */
  readonly powerStops: number;
};

/** Below this share of full power a pop costs the electronics as much as the tube. [lightingPractice] */
const LEAST_COST_SHARE = 1 / 32;

/** What a pop costs against one at full power, 0 to 1. */
const costShare = (powerStops: number): number =>
  Math.max(LEAST_COST_SHARE, ratioFromStops(powerStops));

/** Pops from one charge: the rated count over the power used (F11), capped where overheads rule. [practitionerPages] */
export const popsPerCharge = (head: BatteryHead, capacityShare: number): number =>
  Math.floor((head.popsPerChargeAtFull * capacityShare) / costShare(head.powerStops) + 1e-9);

/** Charges that a number of pops takes out of one head: pops × 2^power over the rated count (F11). [practitionerPages] */
export const chargesUsed = (
  head: BatteryHead & { readonly pops: number },
  capacityShare: number,
): number => (head.pops * costShare(head.powerStops)) / (head.popsPerChargeAtFull * capacityShare);

/** Share of a battery's energy that reaches the flash, common practice (I5). [practitionerPages] */
const BATTERY_TO_FLASH = 0.7;
const JOULES_PER_WATT_HOUR = 3600;

/** Full pops that a battery holds by its energy: Wh · 3600 · 0.7 / Ws (F11, I5). [practitionerPages] */
export const popsFromWattHours = (charge: {
  readonly wattHours: number;
  readonly energyWs: number;
}): number => (charge.wattHours * JOULES_PER_WATT_HOUR * BATTERY_TO_FLASH) / charge.energyWs;

/** Pops in a row at a power before a head rests that allows so many full ones: heat goes with energy (I8). [practitionerPages] */
export const popsBeforeRest = (burstPopsAtFull: number, powerStops: number): number =>
  Math.floor(burstPopsAtFull / costShare(powerStops) + 1e-9);

/** Frames a minute that a head keeps up with: recycle for each, and the rest after every burst. */
export const framesPerMinute = (head: {
  readonly recycleS: number;
  /** Null: it does not rest. */
  readonly popsBeforeRest: number | null;
  readonly restS: number;
}): number => {
  const restEachS =
    head.popsBeforeRest === null ? 0 : head.restS / Math.max(1, head.popsBeforeRest);
  return 60 / (head.recycleS + restEachS);
};

/** Shortest pause any head needs between pops. [lightingPractice] */
const SHORTEST_RECYCLE_S = 0.05;

/** Time until the head is ready again: energy over charging rate, so in proportion to power (F12). [practitionerPages] */
export const recycleS = (head: {
  readonly recycleAtFullS: number;
  readonly powerStops: number;
}): number => Math.max(SHORTEST_RECYCLE_S, head.recycleAtFullS * ratioFromStops(head.powerStops));

/** Recycle of a pack that charges several heads one after the other (F12). [practitionerPages] */
export const packRecycleS = (pack: {
  readonly chargeRateWs: number;
  readonly heads: readonly { readonly energyWs: number; readonly powerStops: number }[];
}): number =>
  pack.heads.reduce(
    (energyWs, head) => energyWs + head.energyWs * ratioFromStops(head.powerStops),
    0,
  ) / pack.chargeRateWs;

/** Which head ends the shoot: the place in the list of the one with the fewest pops; null for none. */
export const emptiesFirst = (
  heads: readonly BatteryHead[],
  capacityShare: number,
): { readonly head: number; readonly pops: number } | null => {
  let first: { readonly head: number; readonly pops: number } | null = null;
  heads.forEach((head, index) => {
    const pops = popsPerCharge(head, capacityShare);
    if (first === null || pops < first.pops) first = { head: index, pops };
  });
  return first;
};
