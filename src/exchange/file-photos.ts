import type { DocumentFault } from '../core/plan/check-document.ts';
import type { Shoot } from '../core/plan/shoot.ts';
import { ok, type Result } from '../core/units/result.ts';
import { fromBase64, toBase64 } from './base64.ts';
import { faultsRefusal, isFields } from './file-part.ts';
import type { FileProblem } from './file-text.ts';

/** Pictures by content hash. */
export type FilePhotos = Readonly<
  Record<string, { readonly type: string; readonly bytes: Uint8Array<ArrayBuffer> }>
>;

/** SHA-256 in 64 hexadecimal digits; null where it cannot be worked out here. */
export type ContentHash = (bytes: Uint8Array<ArrayBuffer>) => Promise<string | null>;

export const MAX_PICTURE_BYTES = 2e6;
const PICTURE_TYPE = 'image/jpeg';

/** Hashes of the pictures that a shoot names; a photo kept without its picture has no width. */
export const pictureHashes = (shoot: Shoot): ReadonlySet<string> =>
  new Set(
    Object.values(shoot.spots).flatMap(({ photos }) =>
      Object.values(photos)
        .filter(({ widthPx }) => widthPx > 0)
        .map(({ contentHash }) => contentHash),
    ),
  );

/** The pictures of a shoot as a file holds them, those that are at hand. */
export const writtenPhotos = (
  shoot: Shoot,
  photos: FilePhotos,
): Readonly<Record<string, { readonly type: string; readonly base64: string }>> =>
  Object.fromEntries(
    [...pictureHashes(shoot)].toSorted().flatMap((hash) => {
      const photo = photos[hash];
      return photo === undefined
        ? []
        : [[hash, { type: photo.type, base64: toBase64(photo.bytes) }] as const];
    }),
  );

/** Reads the pictures that the shoot names and the file has, each held to its hash; others are left unread. */
export async function readFilePhotos(
  value: unknown,
  shoot: Shoot,
  contentHash: ContentHash,
): Promise<Result<FilePhotos, FileProblem>> {
  if (!isFields(value))
    return faultsRefusal([{ path: 'photos', expected: 'an object', found: 'something else' }]);
  const faults: DocumentFault[] = [];
  const photos: Record<string, FilePhotos[string]> = {};
  for (const hash of pictureHashes(shoot)) {
    if (!Object.hasOwn(value, hash)) continue;
    const bytes = pictureBytes(value[hash]);
    if (typeof bytes === 'string') faults.push(fault(hash, bytes));
    else if ((await contentHash(bytes)) !== hash) faults.push(fault(hash, ANOTHER));
    else photos[hash] = { type: PICTURE_TYPE, bytes };
  }
  return faults.length > 0 ? faultsRefusal(faults) : ok(photos);
}

const ANOTHER = 'the bytes that its hash names, found others';

/** Bytes of a JPEG, or what was expected and found. */
function pictureBytes(entry: unknown): Uint8Array<ArrayBuffer> | string {
  if (!isFields(entry)) return 'an object with type and base64, found something else';
  const { type, base64 } = entry;
  if (type !== PICTURE_TYPE)
    return `the type ${PICTURE_TYPE}, found ${JSON.stringify(type)?.slice(0, 40) ?? 'none'}`;
  if (typeof base64 !== 'string') return 'its bytes as base64 text, found none';
  if (base64.length > (MAX_PICTURE_BYTES * 4) / 3 + 4)
    return `at most ${MAX_PICTURE_BYTES / 1e6} MB, found ${Math.ceil((base64.length * 0.75) / 1e5) / 10} MB`;
  const bytes = fromBase64(base64);
  if (bytes === null) return 'its bytes as base64 text, found another text';
  const isJpeg = bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff;
  return isJpeg ? bytes : 'a JPEG picture, found something else';
}

const fault = (hash: string, words: string): DocumentFault => {
  const [expected = '', found = ''] = words.split(', found ');
  return { path: `photos.${hash.slice(0, 12)}…`, expected, found };
};
