import { chargesUsed, COLD_SHARE_SPREAD, coldCapacityShare } from '../strobe/battery.ts';
import type { Head, Kit } from './kit.ts';
import { inOrder } from './order-key.ts';
import type { Light } from './setup-schema.ts';
import type { SolvedSetup } from './solved-day.ts';

/** Charges out of one head, and the span that eight of ten days fall in. */
export type Charges = {
  readonly middle: number;
  readonly least: number;
  readonly most: number;
};

/** One kind of head over some setups. */
export type HeadCharges = {
  readonly headId: string;
  readonly head: Head;
  /** As many as are used at once, the busiest first. */
  readonly units: readonly Charges[];
  /** Lights without a recipe: counted at full power. */
  readonly atFullPower: number;
};

/** How far a maker's count of pops is off either way, common practice. [lightingPractice] */
const RATED_SPREAD_SHARE = 0.1;

/**
 * What every head gives over some setups: frames × 2^power over the rated pops, the cold taken
 * off, at the brighter of first and last frame. Of several equal heads the first of each setup is
 * the one that works hardest all day. The span: the figures of head and sky put the power higher
 * or lower, the rated count and the cold the charge. (F11, I7) [practitionerPages]
 */
export function headCharges(setups: readonly SolvedSetup[], kit: Kit): readonly HeadCharges[] {
  return inOrder(kit.heads).flatMap(([headId, head]) => {
    const units: Charges[] = [];
    let atFullPower = 0;
    for (const solved of setups) {
      const loads = inOrder(solved.setup.lights)
        .filter(([, light]) => light.headId === headId)
        .flatMap(([lightId, light]) => {
          const power = powerOf(solved, lightId);
          if (power === null) atFullPower += 1;
          return equalLoads(light, loadOf(solved, head, power ?? FULL_POWER));
        })
        .toSorted((first, second) => second.middle - first.middle);
      loads.forEach((load, place) => {
        units[place] = together(units[place] ?? NONE, load);
      });
    }
    return units.length === 0 ? [] : [{ headId, head, units, atFullPower }];
  });
}

const NONE: Charges = { middle: 0, least: 0, most: 0 };

const together = (first: Charges, second: Charges): Charges => ({
  middle: first.middle + second.middle,
  least: first.least + second.least,
  most: first.most + second.most,
});

const equalLoads = (light: Pick<Light, 'headCount'>, load: Charges): readonly Charges[] =>
  Array.from({ length: light.headCount }, () => load);

type Power = { readonly stops: number; readonly spreadStops: number };
const FULL_POWER: Power = { stops: 0, spreadStops: 0 };

/** The higher power of first and last frame; null where neither has a recipe. */
function powerOf({ views }: SolvedSetup, lightId: string): Power | null {
  let highest: Power | null = null;
  for (const view of views) {
    const place = view.sources.findIndex((source) => source.lightId === lightId);
    const lit = view.answer.ok ? view.answer.value.recipe.lights[place] : undefined;
    const source = view.sources[place];
    if (lit === undefined || source === undefined) continue;
    if (highest !== null && lit.powerStops <= highest.stops) continue;
    highest = {
      stops: lit.powerStops,
      spreadStops: Math.hypot(source.output.spreadStops, view.referenceSpreadStops),
    };
  }
  return highest;
}

function loadOf({ setup }: SolvedSetup, head: Head, power: Power): Charges {
  const share = coldCapacityShare(setup.airC);
  const coldSpread = COLD_SHARE_SPREAD * Math.min(1, (1 - share) / (1 - coldCapacityShare(0)));
  const charges = (powerStops: number, capacityShare: number): number =>
    chargesUsed(
      { pops: setup.frames, popsPerChargeAtFull: head.popsPerCharge, powerStops },
      capacityShare,
    );
  return {
    middle: charges(power.stops, share),
    least: charges(
      Math.max(head.minPowerStops, power.stops - power.spreadStops),
      (share + coldSpread) * (1 + RATED_SPREAD_SHARE),
    ),
    most: charges(
      Math.min(0, power.stops + power.spreadStops),
      (share - coldSpread) * (1 - RATED_SPREAD_SHARE),
    ),
  };
}
