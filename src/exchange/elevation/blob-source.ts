import type { GeoTIFF } from 'geotiff';

/** What the reader of GeoTIFF files asks a file for. */
type FileSource = Parameters<typeof GeoTIFF.fromSource>[0];

/** A file read piece by piece where it lies; in a worker as in Node. */
export const blobSource = (blob: Blob): FileSource => {
  const read = (offset: number, length: number): Promise<ArrayBuffer> =>
    blob.slice(offset, offset + length).arrayBuffer();
  return {
    fetch: (slices) => Promise.all(slices.map(({ offset, length }) => read(offset, length))),
    fetchSlice: async (slice) => ({ ...slice, data: await read(slice.offset, slice.length) }),
    fileSize: blob.size,
    close: () => Promise.resolve(),
  };
};
