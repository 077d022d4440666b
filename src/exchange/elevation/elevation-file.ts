import type { ElevationGrid } from '../../core/skyline/elevation-grid.ts';
import { fail, ok, type Result } from '../../core/units/result.ts';
import type { ElevationArea } from './elevation-area.ts';
import { readGeotiff } from './geotiff.ts';
import { readHgt } from './hgt.ts';
import { unpackHgt } from './packed-hgt.ts';

/** Any elevation file a user may open, told by its name's ending; no grid where nothing of it lies within reach. */
export async function* readElevationFile(
  file: { readonly name: string; readonly blob: Blob },
  area: ElevationArea,
): AsyncGenerator<number, Result<readonly ElevationGrid[], string>> {
  if (file.blob.size === 0)
    return fail(`${file.name}: expected elevation data, found an empty file.`);
  if (/\.tiff?$/i.test(file.name)) return yield* readGeotiff(file, area);
  if (/\.hgt$/i.test(file.name)) return asList(await readHgt(file, area));
  if (!/\.(?:hgt\.gz|zip)$/i.test(file.name))
    return fail(
      `${file.name}: expected a file ending in .hgt, .hgt.gz, .hgt.zip, .tif or .tiff, found ${file.name}.`,
    );
  const unpacked = yield* unpackHgt(file);
  return unpacked.ok ? asList(await readHgt(unpacked.value, area)) : unpacked;
}

const asList = (
  read: Result<ElevationGrid | null, string>,
): Result<readonly ElevationGrid[], string> => {
  if (!read.ok) return read;
  return ok(read.value === null ? [] : [read.value]);
};
