import { fail, ok, type Result } from '../../core/units/result.ts';
import { collectWithin, pushInChunks, TooLargeUnpacked } from './inflate-within.ts';
import { MAX_HGT_BYTES } from './hgt.ts';

/** Packed heights are never larger than unpacked ones by more than this. */
const MAX_PACKED_BYTES = MAX_HGT_BYTES + 1e6;

type HgtFile = { readonly name: string; readonly blob: Blob };

/** The tile inside a .hgt.gz, or the first .hgt inside a .zip, unpacked to no more than a tile can be. */
export async function* unpackHgt(file: HgtFile): AsyncGenerator<number, Result<HgtFile, string>> {
  if (file.blob.size > MAX_PACKED_BYTES)
    return fail(
      `${file.name}: expected at most ${megabytes(MAX_PACKED_BYTES)} of packed heights, found ${megabytes(file.blob.size)}.`,
    );
  const packed = await file.blob.arrayBuffer().catch(() => null);
  if (packed === null)
    return fail(`${file.name}: the file could not be read; it may have been moved or locked.`);
  try {
    const bytes = new Uint8Array(packed);
    return /\.gz$/i.test(file.name)
      ? yield* fromGzip(file.name, bytes)
      : yield* fromZip(file.name, bytes);
  } catch (error) {
    return fail(
      error instanceof TooLargeUnpacked
        ? `${file.name}: unpacks to more than the ${megabytes(MAX_HGT_BYTES)} of the largest tile; it was not read further.`
        : `${file.name}: the packed file is damaged or cut short.`,
    );
  }
}

async function* fromGzip(
  name: string,
  packed: Uint8Array,
): AsyncGenerator<number, Result<HgtFile, string>> {
  const { Gunzip } = await import('fflate');
  const { take, whole } = collectWithin(MAX_HGT_BYTES);
  const gunzip = new Gunzip(take);
  yield* pushInChunks(packed, (chunk, isLast) => gunzip.push(chunk, isLast));
  return ok({ name: name.replace(/\.gz$/i, ''), blob: new Blob([whole()]) });
}

async function* fromZip(
  name: string,
  packed: Uint8Array,
): AsyncGenerator<number, Result<HgtFile, string>> {
  const { Unzip, UnzipInflate } = await import('fflate');
  const { take, whole } = collectWithin(MAX_HGT_BYTES);
  const found: { name: string | null; isComplete: boolean; error: Error | null } = {
    name: null,
    isComplete: false,
    error: null,
  };
  const unzip = new Unzip((entry) => {
    const entryName = entry.name.replace(/^.*[/\\]/, '');
    if (found.name !== null || !/\.hgt$/i.test(entryName)) return;
    found.name = entryName;
    entry.ondata = (error, piece, isLast) => {
      if (error === null) take(piece);
      else found.error ??= error;
      found.isComplete ||= isLast;
    };
    entry.start();
  });
  unzip.register(UnzipInflate);
  yield* pushInChunks(packed, (chunk, isLast) => {
    if (!found.isComplete) unzip.push(chunk, isLast);
  });
  if (found.name === null)
    return fail(`${name}: expected a tile such as N46E007.hgt inside, found none.`);
  if (found.error !== null) throw found.error;
  if (!found.isComplete) throw new Error('cut short');
  return ok({ name: found.name, blob: new Blob([whole()]) });
}

const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`;
