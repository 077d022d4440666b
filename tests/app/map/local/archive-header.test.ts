import { describe, expect, test } from 'vitest';
import { openLocalMap } from '../../../../src/app/map/local/local-map.ts';
import { readArchiveHeader } from '../../../../src/app/map/local/archive-header.ts';
import { unpackCapped } from '../../../../src/app/map/local/unpack-capped.ts';
import { mapArchive, type ArchiveContents } from '../../../support/map-archive.ts';

const tile = new Uint8Array([1, 2, 3, 4, 5]);
const contents: ArchiveContents = {
  tiles: [
    { z: 0, x: 0, y: 0, bytes: tile },
    { z: 1, x: 1, y: 0, bytes: new Uint8Array([9, 9]) },
    { z: 12, x: 2204, y: 1457, bytes: new Uint8Array([7]) },
  ],
  tileType: 2,
  bounds: [13.5, 45.5, 14, 45.9],
};

const opened = async (bytes: Uint8Array<ArrayBuffer>) =>
  openLocalMap('coast.pmtiles', new Blob([bytes]));

const changed = async (
  change: (view: DataView) => void,
  given: ArchiveContents = contents,
): Promise<Uint8Array<ArrayBuffer>> => {
  const bytes = await mapArchive(given);
  change(new DataView(bytes.buffer));
  return bytes;
};

describe('an archive written by hand from the specification, version 3', () => {
  test('is opened with its zooms, bounds, kind and credit, and gives its tiles back', async () => {
    const bytes = await mapArchive({
      ...contents,
      metadata: { attribution: '<a href="https://example.org">Harbour office</a> &copy; 2026' },
    });
    const map = await opened(bytes);
    if (!map.ok) throw new Error(map.problem);
    expect(map.value).toMatchObject({
      name: 'coast.pmtiles',
      tileType: 'image/png',
      minZoom: 0,
      maxZoom: 12,
      bounds: { westDeg: 13.5, southDeg: 45.5, eastDeg: 14, northDeg: 45.9 },
      attribution: 'Harbour office © 2026',
    });
    const bytesOf = async (z: number, x: number, y: number) => {
      const found = await map.value.archive.getZxy(z, x, y);
      return found && [...new Uint8Array(found.data)];
    };
    expect(await bytesOf(0, 0, 0)).toEqual([1, 2, 3, 4, 5]);
    expect(await bytesOf(1, 1, 0)).toEqual([9, 9]);
    expect(await bytesOf(12, 2204, 1457)).toEqual([7]);
    expect(await bytesOf(12, 2204, 1458)).toBeUndefined();
  });

  test('packed with gzip, and in leaf directories, gives the same tiles', async () => {
    const tiles = Array.from({ length: 64 }, (_, index) => ({
      z: 3,
      x: index % 8,
      y: Math.floor(index / 8),
      bytes: new Uint8Array([index, index + 1]),
    }));
    const map = await opened(
      await mapArchive({
        tiles,
        tileType: 2,
        tileCompression: 2,
        directoryCompression: 2,
        tilesPerLeaf: 10,
      }),
    );
    if (!map.ok) throw new Error(map.problem);
    for (const { z, x, y, bytes } of tiles) {
      const found = await map.value.archive.getZxy(z, x, y);
      expect([...new Uint8Array(found?.data ?? new ArrayBuffer(0))]).toEqual([...bytes]);
    }
  });
});

const problemOf = async (bytes: Uint8Array<ArrayBuffer>): Promise<string> => {
  const map = await opened(bytes);
  if (map.ok) throw new Error('this archive opened');
  return map.problem;
};

