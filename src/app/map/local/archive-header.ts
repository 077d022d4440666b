import { fail, ok, type Result } from '../../../core/units/result.ts';

/** What the first 127 bytes of an archive say, version 3 of the open single-file tile format. */
export type ArchiveHeader = {
  readonly root: ArchivePart;
  readonly leaves: ArchivePart;
  readonly tiles: ArchivePart;
  /** 1 none, 2 gzip; no other is let through. */
  readonly directoryCompression: number;
  readonly tileType: TileType;
  readonly minZoom: number;
  readonly maxZoom: number;
  readonly bounds: ArchiveBounds;
};

export type ArchivePart = { readonly offset: number; readonly length: number };

export type ArchiveBounds = {
  readonly westDeg: number;
  readonly southDeg: number;
  readonly eastDeg: number;
  readonly northDeg: number;
};

export type TileType = 'vector' | 'image/png' | 'image/jpeg' | 'image/webp' | 'image/avif';

export const HEADER_BYTES = 127;

const MAGIC = 'PMTiles';
const VERSION = 3;
const COMPRESSIONS = ['of an unknown kind', 'not at all', 'with gzip', 'with brotli', 'with zstd'];
const TILE_TYPES: readonly (TileType | null)[] = [
  null,
  'vector',
  'image/png',
  'image/jpeg',
  'image/webp',
  'image/avif',
];
const DEEPEST_ZOOM = 26;

/** Reads and checks the header against the size of the file; a fault is a sentence. */
export const readArchiveHeader = (
  bytes: ArrayBuffer,
  fileBytes: number,
): Result<ArchiveHeader, string> => {
  if (fileBytes < HEADER_BYTES || bytes.byteLength < HEADER_BYTES)
    return fail(
      `found a file of ${fileBytes} bytes, expected a map archive of ${HEADER_BYTES} or more`,
    );
  const view = new DataView(bytes);
  const magic = new TextDecoder('latin1').decode(bytes.slice(0, MAGIC.length));
  if (magic !== MAGIC)
    return fail(
      `found a file that begins ‘${printable(magic)}’, expected a map archive, ‘${MAGIC}’`,
    );
  const version = view.getUint8(7);
  if (version !== VERSION)
    return fail(`found version ${version} of the map archive format, expected ${VERSION}`);
  const part = (at: number): ArchivePart => ({
    offset: Number(view.getBigUint64(at, true)),
    length: Number(view.getBigUint64(at + 8, true)),
  });
  const [root, metadata, leaves, tiles] = [part(8), part(24), part(40), part(56)];
  const endsAt = Math.max(
    ...[root, metadata, leaves, tiles].map(({ offset, length }) =>
      length === 0 ? 0 : offset + length,
    ),
  );
  if (endsAt > fileBytes)
    return fail(
      `the file ends after ${megabytes(fileBytes)}, by its own account it goes on to ${megabytes(endsAt)}: copied only in part?`,
    );
  if (root.length === 0 || tiles.length === 0) return fail('this map archive holds no tiles');
  const [directoryCompression, tileCompression] = [view.getUint8(97), view.getUint8(98)];
  const unpackable = [directoryCompression, tileCompression].find(
    (kind) => kind !== 1 && kind !== 2,
  );
  if (unpackable !== undefined)
    return fail(
      `this map archive is packed ${COMPRESSIONS[unpackable] ?? COMPRESSIONS[0]}, expected gzip or no packing`,
    );
  const tileType = TILE_TYPES[view.getUint8(99)] ?? null;
  if (tileType === null)
    return fail(
      `found tiles of kind ${view.getUint8(99)}, expected PNG, JPEG, WebP, AVIF or vector tiles (MVT)`,
    );
  const [minZoom, maxZoom] = [view.getUint8(100), view.getUint8(101)];
  if (minZoom > maxZoom || maxZoom > DEEPEST_ZOOM)
    return fail(
      `found zoom levels ${minZoom} to ${maxZoom}, expected 0 to ${DEEPEST_ZOOM}, rising`,
    );
  const bounds = boundsOf(view);
  if (!areBounds(bounds))
    return fail(
      `found bounds ${Object.values(bounds).join(', ')} (west, south, east, north), expected degrees of longitude and latitude`,
    );
  return ok({ root, leaves, tiles, directoryCompression, tileType, minZoom, maxZoom, bounds });
};

/** An archive that does not say where it lies, all zeros, may lie anywhere. */
const boundsOf = (view: DataView): ArchiveBounds => {
  const degrees = (at: number): number => view.getInt32(at, true) / 1e7;
  const [westDeg, southDeg, eastDeg, northDeg] = [
    degrees(102),
    degrees(106),
    degrees(110),
    degrees(114),
  ];
  return westDeg === 0 && southDeg === 0 && eastDeg === 0 && northDeg === 0
    ? { westDeg: -180, southDeg: -90, eastDeg: 180, northDeg: 90 }
    : { westDeg, southDeg, eastDeg, northDeg };
};

const areBounds = ({ westDeg, southDeg, eastDeg, northDeg }: ArchiveBounds): boolean =>
  westDeg >= -180 &&
  westDeg < eastDeg &&
  eastDeg <= 180 &&
  southDeg >= -90 &&
  southDeg < northDeg &&
  northDeg <= 90;

export const megabytes = (bytes: number): string =>
  bytes < 1e5 ? `${(bytes / 1000).toFixed(1)} kB` : `${(bytes / 1e6).toFixed(1)} MB`;

const printable = (text: string): string => text.replace(/[^\x20-\x7e]/g, '·');
