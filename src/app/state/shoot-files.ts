import type { Kit } from '../../core/plan/kit.ts';
import type { Shoot } from '../../core/plan/shoot.ts';
import { fail, ok, type Result } from '../../core/units/result.ts';
import { importShoot, type ShootImport } from '../../exchange/import-shoot.ts';
import {
  sensitiveContents,
  withoutContents,
  type SensitiveContent,
} from '../../exchange/sensitive-contents.ts';
import { readShootFile, writeShootFile } from '../../exchange/shoot-file.ts';
import type { ShootRepository, ShootSummary } from '../../storage/shoot-repository.ts';

export type { SensitiveContent, ShootImport, ShootSummary };

/** What goes along with a shoot file that its owner may not want to hand on. */
export const contentsThatGoAlong = (shoot: Shoot): readonly SensitiveContent[] =>
  sensitiveContents(shoot);

/** The shoot file, without what was left out. */
export const shootFileText = (leaving: {
  readonly shoot: Shoot;
  readonly kit: Kit;
  readonly leftOut: readonly SensitiveContent[];
  readonly exportedAtMs: number;
}): string =>
  writeShootFile({ ...leaving, shoot: withoutContents(leaving.shoot, leaving.leftOut) });

/** What importing a file would do here; a refusal is sentences. Nothing changes yet. */
export async function lookAtShootFile(
  file: File,
  here: { readonly repository: ShootRepository; readonly kit: Kit; readonly newId: string },
): Promise<Result<ShootImport, readonly string[]>> {
  const read = await readShootFile(file);
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
