const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const HEADER_BYTES = 33;
const RED_GREEN_BLUE = [2, 6];

export type PngSize = {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Eight bits each of red, green and blue, with or without opacity. */
  readonly isColour: boolean;
};

/** What the head of a PNG file says (ISO/IEC 15948), or null where it is none. */
export function pngSize(bytes: Uint8Array<ArrayBuffer>): PngSize | null {
  if (bytes.length < HEADER_BYTES || !SIGNATURE.every((byte, at) => bytes[at] === byte))
    return null;
  const head = new DataView(bytes.buffer, bytes.byteOffset, HEADER_BYTES);
  if (head.getUint32(12) !== 0x49484452) return null;
  return {
    widthPx: head.getUint32(16),
    heightPx: head.getUint32(20),
    isColour: head.getUint8(24) === 8 && RED_GREEN_BLUE.includes(head.getUint8(25)),
  };
}

/** The last chunk of a PNG file is there, so it was not cut short. */
export const isPngEnded = (bytes: Uint8Array): boolean =>
  String.fromCharCode(...bytes.subarray(-8, -4)) === 'IEND';
