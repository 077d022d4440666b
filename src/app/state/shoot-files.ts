import type { Kit } from '../../core/plan/kit.ts';
import type { Shoot } from '../../core/plan/shoot.ts';
import { fail, ok, type Result } from '../../core/units/result.ts';
import { pictureHashes, type FilePhotos } from '../../exchange/file-photos.ts';
import { importShoot, type ShootImport } from '../../exchange/import-shoot.ts';
import type { SensitiveContent } from '../../exchange/sensitive-content.ts';
import { sensitiveContents, withoutContents } from '../../exchange/sensitive-contents.ts';
import { MAX_SHOOT_FILE_BYTES, readShootFile, writeShootFile } from '../../exchange/shoot-file.ts';
import { contentHash } from '../../storage/content-hash.ts';
import type { ShootRepository, ShootSummary } from '../../storage/shoot-repository.ts';

export type { SensitiveContent, ShootImport, ShootSummary };

/** What goes along with a shoot file that its owner may not want to hand on. */
export const contentsThatGoAlong = (shoot: Shoot): readonly SensitiveContent[] =>
  sensitiveContents(shoot);

/** The shoot file with the pictures of its photos, without what was left out; or why there is none. */
export async function shootFileText(leaving: {
  readonly repository: ShootRepository;
  readonly shoot: Shoot;
  readonly kit: Kit;
  readonly leftOut: readonly SensitiveContent[];
  readonly exportedAtMs: number;
}): Promise<Result<string, string>> {
  const { repository, kit, exportedAtMs } = leaving;
  const shoot = withoutContents(leaving.shoot, leaving.leftOut);
  const photos = await picturesOf(shoot, repository);
  if (!photos.ok) return photos;
  const text = writeShootFile({ shoot, kit, photos: photos.value, exportedAtMs });
  const bytes = new Blob([text]).size;
  return bytes > MAX_SHOOT_FILE_BYTES
    ? fail(
        `The file would take ${Math.ceil(bytes / 1e6)} MB, and ${MAX_SHOOT_FILE_BYTES / 1e6} MB is the most that can be read back. Leave out some photos or outlines.`,
      )
    : ok(text);
}

async function picturesOf(
  shoot: Shoot,
  repository: ShootRepository,
): Promise<Result<FilePhotos, string>> {
  const photos: Record<string, FilePhotos[string]> = {};
  for (const hash of pictureHashes(shoot)) {
    const kept = await repository.blob(hash);
    if (!kept.ok) return fail(kept.problem.sentence);
    if (kept.value !== null) photos[hash] = kept.value;
  }
  return ok(photos);
}

/** What importing a file would do here; a refusal is sentences. Nothing changes yet. */
export async function lookAtShootFile(
  file: File,
  here: { readonly repository: ShootRepository; readonly kit: Kit; readonly newId: string },
): Promise<Result<ShootImport, readonly string[]>> {
  const read = await readShootFile(file, contentHash);
  if (!read.ok) return fail(read.problem.sentences);
  const shoots = await here.repository.listShoots();
  return ok(
    importShoot({
      file: read.value,
      shootIdsHere: shoots.ok ? shoots.value.map(({ id }) => id) : [],
      kit: here.kit,
      newId: here.newId,
    }),
  );
}

/** Keeps the pictures of an import and creates its shoot; a refusal is a sentence, and then no shoot is there. */
export async function takeShoot(
  { shoot, photos }: ShootImport,
  repository: ShootRepository,
): Promise<Result<null, string>> {
  for (const { bytes, type } of Object.values(photos)) {
    const kept = await repository.keepBlob(bytes, type);
    if (!kept.ok) return fail(kept.problem.sentence);
  }
  const made = await repository.create('shoot', shoot);
  if (made.ok) return ok(null);
  return fail(
    made.problem.kind === 'storage' ? made.problem.sentence : 'It could not be imported.',
  );
}
