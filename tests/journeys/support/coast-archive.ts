import { mapArchive } from '../../support/map-archive.ts';
import { solidPng } from '../../support/solid-png.ts';

/** A map archive of plain grey pictures round the demo's coast, zoom 8 to 12. */
export const coastArchive = async (): Promise<Buffer> => {
  const grey = await solidPng(64, [150, 150, 150]);
  const tiles = [8, 9, 10, 11, 12].flatMap((z) => {
    const [west, east] = [13, 14.5].map((deg) => Math.floor(((deg + 180) / 360) * 2 ** z));
    const [north, south] = [46.5, 45].map((deg) =>
      Math.floor(((1 - Math.asinh(Math.tan((deg * Math.PI) / 180)) / Math.PI) / 2) * 2 ** z),
    );
    return range(west, east).flatMap((x) =>
      range(north, south).map((y) => ({ z, x, y, bytes: grey })),
    );
  });
  return Buffer.from(
    await mapArchive({
      tiles,
      tileType: 2,
      directoryCompression: 2,
      tilesPerLeaf: 64,
      bounds: [13, 45, 14.5, 46.5],
      metadata: { attribution: '<b>Harbour office</b>' },
    }),
  );
};

const range = (from = 0, to = 0): readonly number[] =>
  Array.from({ length: to - from + 1 }, (_, index) => from + index);
