import { chargesUsed, coldCapacityShare } from '../strobe/battery.ts';
import type { Fix, Recipe } from '../strobe/recipe.ts';
import { solveRecipe } from '../strobe/solve-recipe.ts';
import { fail, ok, type Result } from '../units/result.ts';
import type { Battery } from './kit.ts';
import { headLossChanges } from './head-loss.ts';
import { fixFamilies } from './fix-families.ts';
import { changedOption, sorted, type PlanBChange, type PlanBOption } from './plan-b-option.ts';
import { recipeFixChanges } from './recipe-fix-changes.ts';
import { setupCase, type SetupCase, type SetupCaseInput, type SetupGap } from './setup-case.ts';
import { brighterLight } from './shifted-case.ts';
import { windCard, type WindCard } from './plan-b-wind.ts';

/** What to do when one thing goes otherwise than planned; what works comes first. */
export type PlanBCard =
  | {
      readonly kind: 'sky';
      /** Sky and ambient, against the prediction. */
      readonly stops: number;
      readonly options: readonly PlanBOption[];
    }
  | WindCard
  | {
      readonly kind: 'lost-head';
      readonly headId: string;
      readonly lightId: string;
      /** Another of it lies in the car. */
      readonly spare: boolean;
      readonly options: readonly PlanBOption[];
    }
  | {
      readonly kind: 'lost-battery';
      readonly batteryId: string;
      readonly battery: Battery;
      /** Left once one is lost, and how many the setup has in its heads. */
      readonly left: number;
      readonly inHeads: number;
      /** Charges that all frames of the setup take out of those heads; null without a recipe. */
      readonly charges: number | null;
      /** Every head still has one; otherwise the options do without a head. */
      readonly spare: boolean;
      readonly options: readonly PlanBOption[];
    };

/** A cloud in or out: what the trade plans for (question 45). [practitionerPages] */
const SKY_STOPS = 2;

/** Plan B of a setup at its minute, every option solved again and run forward. */
export function planB(asked: SetupCaseInput): Result<readonly PlanBCard[], SetupGap> {
  const made = setupCase(asked);
  return made.ok ? ok(planBOf(asked, made.value)) : fail(made.problem);
}

/** The same of a case whose light may have been shifted by readings. */
export function planBOf(asked: SetupCaseInput, base: SetupCase): readonly PlanBCard[] {
  const wind = windCard(asked, base);
  return [
    skyCard(asked, base, SKY_STOPS),
    skyCard(asked, base, -SKY_STOPS),
    ...(wind === null ? [] : [wind]),
    ...lostHeads(asked, base),
    ...lostBatteries(asked, base),
  ];
}

function skyCard(asked: SetupCaseInput, base: SetupCase, stops: number): PlanBCard {
  const light = brighterLight(base.light, stops);
  const made = setupCase(asked, light);
  if (!made.ok) return { kind: 'sky', stops, options: [] };
  const changed = made.value;
  const asItStands = changedOption(asked, changed, []);
  if (asItStands === null) return { kind: 'sky', stops, options: [] };
  const options =
    asItStands.answer.ok || changed.input === null
      ? [asItStands]
      : sorted([asItStands, ...fixesOf(asked, changed)]);
  return { kind: 'sky', stops, options };
}

/** The lightest of each kind of change that makes a case work again. */
function fixesOf(asked: SetupCaseInput, base: SetupCase): readonly PlanBOption[] {
  if (base.input === null) return [];
  const answer = solveRecipe(base.input);
  if (answer.ok) return [];
  const { problem } = answer;
  const families = [
    ...problem.fixes.map((fix) =>
      fix.kind === 'pair'
        ? pairChanges(asked, base, fix.parts ?? [])
        : recipeFixChanges(asked, base, fix).map((change) => [change]),
    ),
    ...fixFamilies({ asked, base, problem }).map((family) => family.map((change) => [change])),
  ];
  return families.flatMap((family) => {
    for (const changes of family) {
      const option = changedOption(asked, base, changes);
      if (option?.answer.ok === true) return [option];
    }
    return [];
  });
}

function pairChanges(
  asked: SetupCaseInput,
  base: SetupCase,
  parts: readonly Fix[],
): readonly (readonly PlanBChange[])[] {
  const changes = parts.map((part) => recipeFixChanges(asked, base, part)[0]);
  return changes.every((change) => change !== undefined) ? [changes] : [];
}

const lostHeads = (asked: SetupCaseInput, base: SetupCase): readonly PlanBCard[] =>
  base.sources.map(({ lightId, light, head }) => {
    const used = unitsUsed(base, light.headId);
    return {
      kind: 'lost-head',
      headId: light.headId,
      lightId,
      spare: head.owned > used,
      options: lossOptions(asked, base, lightId, () => true),
    };
  });

const unitsUsed = ({ sources }: SetupCase, headId: string): number =>
  sources.reduce((sum, { light }) => sum + (light.headId === headId ? light.headCount : 0), 0);

/** As it stands where a spare lies in the car, else every way to do without one unit of that head. */
function lossOptions(
  asked: SetupCaseInput,
  base: SetupCase,
  lightId: string,
  mayTake: (headId: string) => boolean,
): readonly PlanBOption[] {
  const ways = headLossChanges(asked, base, lightId, mayTake);
  return sorted(ways.flatMap((changes) => changedOption(asked, base, changes) ?? []));
}

function lostBatteries(asked: SetupCaseInput, base: SetupCase): readonly PlanBCard[] {
  const { kit } = asked;
  const ids = new Set(base.sources.flatMap(({ head }) => head.batteryId ?? []));
  const planned = changedOption(asked, base, []);
  const recipe = planned?.answer.ok === true ? planned.answer.value : null;
  return [...ids].flatMap((batteryId): PlanBCard[] => {
    const battery = kit.batteries[batteryId];
    if (battery === undefined) return [];
    const fed = base.sources.filter(({ head }) => head.batteryId === batteryId);
    const inHeads = fed.reduce((sum, { light }) => sum + light.headCount, 0);
    const left = battery.owned - 1;
    const spare = left >= inHeads;
    const otherBattery = (headId: string): boolean => kit.heads[headId]?.batteryId !== batteryId;
    return [
      {
        kind: 'lost-battery',
        batteryId,
        battery,
        left,
        inHeads,
        charges: recipe === null ? null : chargesOf(base, batteryId, recipe),
        spare,
        options: spare
          ? planned === null
            ? []
            : [planned]
          : sorted(fed.flatMap(({ lightId }) => lossOptions(asked, base, lightId, otherBattery))),
      },
    ];
  });
}

const chargesOf = (
  { sources, setup }: SetupCase,
  batteryId: string,
  recipe: Pick<Recipe, 'lights'>,
): number =>
  sources.reduce((sum, { head, light }, place) => {
    if (head.batteryId !== batteryId) return sum;
    const powerStops = recipe.lights[place]?.powerStops ?? 0;
    const each = chargesUsed(
      { pops: setup.frames, popsPerChargeAtFull: head.popsPerCharge, powerStops },
      coldCapacityShare(setup.airC),
    );
    return sum + each * light.headCount;
  }, 0);
