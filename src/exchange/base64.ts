/** RFC 4648, section 4. */
export function toBase64(bytes: Uint8Array): string {
  let binary = '';
  for (let at = 0; at < bytes.length; at += PIECE)
    binary += String.fromCharCode(...bytes.subarray(at, at + PIECE));
  return btoa(binary);
}

/** null for a text that is no base64. */
export function fromBase64(text: string): Uint8Array<ArrayBuffer> | null {
  try {
    const binary = atob(text);
    const bytes = new Uint8Array(binary.length);
    for (let at = 0; at < binary.length; at += 1) bytes[at] = binary.charCodeAt(at);
    return bytes;
  } catch {
    return null;
  }
}

/** As many arguments as any engine takes in one call. */
const PIECE = 8192;
