/** What a directory, the metadata or a tile may unpack to; larger is hostile or broken. */
export const MOST_UNPACKED_BYTES = 8 * 2 ** 20;

/** Unpacks gzip; rejects with a sentence for what is corrupt or unpacks to more than is allowed. */
export const unpackCapped = async (
  packed: ArrayBuffer,
  mostBytes: number = MOST_UNPACKED_BYTES,
): Promise<ArrayBuffer> => {
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream('gzip'));
  const reader = stream.getReader();
  const parts: Uint8Array<ArrayBuffer>[] = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.byteLength;
    if (length > mostBytes) {
      await reader.cancel();
      throw new Error(`a part of the archive unpacks to more than ${mostBytes / 2 ** 20} MB`);
    }
    parts.push(value);
  }
  return new Blob(parts).arrayBuffer();
};

/**
 * Whether an unpacked directory can hold as many entries as it claims, each of four bytes or more:
 * one that cannot would be read far beyond its end.
 */
export const holdsItsEntries = (directory: ArrayBuffer): boolean => {
  const bytes = new Uint8Array(directory);
  let entries = 0;
  for (let at = 0; at < 8; at += 1) {
    const byte = bytes[at];
    if (byte === undefined) return false;
    entries += (byte & 0x7f) * 2 ** (7 * at);
    if (byte < 0x80) return entries >= 1 && entries * 4 <= bytes.length;
  }
  return false;
};
