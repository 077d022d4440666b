import { joined } from './map-archive.ts';

/** A square PNG of one colour, by the PNG specification; in browsers as in Node. */
export const solidPng = async (
  sidePx: number,
  [red, green, blue]: readonly [number, number, number],
): Promise<Uint8Array<ArrayBuffer>> => {
  const row = [0, ...Array.from({ length: sidePx }, () => [red, green, blue]).flat()];
  const raw = new Uint8Array(Array.from({ length: sidePx }, () => row).flat());
  const packed = await new Response(
    new Blob([raw]).stream().pipeThrough(new CompressionStream('deflate')),
  ).arrayBuffer();
  const header = new DataView(new ArrayBuffer(13));
  header.setUint32(0, sidePx);
  header.setUint32(4, sidePx);
  header.setUint8(8, 8);
  header.setUint8(9, 2);
  return joined([
    new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', new Uint8Array(header.buffer)),
    chunk('IDAT', new Uint8Array(packed)),
    chunk('IEND', new Uint8Array(0)),
  ]);
};

const chunk = (name: string, data: Uint8Array<ArrayBuffer>): Uint8Array<ArrayBuffer> => {
  const named = joined([new TextEncoder().encode(name), data]);
  const ends = new DataView(new ArrayBuffer(8));
  ends.setUint32(0, data.length);
  ends.setUint32(4, crc32(named));
  return joined([
    new Uint8Array(ends.buffer.slice(0, 4)),
    named,
    new Uint8Array(ends.buffer.slice(4)),
  ]);
};

const crc32 = (bytes: Uint8Array): number => {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return (crc ^ 0xffffffff) >>> 0;
};