describe('what is wrong with a file is a sentence with found and expected', () => {
  test('another kind of file', async () => {
    const html = new TextEncoder().encode(`<!DOCTYPE html>${' '.repeat(200)}`);
    expect(await problemOf(html)).toBe(
      'found a file that begins ‘<!DOCTY’, expected a map archive, ‘PMTiles’',
    );
  });

  test('an empty file and a stub', async () => {
    expect(await problemOf(new Uint8Array(0))).toContain('found a file of 0 bytes, expected');
    expect(await problemOf((await mapArchive(contents)).slice(0, 100))).toContain('100 bytes');
  });

  test('a file cut short says how much there is and how much there should be', async () => {
    const bytes = await mapArchive({
      ...contents,
      tiles: [{ z: 0, x: 0, y: 0, bytes: new Uint8Array(200_000) }],
    });
    expect(await problemOf(bytes.slice(0, 90_000))).toMatch(
      /ends after 90\.0 kB, by its own account it goes on to 0\.2 MB: copied only in part/,
    );
  });

  test.each([
    ['an older version', 7, 2, 'found version 2 of the map archive format, expected 3'],
    ['brotli directories', 97, 3, 'packed with brotli, expected gzip or no packing'],
    ['zstd tiles', 98, 4, 'packed with zstd, expected gzip or no packing'],
    ['tiles of no known packing', 98, 0, 'packed of an unknown kind'],
    ['tiles of an unknown kind', 99, 0, 'found tiles of kind 0'],
    ['tiles of a kind to come', 99, 77, 'found tiles of kind 77'],
    ['a lowest zoom above the highest', 100, 20, 'found zoom levels 20 to 12'],
    ['a zoom no map has', 101, 200, 'found zoom levels 0 to 200'],
  ])('%s', async (_what, at, value, sentence) => {
    expect(await problemOf(await changed((view) => view.setUint8(at, value)))).toContain(sentence);
  });

  test('no tiles', async () => {
    expect(await problemOf(await mapArchive({ ...contents, tiles: [] }))).toBe(
      'this map archive holds no tiles',
    );
  });

  test('bounds that are no degrees, or turned round', async () => {
    expect(
      await problemOf(await mapArchive({ ...contents, bounds: [13.5, 95, 14, 96] })),
    ).toContain('found bounds 13.5, 95, 14, 96');
    expect(await problemOf(await mapArchive({ ...contents, bounds: [14, 45, 13, 46] }))).toContain(
      'expected degrees of longitude and latitude',
    );
  });

  test('an archive that does not say where it lies may lie anywhere', async () => {
    const map = await opened(await mapArchive({ ...contents, bounds: [0, 0, 0, 0] }));
    expect(map.ok && map.value.bounds).toEqual({
      westDeg: -180,
      southDeg: -90,
      eastDeg: 180,
      northDeg: 90,
    });
  });

  test('a directory that claims more entries than it has bytes is refused, not read on and on', async () => {
    const bytes = await changed((view) => {
      for (let at = 127; at < 133; at += 1) view.setUint8(at, 0xff);
      view.setUint8(133, 0x7f);
    });
    expect(await problemOf(bytes)).toContain('directory of this map archive is corrupt');
  });

  test('a directory that is not gzip though it says so', async () => {
    const packed: ArchiveContents = { ...contents, directoryCompression: 2 };
    const bytes = await changed((view) => view.setUint8(127, 0), packed);
    expect(await problemOf(bytes)).toContain('directory of this map archive is corrupt');
  });

  test('vector layers of another schema are named', async () => {
    const metadata = { vector_layers: [{ id: 'transportation' }, { id: '<b>poi</b>' }] };
    const problem = await problemOf(await mapArchive({ ...contents, tileType: 1, metadata }));
    expect(problem).toContain('found vector layers transportation, <b>poi</b>; expected those of');
    expect(problem).toContain('earth');
  });
});

test('a leaf directory that claims too much fails its tiles alone', async () => {
  const bytes = await mapArchive({ ...contents, tilesPerLeaf: 1 });
  const header = readArchiveHeader(bytes.slice(0, 127).buffer, bytes.length);
  if (!header.ok) throw new Error(header.problem);
  const { leaves } = header.value;
  bytes.set([0xff, 0xff, 0xff, 0xff], leaves.offset);
  const map = await opened(bytes);
  if (!map.ok) throw new Error(map.problem);
  await expect(map.value.archive.getZxy(0, 0, 0)).rejects.toThrow('corrupt directory');
  expect(await map.value.archive.getZxy(12, 2204, 1457)).toBeDefined();
});

test('what unpacks to more than allowed is given up in time', async () => {
  const zeros = await new Response(
    new Blob([new Uint8Array(3_000_000)]).stream().pipeThrough(new CompressionStream('gzip')),
  ).arrayBuffer();
  expect(zeros.byteLength).toBeLessThan(10_000);
  await expect(unpackCapped(zeros, 2 ** 20)).rejects.toThrow('unpacks to more than 1 MB');
  expect((await unpackCapped(zeros)).byteLength).toBe(3_000_000);
});
