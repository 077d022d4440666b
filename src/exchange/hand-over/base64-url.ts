import { fromBase64, toBase64 } from '../base64.ts';

/** RFC 4648, section 5, without padding: it stands in an address as it is. */
export const toBase64Url = (bytes: Uint8Array): string =>
  toBase64(bytes).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');

/** Null for a text that no bytes are written as. */
export function fromBase64Url(text: string): Uint8Array<ArrayBuffer> | null {
  if (!/^[A-Za-z0-9_-]*$/.test(text)) return null;
  const bytes = fromBase64(text.replaceAll('-', '+').replaceAll('_', '/'));
  return bytes !== null && toBase64Url(bytes) === text ? bytes : null;
}
