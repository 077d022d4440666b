/** Compressed bytes handed on at a time: 16 MB unpacked at the very most. */
const CHUNK_BYTES = 16_384;
/** Between two breaths, so that others are let in. */
const CHUNKS_PER_STEP = 16;

export class TooLargeUnpacked extends Error {}

/** Takes unpacked pieces up to a limit; what comes beyond it stops the unpacking. */
export const collectWithin = (
  limitBytes: number,
): {
  readonly take: (piece: Uint8Array) => void;
  readonly whole: () => Uint8Array<ArrayBuffer>;
} => {
  const pieces: Uint8Array[] = [];
  let size = 0;
  return {
    take: (piece) => {
      size += piece.length;
      if (size > limitBytes) throw new TooLargeUnpacked();
      pieces.push(piece);
    },
    whole: () => {
      const whole = new Uint8Array(size);
      let at = 0;
      for (const piece of pieces) {
        whole.set(piece, at);
        at += piece.length;
      }
      return whole;
    },
  };
};

/** Pushes packed bytes piece by piece. */
export function* pushInChunks(
  packed: Uint8Array,
  push: (chunk: Uint8Array, isLast: boolean) => void,
): Generator<number, void> {
  let pushed = 0;
  for (let at = 0; at < packed.length; at += CHUNK_BYTES) {
    push(packed.subarray(at, at + CHUNK_BYTES), at + CHUNK_BYTES >= packed.length);
    pushed += 1;
    if (pushed % CHUNKS_PER_STEP === 0) yield at / packed.length;
  }
}
