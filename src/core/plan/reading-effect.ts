import { judgeRecipe } from '../strobe/judge-recipe.ts';
import type { Head, Kit, Reading } from './kit.ts';
import { headWithModifier, type ModifiedHead } from './modified-head.ts';
import { inOrder } from './order-key.ts';
import { setupView } from './setup-view.ts';
import type { Shoot } from './shoot.ts';
import { framesOf } from './solved-day.ts';

/** How a setup stands at its first frame. */
export type Standing = {
  /** Below 0: short by so much. */
  readonly inHandStops: number;
  readonly works: boolean;
  /** ± of the figure of the light that a reading concerns. */
  readonly spreadStops: number;
};

export type ReadingEffect = {
  /** The head's figure through that modifier, its parts as for the reading. */
  readonly before: ModifiedHead;
  readonly after: ModifiedHead;
  /** Light that the head gives more than was thought, stops. */
  readonly changedStops: number;
  /** The setups of the shoot that use head and modifier together, and can be asked. */
  readonly setups: readonly {
    readonly setupId: string;
    readonly name: string;
    readonly before: Standing;
    readonly after: Standing;
  }[];
};

/** What keeping a reading, or dropping it (null), changes. */
export function readingEffect(
  { shoot, kit }: { readonly shoot: Shoot; readonly kit: Kit },
  of: { readonly headId: string; readonly modifierId: string; readonly reading: Reading | null },
): ReadingEffect | null {
  const { headId, modifierId, reading } = of;
  const head = kit.heads[headId];
  const modifier = kit.modifiers[modifierId];
  if (head === undefined || modifier === undefined) return null;
  const { [modifierId]: stored, ...others } = head.readings;
  const read: Head = {
    ...head,
    readings: reading === null ? others : { ...head.readings, [modifierId]: reading },
  };
  const parts = reading ?? stored ?? NO_PARTS;
  const figure = (one: Head): ModifiedHead =>
    headWithModifier({ head: one, modifier, modifierId, gel: null, light: partsOf(parts) });
  const before = figure(head);
  const after = figure(read);
  const kitAfter: Kit = { ...kit, heads: { ...kit.heads, [headId]: read } };
  return {
    before,
    after,
    changedStops: fullPowerStops(after) - fullPowerStops(before),
    setups: inOrder(shoot.setups).flatMap(([setupId, setup]) => {
      const uses = Object.values(setup.lights).some(
        (light) => light.headId === headId && light.modifierId === modifierId,
      );
      const was = uses ? standing(shoot, kit, setupId, of) : null;
      const is = uses ? standing(shoot, kitAfter, setupId, of) : null;
      return was === null || is === null
        ? []
        : [{ setupId, name: setup.name, before: was, after: is }];
    }),
  };
}

const NO_PARTS = { diffuser: false, baffle: false, grid: false };

const partsOf = ({ diffuser, baffle, grid }: typeof NO_PARTS): typeof NO_PARTS => ({
  diffuser,
  baffle,
  grid,
});

const fullPowerStops = ({ guideNumberM, lossStops }: ModifiedHead): number =>
  2 * Math.log2(guideNumberM) - lossStops;

function standing(
  shoot: Shoot,
  kit: Kit,
  setupId: string,
  of: { readonly headId: string; readonly modifierId: string },
): Standing | null {
  const setup = shoot.setups[setupId];
  const [instantMs] = setup === undefined ? [] : framesOf(shoot, setup);
  if (instantMs === undefined) return null;
  const seen = setupView({ shoot, kit, setupId, instantMs });
  if (!seen.ok) return null;
  const { answer, input, sources } = seen.value;
  return {
    inHandStops: answer.ok ? answer.value.recipe.inHandStops : judgeRecipe(input).inHandStops,
    works: answer.ok,
    spreadStops: Math.max(
      ...sources
        .filter(({ light }) => light.headId === of.headId && light.modifierId === of.modifierId)
        .map(({ output }) => output.spreadStops),
    ),
  };
}

/** Whether what a meter saw makes a reading to trust: found and expected, or null. */
export function readingDoubt(
  reading: Pick<Reading, 'fNumber' | 'ambientFNumber'>,
  changedStops: number,
): string | null {
  const ambientShare = ((reading.ambientFNumber ?? 0) / reading.fNumber) ** 2;
  if (ambientShare > MUCH_AMBIENT - 1e-9)
    return `Ambient is ${Math.round(100 * ambientShare)} % of what the meter saw: a little misread there is as much of the flash. Measure in a darker place, or with a faster shutter.`;
  if (Math.abs(changedStops) >= FAR_OFF_STOPS)
    return `That is ${Math.abs(changedStops).toFixed(1)} stops ${changedStops > 0 ? 'more' : 'less'} than was thought; rated figures are off by about one. Look again at ISO, power and distance.`;
  return null;
}

const MUCH_AMBIENT = 0.5;
/** Twice what rated figures were found to differ by (B16, B17). [practitionerPages] */
const FAR_OFF_STOPS = 2.2;
