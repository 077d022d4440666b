import { fail, ok, type Result } from '../../core/units/result.ts';
import { MAX_FILE_BYTES } from '../file-text.ts';

export type ZipEntry = {
  readonly name: string;
  /** As the archive states it, to be trusted by nobody. */
  readonly unpackedBytes: number;
  readonly packedBytes: number;
};

const MAX_ENTRIES = 2000;
const MAX_UNPACKED_BYTES = MAX_FILE_BYTES;
/** Text packs to a twentieth, a table of one number to a hundredth. */
const MAX_RATIO = 200;
/** Small pieces: one can grow to a thousand times its size before it is looked at. */
const PIECE_BYTES = 8192;

const TOO_MANY = new Error('more entries than are looked at');

/** What a zip archive says that it holds; nothing is unpacked. */
export async function zipEntries(bytes: Uint8Array): Promise<Result<readonly ZipEntry[], string>> {
  if (bytes[0] !== 0x50 || bytes[1] !== 0x4b)
    return fail('Expected a zip archive, found a file that does not begin as one.');
  const { unzipSync } = await import('fflate');
  const entries: ZipEntry[] = [];
  try {
    unzipSync(bytes, {
      filter: ({ name, size, originalSize }) => {
        if (entries.length === MAX_ENTRIES) throw TOO_MANY;
        entries.push({ name, packedBytes: size, unpackedBytes: originalSize });
        return false;
      },
    });
  } catch (error) {
    return fail(
      error === TOO_MANY
        ? `The archive holds more than ${MAX_ENTRIES} files; expected a few.`
        : 'The archive is damaged or was cut short: its list of contents cannot be read.',
    );
  }
  return ok(entries);
}

/** One entry unpacked piece by piece, given up where it grows past what it may. */
export async function unzippedEntry(
  bytes: Uint8Array,
  entry: ZipEntry,
): Promise<Result<Uint8Array, string>> {
  if (
    entry.unpackedBytes > MAX_UNPACKED_BYTES ||
    entry.unpackedBytes > Math.max(entry.packedBytes, 1024) * MAX_RATIO
  )
    return bomb(entry.name, entry.unpackedBytes);
  const { Unzip, UnzipInflate } = await import('fflate');
  const unpacking: Unpacking = { pieces: [], bytes: 0, outcome: 'none' };
  const unzip = new Unzip((file) => {
    if (file.name !== entry.name || unpacking.outcome !== 'none' || unpacking.bytes > 0) return;
    file.ondata = (error, piece, final) => {
      if (unpacking.outcome !== 'none') return;
      if (error) {
        unpacking.outcome = 'damaged';
        return;
      }
      unpacking.bytes += piece.length;
      unpacking.pieces.push(piece);
      if (unpacking.bytes > MAX_UNPACKED_BYTES) unpacking.outcome = 'too-large';
      else if (final) unpacking.outcome = 'whole';
    };
    file.start();
  });
  unzip.register(UnzipInflate);
  try {
    for (let at = 0; at < bytes.length && unpacking.outcome === 'none'; at += PIECE_BYTES)
      unzip.push(bytes.subarray(at, at + PIECE_BYTES), at + PIECE_BYTES >= bytes.length);
  } catch {
    unpacking.outcome = 'damaged';
  }
  switch (unpacking.outcome) {
    case 'whole':
      return ok(joined(unpacking));
    case 'too-large':
      return bomb(entry.name, unpacking.bytes);
    case 'none':
    case 'damaged':
      return fail(`${entry.name} in the archive is damaged, locked or cut short.`);
  }
}

type Unpacking = {
  readonly pieces: Uint8Array[];
  bytes: number;
  outcome: 'none' | 'whole' | 'damaged' | 'too-large';
};

const joined = ({ pieces, bytes }: Unpacking): Uint8Array => {
  const whole = new Uint8Array(bytes);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
};

const bomb = (name: string, unpackedBytes: number): Result<never, string> =>
  fail(
    `${name} in the archive unpacks to ${(unpackedBytes / 1e6).toFixed(1)} MB or more, as archives do that are made to fill memory; expected at most ${MAX_UNPACKED_BYTES / 1e6} MB and ${MAX_RATIO} times its packed size.`,
  );
