import { airClass, sparesTooMany, type AirClass } from './air-travel.ts';
import { batteriesFor, type BatteryNeed } from './batteries-for-day.ts';
import type { Kit } from './kit.ts';
import { lightsWithoutStand, packedItems, type PackedItem } from './packed-items.ts';
import { inOrder } from './order-key.ts';
import type { Setup } from './setup-schema.ts';
import type { Shoot } from './shoot.ts';
import { solvedDay, type SolvedSetup } from './solved-day.ts';
import { inWind } from './stand-in-wind.ts';

/** Batteries of one kind, against what may fly. */
export type PackedBattery = BatteryNeed & {
  /** Null where the watt-hours are not known. */
  readonly airClass: AirClass | null;
  /** Spares beyond what one passenger may take. */
  readonly sparesTooMany: number;
};

export type PackingList = {
  readonly items: readonly PackedItem[];
  readonly batteries: readonly PackedBattery[];
  /** Of the setup that asks for most, with its wind; null where no wind or no stand is known. */
  readonly ballast: { readonly kg: number; readonly gustMS: number; readonly setup: string } | null;
  /** Setups with stands whose wind is not known. */
  readonly windNotKnown: readonly string[];
  /** Setups in whose wind a stand is above the user's limit. */
  readonly aboveLimit: readonly string[];
  /** Most lights at once that no stand is named for. */
  readonly withoutStand: number;
  /** Of all that has a weight, batteries with it, ballast without. */
  readonly totalKg: number;
  /** Pieces without a weight. */
  readonly notWeighed: number;
};

/** What a whole shoot takes along, from all its setups. */
export function packingList(
  shoot: Shoot,
  kit: Kit,
  solved: readonly SolvedSetup[] = solvedDay(shoot, kit),
): PackingList {
  const items = packedItems(solved, kit);
  const batteries = batteriesFor(solved, kit).map(packedBattery);
  const weighed = [
    ...items.map(({ count, massKg }) => ({ count, massKg })),
    ...batteries.flatMap(({ battery, needed }) =>
      battery === null
        ? []
        : [{ count: needed, massKg: battery.massKg > 0 ? battery.massKg : null }],
    ),
  ];
  const winds = solved.map(({ setup }) => windOf(setup, kit));
  return {
    items,
    batteries,
    ballast: winds
      .flatMap(({ ballast }) => ballast ?? [])
      .reduce<PackingList['ballast']>(
        (most, ballast) => (most === null || ballast.kg > most.kg ? ballast : most),
        null,
      ),
    windNotKnown: winds.flatMap(({ name, notKnown }) => (notKnown ? [name] : [])),
    aboveLimit: winds.flatMap(({ name, above }) => (above ? [name] : [])),
    withoutStand: Math.max(0, ...solved.map(({ setup }) => lightsWithoutStand(setup))),
    totalKg: weighed.reduce((sum, { count, massKg }) => sum + count * (massKg ?? 0), 0),
    notWeighed: weighed.reduce((sum, { count, massKg }) => sum + (massKg === null ? count : 0), 0),
  };
}

const packedBattery = (need: BatteryNeed): PackedBattery => ({
  ...need,
  airClass: need.battery === null ? null : airClass(need.battery.wattHours),
  sparesTooMany:
    need.battery === null
      ? 0
      : sparesTooMany({
          wattHours: need.battery.wattHours,
          spares: need.needed - need.inHeads,
        }),
});

type Wind = {
  readonly name: string;
  readonly ballast: PackingList['ballast'];
  readonly notKnown: boolean;
  readonly above: boolean;
};

/** All stands of a setup in its gust. */
function windOf(setup: Setup, kit: Kit): Wind {
  let kg: number | null = null;
  let notKnown = false;
  let above = false;
  for (const [, light] of inOrder(setup.lights)) {
    const head = kit.heads[light.headId];
    const modifier = kit.modifiers[light.modifierId];
    const carrier = light.standId === null ? undefined : kit.stands[light.standId];
    if (head === undefined || modifier === undefined || carrier === undefined) continue;
    const stood = inWind({ carrier, head, modifier, light }, setup.gustMS);
    if (stood.kind === 'ballast') kg = (kg ?? 0) + light.headCount * stood.ballastKg;
    notKnown ||= stood.kind === 'wind-not-known';
    above ||= stood.kind === 'above-limit';
  }
  return {
    name: setup.name,
    ballast:
      kg === null || setup.gustMS === null ? null : { kg, gustMS: setup.gustMS, setup: setup.name },
    notKnown,
    above,
  };
}
