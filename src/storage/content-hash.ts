/** SHA-256 as 64 lower-case hexadecimal digits (FIPS 180-4); null where the page has no safe origin, which browsers ask for. */
export async function contentHash(bytes: Uint8Array<ArrayBuffer>): Promise<string | null> {
  const subtle: SubtleCrypto | undefined = globalThis.crypto?.subtle;
  if (subtle === undefined) return null;
  const digest = new Uint8Array(await subtle.digest('SHA-256', bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
