import type { Kit, KitShelf } from './kit.ts';
import { inOrder } from './order-key.ts';
import { filtersOf } from './setup-filters.ts';
import type { Light, Setup } from './setup-schema.ts';
import type { SolvedSetup } from './solved-day.ts';

export const PARTS = ['diffuser', 'baffle', 'grid'] as const;
export type Part = (typeof PARTS)[number];

/** One line of a packing list. */
export type PackedItem = {
  readonly shelf: KitShelf;
  readonly id: string;
  /** Of the modifier, a part that is taken along. */
  readonly part: Part | null;
  /** Null: not in the kit. */
  readonly name: string | null;
  /** Most of it in use at once. */
  readonly count: number;
  /** Null: the kit does not say. */
  readonly owned: number | null;
  /** Of one; null: not stated. */
  readonly massKg: number | null;
};

type Need = { readonly shelf: KitShelf; readonly id: string; readonly part: Part | null };

/** What the setups use: of each thing the most that is in use at once. Batteries are counted apart. */
export function packedItems(setups: readonly SolvedSetup[], kit: Kit): readonly PackedItem[] {
  const most = new Map<string, { readonly need: Need; count: number }>();
  for (const solved of setups) {
    const here = new Map<string, { readonly need: Need; count: number }>();
    for (const [need, count] of needsOf(solved, kit)) {
      const key = `${need.shelf} ${need.id} ${need.part ?? ''}`;
      const known = here.get(key);
      if (known === undefined) here.set(key, { need, count });
      else known.count += count;
    }
    for (const [key, entry] of here)
      if (entry.count > (most.get(key)?.count ?? 0)) most.set(key, entry);
  }
  const items = [...most.values()].map(({ need, count }) => itemOf(need, count, kit));
  return SHELF_ORDER.flatMap((shelf) => items.filter((item) => item.shelf === shelf));
}

const SHELF_ORDER = [
  'cameras',
  'lenses',
  'filters',
  'heads',
  'modifiers',
  'gels',
  'stands',
] as const satisfies readonly KitShelf[];

type Counted = readonly [need: Need, count: number];

function needsOf(solved: SolvedSetup, kit: Kit): readonly Counted[] {
  const { setup } = solved;
  return [
    [whole('cameras', setup.cameraId), 1],
    [whole('lenses', setup.lensId), 1],
    ...filterIds(solved, kit).map((id): Counted => [whole('filters', id), 1]),
    ...inOrder(setup.lights).flatMap(([, light]) => needsOfLight(light, kit)),
  ];
}

const whole = (shelf: KitShelf, id: string): Need => ({ shelf, id, part: null });

function needsOfLight(light: Light, kit: Kit): readonly Counted[] {
  const { headCount: count, modifierId } = light;
  const modifier = kit.modifiers[modifierId];
  const parts = PARTS.filter(
    (part) => light[part] && modifier !== undefined && modifier[`${part}Stops`] !== null,
  );
  const gels = [light.gelId, light.secondGelId].filter((id) => id !== null);
  return [
    [whole('heads', light.headId), count],
    [whole('modifiers', modifierId), count],
    ...parts.map((part): Counted => [{ shelf: 'modifiers', id: modifierId, part }, count]),
    ...gels.map((id): Counted => [whole('gels', id), count]),
    ...(light.standId === null ? [] : [[whole('stands', light.standId), count] satisfies Counted]),
  ];
}

/** The pinned filters, else those of the recipes at first and last frame. */
function filterIds({ setup, views }: SolvedSetup, kit: Kit): readonly string[] {
  if (setup.pinnedFilterIds !== null) return Object.keys(setup.pinnedFilterIds);
  const used = views.flatMap(({ answer }) =>
    answer.ok ? filtersOf(setup, kit, answer.value.recipe).map(([id]) => id) : [],
  );
  return [...new Set(used)];
}

function itemOf(need: Need, count: number, kit: Kit): PackedItem {
  const item: Weighed | undefined = kit[need.shelf][need.id];
  const massKg = need.part === null ? (item?.massKg ?? 0) : 0;
  return {
    ...need,
    name: item?.name ?? null,
    count,
    owned: item?.owned ?? null,
    massKg: massKg > 0 ? massKg : null,
  };
}

/** What a line takes of an item, whatever its shelf. */
type Weighed = { readonly name: string; readonly owned?: number; readonly massKg?: number };

/** Lights of a setup that stand on nothing the kit names. */
export const lightsWithoutStand = (setup: Setup): number =>
  Object.values(setup.lights).reduce(
    (sum, light) => sum + (light.standId === null ? light.headCount : 0),
    0,
  );
