import { collectWithin, pushInChunks } from './inflate-within.ts';

/** A block may unpack to a little more than it needs, where a strip ends beyond the image. */
const SLACK_BYTES = 65_536;

const DEFLATE = [8, 32946];

type Tiff = typeof import('geotiff');

/** The reader's unpacking of deflated blocks, replaced by one that stops where a block is full. */
export async function limitInflate({ addDecoder, BaseDecoder }: Tiff): Promise<void> {
  const { Unzlib } = await import('fflate');
  class LimitedInflate extends BaseDecoder {
    override decodeBlock(packed: ArrayBufferLike): ArrayBufferLike {
      const { tileWidth, tileHeight, bitsPerSample } = this.parameters;
      const bits = typeof bitsPerSample === 'number' ? bitsPerSample : (bitsPerSample[0] ?? 0);
      const { take, whole } = collectWithin((tileWidth * tileHeight * bits) / 8 + SLACK_BYTES);
      const unzlib = new Unzlib(take);
      const pushing = pushInChunks(new Uint8Array(packed), (chunk, isLast) =>
        unzlib.push(chunk, isLast),
      );
      while (pushing.next().done !== true);
      return whole().buffer;
    }
  }
  addDecoder(DEFLATE, () => Promise.resolve(LimitedInflate));
}
