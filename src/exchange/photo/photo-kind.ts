export type PhotoKind = 'JPEG' | 'HEIC' | 'AVIF' | 'WebP' | 'PNG' | 'TIFF';

/** The kind of picture that a file's first 16 bytes announce; null for anything else. */
export function photoKind(head: Uint8Array): PhotoKind | null {
  const text = String.fromCharCode(...head.subarray(0, 16));
  if (text.startsWith('\u00ff\u00d8\u00ff')) return 'JPEG';
  if (text.startsWith('\u0089PNG\r\n\u001a\n')) return 'PNG';
  if (text.startsWith('RIFF') && text.slice(8, 12) === 'WEBP') return 'WebP';
  if (text.startsWith('II*\0') || text.startsWith('MM\0*')) return 'TIFF';
  if (text.slice(4, 8) !== 'ftyp') return null;
  const brand = text.slice(8, 12);
  if (AVIF_BRANDS.has(brand)) return 'AVIF';
  return HEIC_BRANDS.has(brand) ? 'HEIC' : null;
}

const AVIF_BRANDS: ReadonlySet<string> = new Set(['avif', 'avis']);
/** ISO/IEC 23008-12: HEVC pictures, and the brand of any picture. */
const HEIC_BRANDS: ReadonlySet<string> = new Set([
  'heic',
  'heix',
  'hevc',
  'hevx',
  'heim',
  'heis',
  'mif1',
  'msf1',
]);

/** What else a file turned out to be, for a sentence. */
export function otherKindWords(head: Uint8Array): string {
  const text = String.fromCharCode(...head.subarray(0, 16));
  if (text.startsWith('%PDF')) return 'a PDF document';
  if (text.startsWith('PK\u0003\u0004')) return 'a packed archive';
  if (text.startsWith('GIF8')) return 'a GIF, which holds no camera data';
  if (text.slice(4, 8) === 'ftyp') return 'a film';
  return /^[\s\u0020-\u007e]*$/.test(text) ? 'a text' : 'something else';
}
