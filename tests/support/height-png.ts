import { crc32, deflateSync, inflateSync } from 'node:zlib';
import { fail, ok } from '../../src/core/units/result.ts';
import type { DecodePng } from '../../src/worker/ground/png-pixels.ts';

/** Red, green and blue of a height, as the published scheme writes it: v + 32768 in 16.8 bits. */
export const heightColour = (heightM: number): readonly [number, number, number] => {
  const value = Math.floor((heightM + 32768) * 256);
  return [(value >> 16) & 255, (value >> 8) & 255, value & 255];
};

/** A PNG of heights written by hand (ISO/IEC 15948): 8-bit colour, no filter. */
export function heightPng(
  sidePx: number,
  heightM: (row: number, column: number) => number,
  { heightPx = sidePx, colourType = 2 }: { heightPx?: number; colourType?: number } = {},
): Uint8Array<ArrayBuffer> {
  const channels = colourType === 2 ? 3 : 1;
  const raw = new Uint8Array(heightPx * (1 + sidePx * channels));
  for (let row = 0; row < heightPx; row += 1)
    for (let column = 0; column < sidePx; column += 1) {
      const at = row * (1 + sidePx * channels) + 1 + column * channels;
      raw.set(heightColour(heightM(row, column)).slice(0, channels), at);
    }
  const head = new DataView(new ArrayBuffer(13));
  head.setUint32(0, sidePx);
  head.setUint32(4, heightPx);
  head.setUint8(8, 8);
  head.setUint8(9, colourType);
  return new Uint8Array(
    Buffer.concat([
      Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
      chunk('IHDR', new Uint8Array(head.buffer)),
      chunk('IDAT', deflateSync(raw)),
      chunk('IEND', new Uint8Array(0)),
    ]),
  );
}

function chunk(type: string, data: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const framed = Buffer.alloc(body.length + 8);
  framed.writeUInt32BE(data.length, 0);
  body.copy(framed, 4);
  framed.writeUInt32BE(checksum(body), body.length + 4);
  return framed;
}

const checksum = (bytes: Buffer): number => crc32(bytes);

/** Reads back what `heightPng` writes; in the app the browser does it. */
export const readHeightPng: DecodePng = (png) => {
  try {
    const bytes = Buffer.from(png);
    const sidePx = bytes.readUInt32BE(16);
    const heightPx = bytes.readUInt32BE(20);
    const length = bytes.readUInt32BE(33);
    const raw = inflateSync(bytes.subarray(41, 41 + length));
    const pixels = new Uint8Array(sidePx * heightPx * 4).fill(255);
    for (let row = 0; row < heightPx; row += 1)
      for (let column = 0; column < sidePx; column += 1) {
        const from = row * (1 + sidePx * 3) + 1 + column * 3;
        pixels.set(raw.subarray(from, from + 3), (row * sidePx + column) * 4);
      }
    return Promise.resolve(ok({ widthPx: sidePx, heightPx, pixels }));
  } catch {
    return Promise.resolve(fail('the picture is damaged or cut short'));
  }
};
