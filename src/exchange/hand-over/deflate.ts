import { fail, ok, type Result } from '../../core/units/result.ts';

type Bytes = Uint8Array<ArrayBuffer>;

/** RFC 1951, without a header. */
export const deflated = async (bytes: Bytes): Promise<Bytes> =>
  new Uint8Array(
    await new Response(
      new Blob([bytes]).stream().pipeThrough(new CompressionStream('deflate-raw')),
    ).arrayBuffer(),
  );

/** Unpacks up to a limit and no further, whatever the packed bytes would grow to. */
export async function inflatedWithin(
  bytes: Bytes,
  mostBytes: number,
): Promise<Result<Bytes, 'damaged' | 'too-large'>> {
  const reader = new Blob([bytes])
    .stream()
    .pipeThrough(new DecompressionStream('deflate-raw'))
    .getReader();
  const pieces: Bytes[] = [];
  let size = 0;
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) break;
      size += value.byteLength;
      if (size > mostBytes) {
        await reader.cancel();
        return fail('too-large');
      }
      pieces.push(value);
    }
  } catch {
    return fail('damaged');
  }
  return ok(new Uint8Array(await new Blob(pieces).arrayBuffer()));
}
