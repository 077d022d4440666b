import { putKitItem, together, type Edit } from '../core/plan/edits.ts';
import type { Kit, KitShelf } from '../core/plan/kit.ts';
import { sameValue } from '../core/plan/same-value.ts';
import type { Shoot } from '../core/plan/shoot.ts';
import { pictureHashes, type FilePhotos } from './file-photos.ts';
import type { ShootFile } from './shoot-file.ts';
import { KIT_SHELVES } from './used-kit.ts';

export type ShootImport = {
  /** To be created. */
  readonly shoot: Shoot;
  /** The id it had in the file, where a shoot of that id is here already. */
  readonly copyOf: string | null;
  /** Adds the items that the kit here lacks; changes none that it has. */
  readonly kitEdit: Edit<Kit>;
  /** Names of the items added. */
  readonly added: readonly string[];
  /** Names of items that are here with other figures; those here stay and the shoot uses them. */
  readonly keptAsHere: readonly string[];
  /** To be kept before the shoot is created. */
  readonly photos: FilePhotos;
  /** How many photos of the shoot come without their picture. */
  readonly photosWithoutPicture: number;
};

/** What importing a file would do here; nothing that is here changes. `newId` is used where the shoot becomes a copy. */
export function importShoot({
  file,
  shootIdsHere,
  kit,
  newId,
}: {
  readonly file: ShootFile;
  readonly shootIdsHere: readonly string[];
  readonly kit: Kit;
  readonly newId: string;
}): ShootImport {
  const isHere = shootIdsHere.includes(file.shoot.id);
  const items = itemsOf(file.kit);
  const missing = items.filter(({ shelf, id }) => !Object.hasOwn(kit[shelf], id));
  const different = items.filter(
    ({ shelf, id, item }) => Object.hasOwn(kit[shelf], id) && !sameValue(kit[shelf][id], item),
  );
  return {
    shoot: isHere ? { ...file.shoot, id: newId } : file.shoot,
    copyOf: isHere ? file.shoot.id : null,
    kitEdit: together(...missing.map(({ shelf, id, item }) => putKitItem(shelf, id, item))),
    added: missing.map(({ item }) => item.name),
    keptAsHere: different.map(({ item }) => item.name),
    photos: file.photos,
    photosWithoutPicture: pictureHashes(file.shoot).size - Object.keys(file.photos).length,
  };
}

type ShelfItem = {
  readonly shelf: KitShelf;
  readonly id: string;
  readonly item: Kit[KitShelf][string];
};

const itemsOf = (kit: Kit): readonly ShelfItem[] =>
  KIT_SHELVES.flatMap((shelf) =>
    Object.entries(kit[shelf]).map(([id, item]) => ({ shelf, id, item })),
  );
