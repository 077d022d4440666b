import type { PMTiles } from 'pmtiles';
import { fail, ok, type Result } from '../../../core/units/result.ts';
import type { ArchiveHeader } from './archive-header.ts';
import { HEADER_BYTES, readArchiveHeader } from './archive-header.ts';
import { DRAWN_LAYERS } from './drawn-layers.ts';
import { holdsItsEntries, unpackCapped } from './unpack-capped.ts';

/** A map archive on this device, checked and ready to be drawn. */
export type LocalMap = Pick<ArchiveHeader, 'tileType' | 'minZoom' | 'maxZoom' | 'bounds'> & {
  readonly name: string;
  /** Whom the archive asks to credit, as plain text. */
  readonly attribution: string;
  readonly archive: PMTiles;
};

/** The header alone, for a list: reads 127 bytes. */
export const readLocalMapHeader = async (blob: Blob): Promise<Result<ArchiveHeader, string>> =>
  readArchiveHeader(await blob.slice(0, HEADER_BYTES).arrayBuffer(), blob.size);

/** Opens an archive; what is wrong with it is a sentence. Tiles are read when they are drawn. */
export const openLocalMap = async (name: string, blob: Blob): Promise<Result<LocalMap, string>> => {
  const read = await readLocalMapHeader(blob).catch(() => fail(UNREADABLE));
  if (!read.ok) return read;
  const header = read.value;
  if (!(await rootIsSound(blob, header)))
    return fail('the directory of this map archive is corrupt: no tile can be found in it');
  const archive = await openArchive(name, blob, header);
  // An archive without readable metadata draws as well; it only credits nobody.
  const metadata = await archive.getMetadata().catch(() => null);
  if (header.tileType === 'vector') {
    const layers = layerNames(metadata);
    if (layers.length > 0 && !layers.some((layer) => DRAWN_LAYERS.includes(layer)))
      return fail(
        `found vector layers ${layers.slice(0, 6).join(', ')}; expected those of the open basemap schema: ${DRAWN_LAYERS.join(', ')}`,
      );
  }
  const { tileType, minZoom, maxZoom, bounds } = header;
  const attribution = plainText(field(metadata, 'attribution'));
  return ok({ name, tileType, minZoom, maxZoom, bounds, attribution, archive });
};

const UNREADABLE = 'the file could not be read; it may have been moved or changed';

const rootIsSound = async (
  blob: Blob,
  { root, directoryCompression }: ArchiveHeader,
): Promise<boolean> => {
  // By the specification the root directory ends within the first 16 kB.
  if (root.offset < HEADER_BYTES || root.offset + root.length > 16_384) return false;
  const packed = await blob.slice(root.offset, root.offset + root.length).arrayBuffer();
  const plain = directoryCompression === 2 ? await unpackCapped(packed).catch(() => null) : packed;
  return plain !== null && holdsItsEntries(plain);
};

const openArchive = async (name: string, blob: Blob, header: ArchiveHeader): Promise<PMTiles> => {
  const { PMTiles: Archive, SharedPromiseCache } = await import('pmtiles');
  const { leaves } = header;
  const directories = new WeakSet<ArrayBuffer>();
  const source = {
    getKey: () => name,
    getBytes: async (offset: number, length: number) => {
      const data = await blob.slice(offset, offset + length).arrayBuffer();
      if (offset >= leaves.offset && offset < leaves.offset + leaves.length) directories.add(data);
      return { data };
    },
  };
  const unpack = async (packed: ArrayBuffer, compression: number): Promise<ArrayBuffer> => {
    const plain = compression === 2 ? await unpackCapped(packed) : packed;
    if (directories.has(packed) && !holdsItsEntries(plain)) throw new Error('corrupt directory');
    return plain;
  };
  return new Archive(source, new SharedPromiseCache(100, true, unpack), unpack);
};

const field = (metadata: unknown, name: string): unknown =>
  typeof metadata === 'object' && metadata !== null
    ? (metadata as Record<string, unknown>)[name]
    : undefined;

const layerNames = (metadata: unknown): readonly string[] => {
  const layers = field(metadata, 'vector_layers');
  return Array.isArray(layers)
    ? layers.flatMap((layer) => {
        const id = field(layer, 'id');
        return typeof id === 'string' ? [id.slice(0, 40)] : [];
      })
    : [];
};

const LONGEST_CREDIT = 200;

/** Credits are often written with links; only their words are shown. */
const plainText = (text: unknown): string =>
  typeof text === 'string'
    ? text
        .slice(0, 2000)
        .replace(/<[^>]*>/g, '')
        .replace(/&copy;/g, '©')
        .replace(/&amp;/g, '&')
        .trim()
        .slice(0, LONGEST_CREDIT)
    : '';
