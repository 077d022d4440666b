/**
 * Writes a map archive by the open specification of the single-file tile format, version 3: header
 * of 127 bytes, root directory, metadata, leaf directories, tiles. For tests; independent of the
 * reader that the app uses.
 */
export type ArchiveTile = {
  readonly z: number;
  readonly x: number;
  readonly y: number;
  readonly bytes: Uint8Array<ArrayBuffer>;
};

export type ArchiveContents = {
  readonly tiles: readonly ArchiveTile[];
  /** 1 vector, 2 PNG, 3 JPEG, 4 WebP. */
  readonly tileType: number;
  /** 1 none, 2 gzip. */
  readonly tileCompression?: number;
  readonly directoryCompression?: number;
  readonly metadata?: unknown;
  /** West, south, east, north in degrees. */
  readonly bounds?: readonly [number, number, number, number];
  /** Entries of the root point at leaf directories with so many tiles each. */
  readonly tilesPerLeaf?: number;
};

export const mapArchive = async (contents: ArchiveContents): Promise<Uint8Array<ArrayBuffer>> => {
  const { tiles, tileType, tileCompression = 1, directoryCompression = 1 } = contents;
  const sorted = await Promise.all(
    tiles
      .map((tile) => ({ id: tileId(tile), bytes: tile.bytes }))
      .toSorted((one, other) => one.id - other.id)
      .map(async ({ id, bytes }) => ({ id, bytes: await packed(bytes, tileCompression) })),
  );
  let at = 0;
  const entries = sorted.map(({ id, bytes }) => {
    const offset = at;
    at += bytes.length;
    return { id, offset, length: bytes.length, runLength: 1 };
  });
  const leaves: Uint8Array<ArrayBuffer>[] = [];
  let rootEntries = entries;
  if (contents.tilesPerLeaf !== undefined) {
    let leafAt = 0;
    rootEntries = [];
    for (let from = 0; from < entries.length; from += contents.tilesPerLeaf) {
      const part = entries.slice(from, from + contents.tilesPerLeaf);
      const leaf = await packed(directory(part), directoryCompression);
      leaves.push(leaf);
      rootEntries.push({ id: part[0]?.id ?? 0, offset: leafAt, length: leaf.length, runLength: 0 });
      leafAt += leaf.length;
    }
  }
  const root = await packed(directory(rootEntries), directoryCompression);
  const metadata = await packed(
    new TextEncoder().encode(JSON.stringify(contents.metadata ?? {})),
    directoryCompression,
  );
  const leafBytes = joined(leaves);
  const tileBytes = joined(sorted.map(({ bytes }) => bytes));
  const zooms = tiles.map(({ z }) => z);
  const header = new DataView(new ArrayBuffer(127));
  new Uint8Array(header.buffer).set(new TextEncoder().encode('PMTiles'));
  header.setUint8(7, 3);
  const parts = [root, metadata, leafBytes, tileBytes];
  let partAt = 127;
  for (const [index, part] of parts.entries()) {
    header.setBigUint64(8 + index * 16, BigInt(partAt), true);
    header.setBigUint64(16 + index * 16, BigInt(part.length), true);
    partAt += part.length;
  }
  for (const offset of [72, 80, 88]) header.setBigUint64(offset, BigInt(tiles.length), true);
  header.setUint8(96, 1);
  header.setUint8(97, directoryCompression);
  header.setUint8(98, tileCompression);
  header.setUint8(99, tileType);
  header.setUint8(100, Math.min(...zooms, 26));
  header.setUint8(101, Math.max(...zooms, 0));
  for (const [index, degrees] of (contents.bounds ?? [-180, -85, 180, 85]).entries())
    header.setInt32(102 + index * 4, Math.round(degrees * 1e7), true);
  return joined([new Uint8Array(header.buffer), ...parts]);
};

type Entry = {
  readonly id: number;
  readonly offset: number;
  readonly length: number;
  readonly runLength: number;
};

/** Count, then ids as steps, run lengths, lengths, and offsets plus one. */
const directory = (entries: readonly Entry[]): Uint8Array<ArrayBuffer> =>
  new Uint8Array(
    [
      entries.length,
      ...entries.map(({ id }, index) => id - (entries[index - 1]?.id ?? 0)),
      ...entries.map(({ runLength }) => runLength),
      ...entries.map(({ length }) => length),
      ...entries.map(({ offset }) => offset + 1),
    ].flatMap(varint),
  );

export const varint = (value: number): readonly number[] => {
  const bytes: number[] = [];
  let rest = value;
  while (rest >= 0x80) {
    bytes.push((rest % 0x80) | 0x80);
    rest = Math.floor(rest / 0x80);
  }
  return [...bytes, rest];
};

/** All tiles of the zooms above, then the place along the Hilbert curve of this one. */
const tileId = ({ z, x, y }: Pick<ArchiveTile, 'z' | 'x' | 'y'>): number => {
  let along = 0;
  let [column, row] = [x, y];
  for (let side = 2 ** z / 2; side >= 1; side /= 2) {
    const right = Math.floor(column / side) % 2;
    const lower = Math.floor(row / side) % 2;
    along += side * side * ((3 * right) ^ lower);
    if (lower === 0) {
      if (right === 1) [column, row] = [side - 1 - (column % side), side - 1 - (row % side)];
      [column, row] = [row % side, column % side];
    } else [column, row] = [column % side, row % side];
  }
  return (4 ** z - 1) / 3 + along;
};

const packed = async (
  bytes: Uint8Array<ArrayBuffer>,
  compression: number,
): Promise<Uint8Array<ArrayBuffer>> => {
  if (compression !== 2) return bytes;
  const stream = new Blob([bytes]).stream().pipeThrough(new CompressionStream('gzip'));
  return new Uint8Array(await new Response(stream).arrayBuffer());
};

export const joined = (parts: readonly Uint8Array<ArrayBuffer>[]): Uint8Array<ArrayBuffer> => {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
};
