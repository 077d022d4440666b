import type { DocumentFault } from '../core/plan/check-document.ts';
import type { Kit, KitShelf } from '../core/plan/kit.ts';
import { kitReferences } from '../core/plan/references.ts';
import type { Shoot } from '../core/plan/shoot.ts';

export const KIT_SHELVES = [
  'cameras',
  'lenses',
  'heads',
  'modifiers',
  'filters',
  'gels',
  'stands',
  'batteries',
] as const satisfies readonly KitShelf[];

type Named = { readonly shelf: KitShelf; readonly id: string };

/** A kit of exactly the items that the shoot names and their batteries, as far as they are there. */
export function usedKit(shoot: Shoot, kit: Kit): Kit {
  const references = kitReferences(shoot);
  const names = new Set([...references, ...batteriesOf(references, kit)].map(itemName));
  const used = <Item>(
    shelf: KitShelf,
    items: Readonly<Record<string, Item>>,
  ): Record<string, Item> =>
    Object.fromEntries(Object.entries(items).filter(([id]) => names.has(itemName({ shelf, id }))));
  return {
    ...kit,
    cameras: used('cameras', kit.cameras),
    lenses: used('lenses', kit.lenses),
    heads: used('heads', kit.heads),
    modifiers: used('modifiers', kit.modifiers),
    filters: used('filters', kit.filters),
    gels: used('gels', kit.gels),
    stands: used('stands', kit.stands),
    batteries: used('batteries', kit.batteries),
  };
}

/** Items that the shoot names and the kit does not have, as 'heads.k3f'. */
export const absentItems = (shoot: Shoot, kit: Kit): readonly string[] =>
  [
    ...new Set(
      kitReferences(shoot)
        .filter(({ shelf, id }) => !Object.hasOwn(kit[shelf], id))
        .map(itemName),
    ),
  ].toSorted();

/** One fault for each place of the shoot that names an item neither there nor known to be absent. */
export const missingKitFaults = (
  shoot: Shoot,
  kit: Kit,
  absent: unknown,
): readonly DocumentFault[] => {
  const known: readonly unknown[] = Array.isArray(absent) ? absent : [];
  return kitReferences(shoot)
    .filter(({ shelf, id }) => !Object.hasOwn(kit[shelf], id))
    .filter((reference) => !known.includes(itemName(reference)))
    .map(({ path, shelf, id }) => ({
      path: `shoot.${path}`,
      expected: `the id of one of the ${shelf} in this file`,
      found: `‘${id}’, which is not there`,
    }));
};

const batteriesOf = (references: readonly Named[], kit: Kit): readonly Named[] =>
  references.flatMap(({ shelf, id }) => {
    const batteryId = shelf === 'heads' ? (kit.heads[id]?.batteryId ?? null) : null;
    return batteryId === null ? [] : [{ shelf: 'batteries' as const, id: batteryId }];
  });

const itemName = ({ shelf, id }: Named): string => `${shelf}.${id}`;
