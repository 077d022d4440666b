/*
 * The shoot file, one shoot with the kit it uses, as JSON (RFC 8259, UTF-8, two spaces, entries of
 * maps by id, so that two files can be compared line by line).
 *
 *   format        'undersky-shoot-file'
 *   version       1
 *   exportedAtMs  when it was written, epoch milliseconds
 *   shoot         the shoot document, with its own format 'undersky-shoot' and version
 *   kit           a kit document, 'undersky-kit' with its version, holding copies of exactly the
 *                 cameras, lenses, heads, modifiers, filters and gels that the shoot names
 *   absentKit     items that the shoot names and the kit it came from no longer had, as 'heads.k3f'
 *
 * Fields and their bounds: `core/plan/shoot.ts` and `core/plan/kit.ts`. Fields not listed there
 * are left out on reading. All texts are plain text.
 */
import { KIT, type Kit, type KitShelf } from '../core/plan/kit.ts';
import { kitReferences, missingSpotFaults } from '../core/plan/references.ts';
import type { DocumentFault } from '../core/plan/check-document.ts';
import { KIT_STEPS, SHOOT_STEPS, type UpgradeStep } from '../core/plan/shoot-upgrades.ts';
import { SHOOT, type Shoot } from '../core/plan/shoot.ts';
import { ok, type Result } from '../core/units/result.ts';
import { faultsRefusal, filePart, isFields, upgradedPart } from './file-part.ts';
import { parseFileText, refusal, type FileProblem, type FileText } from './file-text.ts';

export const SHOOT_FILE_FORMAT = 'undersky-shoot-file';

export type ShootFile = {
  readonly shoot: Shoot;
  /** Only what the shoot uses. */
  readonly kit: Kit;
};

export const writeShootFile = ({
  shoot,
  kit,
  exportedAtMs,
}: ShootFile & { readonly exportedAtMs: number }): string => {
  const used = usedOf(shoot, kit);
  const file = {
    format: SHOOT_FILE_FORMAT,
    version: FILE_STEPS.length + 1,
    exportedAtMs,
    shoot,
    kit: used,
    absentKit: absentItems(shoot, used),
  };
  return `${JSON.stringify(file, mapsById, 2)}\n`;
};

/** Reads a file of unknown origin; a refusal says in sentences what was found and what was expected. */
export async function readShootFile(
  source: string | FileText,
): Promise<Result<ShootFile, FileProblem>> {
  const parsed = await parseFileText(source);
  if (!parsed.ok) return parsed;
  const file = parsed.value;
  if (!isFields(file) || file['format'] !== SHOOT_FILE_FORMAT)
    return refusal('not-ours', `Expected an Undersky shoot, found ${kindOfFile(file)}.`);
  const upgraded = upgradedPart('file', file, FILE_STEPS);
  if (!upgraded.ok) return upgraded;
  const shoot = filePart('shoot', SHOOT, upgraded.value['shoot'], SHOOT_STEPS);
  if (!shoot.ok) return shoot;
  const kit = filePart('kit', KIT, upgraded.value['kit'], KIT_STEPS);
  if (!kit.ok) return kit;
  const faults = [
    ...missingSpotFaults(shoot.value).map((fault) => ({ ...fault, path: `shoot.${fault.path}` })),
    ...missingKitFaults(shoot.value, kit.value, upgraded.value['absentKit']),
  ];
  if (faults.length > 0) return faultsRefusal(faults);
  return ok({ shoot: shoot.value, kit: usedOf(shoot.value, kit.value) });
}

/** The first step turns file version 1 into 2. */
const FILE_STEPS: readonly UpgradeStep[] = [];

/** A kit of exactly the items that the shoot names, as far as they are there. */
function usedOf(shoot: Shoot, kit: Kit): Kit {
  const names = new Set(kitReferences(shoot).map(itemName));
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
  };
}

const itemName = ({ shelf, id }: { readonly shelf: KitShelf; readonly id: string }): string =>
  `${shelf}.${id}`;

const absentItems = (shoot: Shoot, kit: Kit): readonly string[] =>
  [
    ...new Set(
      kitReferences(shoot)
        .filter(({ shelf, id }) => !Object.hasOwn(kit[shelf], id))
        .map(itemName),
    ),
  ].toSorted();

const missingKitFaults = (shoot: Shoot, kit: Kit, absent: unknown): readonly DocumentFault[] => {
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

const kindOfFile = (file: unknown): string => {
  if (!isFields(file)) return Array.isArray(file) ? 'a list' : 'a single value';
  const named = file['format'] ?? file['type'];
  if (typeof named === 'string') return `a file of the kind ‘${named.slice(0, 40)}’`;
  const fields = Object.keys(file).slice(0, 3).join(', ').slice(0, 60);
  return fields === '' ? 'an empty object' : `another kind of file, with the fields ${fields}`;
};

/** Writes entries of maps by id, so that undo and redo do not shuffle a file. */
const mapsById = (field: string, value: unknown): unknown =>
  MAPS.has(field) && isFields(value)
    ? Object.fromEntries(
        Object.entries(value).toSorted(([first], [second]) => (first < second ? -1 : 1)),
      )
    : value;

const MAPS: ReadonlySet<string> = new Set([
  'cameras',
  'lenses',
  'heads',
  'modifiers',
  'filters',
  'gels',
  'spots',
  'setups',
  'skyline',
  'lights',
  'readings',
  'pinnedFilterIds',
]);
