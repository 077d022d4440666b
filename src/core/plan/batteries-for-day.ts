import { headCharges, type HeadCharges } from './head-charges.ts';
import type { Battery, Kit } from './kit.ts';
import type { Shoot } from './shoot.ts';
import { solvedDay, type SolvedSetup } from './solved-day.ts';

/** How many of one battery its heads empty. */
export type BatteryNeed = {
  /** Null: the heads' battery is not named, or not in the kit. */
  readonly batteryId: string | null;
  readonly battery: Battery | null;
  readonly heads: readonly HeadCharges[];
  /** In the heads at once. */
  readonly inHeads: number;
  /** Each head on batteries of its own, the last one not emptied. */
  readonly needed: number;
  /** The same at the far end of the span. */
  readonly neededAtMost: number;
  /** Null where the battery is not known. */
  readonly owned: number | null;
  readonly shortBy: number;
};

/** The batteries of a whole day: every setup of a shoot, none charged between them. */
export const batteriesForDay = (
  shoot: Shoot,
  kit: Kit,
  solved: readonly SolvedSetup[] = solvedDay(shoot, kit),
): readonly BatteryNeed[] => batteriesFor(solved, kit);

/** The batteries of some setups, in the order of the heads. */
export function batteriesFor(setups: readonly SolvedSetup[], kit: Kit): readonly BatteryNeed[] {
  const byBattery = new Map<string, HeadCharges[]>();
  for (const charges of headCharges(setups, kit)) {
    const { batteryId } = charges.head;
    const key = batteryId !== null && batteryId in kit.batteries ? batteryId : `${charges.headId} `;
    byBattery.set(key, [...(byBattery.get(key) ?? []), charges]);
  }
  return [...byBattery].map(([key, heads]) => {
    const battery = kit.batteries[key] ?? null;
    const units = heads.flatMap((charges) => charges.units);
    const needed = units.reduce((sum, { middle }) => sum + wholeBatteries(middle), 0);
    return {
      batteryId: battery === null ? null : key,
      battery,
      heads,
      inHeads: units.length,
      needed,
      neededAtMost: units.reduce((sum, { most }) => sum + wholeBatteries(most), 0),
      owned: battery?.owned ?? null,
      shortBy: battery === null ? 0 : Math.max(0, needed - battery.owned),
    };
  });
}

const wholeBatteries = (charges: number): number => Math.max(1, Math.ceil(charges - 1e-9));
