/*
 * The shoot file, one shoot with the kit it uses, as JSON (RFC 8259, UTF-8, two spaces, entries of
 * maps by id, so that two files can be compared line by line).
 *
 *   format        'undersky-shoot-file'
 *   version       2
 *   exportedAtMs  when it was written, epoch milliseconds
 *   shoot         the shoot document, with its own format 'undersky-shoot' and version
 *   kit           a kit document, 'undersky-kit' with its version, holding copies of exactly the
 *                 cameras, lenses, heads, modifiers, filters, gels and stands that the shoot names,
 *                 and the batteries of those heads
 *   absentKit     items that the shoot names and the kit it came from no longer had, as 'heads.k3f'
 *   photos        the small pictures that the shoot names and that went along, by content hash
 *                 (SHA-256): each { type: 'image/jpeg', base64 }, at most 2 MB, without camera data
 *
 * Fields and their bounds: `core/plan/shoot.ts` and `core/plan/kit.ts`. Fields not listed there
 * are left out on reading. All texts are plain text.
 */
import { KIT, type Kit } from '../core/plan/kit.ts';
import { missingSpotFaults } from '../core/plan/references.ts';
import { KIT_STEPS, SHOOT_STEPS, type UpgradeStep } from '../core/plan/shoot-upgrades.ts';
import { SHOOT, type Shoot, type Spot } from '../core/plan/shoot.ts';
import { ok, type Result } from '../core/units/result.ts';
import { readFilePhotos, writtenPhotos, type ContentHash, type FilePhotos } from './file-photos.ts';
import { faultsRefusal, filePart, isFields, upgradedPart } from './file-part.ts';
import { parseFileText, refusal, type FileProblem, type FileText } from './file-text.ts';
import { absentItems, missingKitFaults, usedKit } from './used-kit.ts';

export const SHOOT_FILE_FORMAT = 'undersky-shoot-file';

export type ShootFile = {
  readonly shoot: Shoot;
  /** Only what the shoot uses. */
  readonly kit: Kit;
  /** Only what the shoot names. */
  readonly photos: FilePhotos;
};

export const MAX_SHOOT_FILE_BYTES = 60e6;

export const writeShootFile = ({
  shoot,
  kit,
  photos,
  exportedAtMs,
}: ShootFile & { readonly exportedAtMs: number }): string => {
  const used = usedKit(shoot, kit);
  const file = {
    format: SHOOT_FILE_FORMAT,
    version: FILE_STEPS.length + 1,
    exportedAtMs,
    shoot: asAsked(shoot),
    kit: used,
    absentKit: absentItems(shoot, used),
    photos: writtenPhotos(shoot, photos),
  };
  return `${JSON.stringify(file, mapsById, 2)}\n`;
};

/** Without what is worked out when a shoot is opened. */
const asAsked = (shoot: Shoot): Shoot => ({
  ...shoot,
  spots: Object.fromEntries(
    Object.entries(shoot.spots).map(([id, spot]) => [
      id,
      Object.fromEntries(Object.entries(spot).filter(([field]) => field !== 'skylineNow')) as Spot,
    ]),
  ),
});

/** Reads a file of unknown origin; a refusal says in sentences what was found and what was expected. */
export async function readShootFile(
  source: string | FileText,
  contentHash: ContentHash,
): Promise<Result<ShootFile, FileProblem>> {
  const parsed = await parseFileText(source, MAX_SHOOT_FILE_BYTES);
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
  const photos = await readFilePhotos(upgraded.value['photos'], shoot.value, contentHash);
  if (!photos.ok) return photos;
  return ok({
    shoot: shoot.value,
    kit: usedKit(shoot.value, kit.value),
    photos: photos.value,
  });
}

/** Version 2: photos go along. */
const photosAlong: UpgradeStep = (older) => ({ ...older, photos: {} });

/** The first step turns file version 1 into 2. */
const FILE_STEPS: readonly UpgradeStep[] = [photosAlong];

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
  'stands',
  'batteries',
  'settings',
  'spots',
  'setups',
  'skyline',
  'surfaces',
  'contacts',
  'checklist',
  'photos',
  'readings',
  'obstacles',
  'outlineSets',
  'hidden',
  'lights',
  'pinnedFilterIds',
]);
