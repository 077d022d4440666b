import type { IncludeTagsOptions } from 'exifreader';

import { fail, ok, type Result } from '../../core/units/result.ts';
import { EXIF_TAGS, exifFacts } from './exif-facts.ts';
import { textOf, wholeOf, type ExifTags } from './exif-values.ts';
import type { PhotoFacts } from './photo-facts.ts';
import { otherKindWords, photoKind, type PhotoKind } from './photo-kind.ts';

export const MAX_PHOTO_BYTES = 60e6;
const NAME_LENGTH = 120;

/**
 * What the camera wrote into a JPEG, HEIC, AVIF, WebP, PNG or TIFF: a photo without any of it, or
 * without a position, is an ordinary answer. A refusal is a sentence. The file is not changed.
 */
export async function readPhoto(file: Blob): Promise<Result<PhotoFacts, string>> {
  const name = nameOf(file);
  if (file.size === 0) return fail(`${name}: expected a photo, found an empty file.`);
  if (file.size > MAX_PHOTO_BYTES)
    return fail(
      `${name} is too large: found ${Math.ceil(file.size / 1e5) / 10} MB, expected at most ${MAX_PHOTO_BYTES / 1e6} MB.`,
    );
  const buffer = await file.arrayBuffer().catch(() => null);
  if (buffer === null)
    return fail(`${name} could not be opened. It may have been moved since it was chosen.`);
  const head = new Uint8Array(buffer, 0, Math.min(16, buffer.byteLength));
  const kind = photoKind(head);
  if (kind === null)
    return fail(
      `${name}: expected a photo (JPEG, HEIC, WebP, PNG or TIFF), found ${otherKindWords(head)}.`,
    );
  const groups = await decoded(buffer);
  if (groups === null)
    return fail(
      `${name} is damaged or was cut short: it starts as a ${kind} and cannot be read on.`,
    );
  const size = sizeOf(kind, groups, buffer);
  if (NEEDS_SIZE.has(kind) && (size.widthPx === null || size.heightPx === null))
    return fail(`${name} is damaged or was cut short: the ${kind} ends before its picture begins.`);
  return ok({
    name,
    kind,
    ...size,
    ...exifFacts(groups.exif),
    colourProfile: profileOf(groups),
  });
}

type Groups = { readonly exif: ExifTags; readonly file: ExifTags; readonly icc: ExifTags };

/** Kinds that state the picture's size up front. */
const NEEDS_SIZE: ReadonlySet<PhotoKind> = new Set(['JPEG', 'PNG']);

/** null where the bytes cannot be followed. */
async function decoded(buffer: ArrayBuffer): Promise<Groups | null> {
  const { errors, load } = await import('exifreader');
  try {
    const tags = await load(buffer, { expanded: true, async: true, includeTags: WANTED });
    return {
      exif: (tags.exif ?? {}) as ExifTags,
      file: { ...tags.riff, ...tags.file },
      icc: tags.icc ?? {},
    };
  } catch (error) {
    return error instanceof errors.MetadataMissingError ? { exif: {}, file: {}, icc: {} } : null;
  }
}

const WANTED: IncludeTagsOptions = {
  exif: [...EXIF_TAGS, 'ImageWidth', 'ImageLength'],
  file: true,
  riff: true,
  icc: true,
};

function sizeOf(
  kind: PhotoKind,
  { exif, file }: Groups,
  buffer: ArrayBuffer,
): Pick<PhotoFacts, 'widthPx' | 'heightPx'> {
  switch (kind) {
    case 'JPEG':
      return size(wholeOf(file, 'Image Width'), wholeOf(file, 'Image Height'));
    case 'WebP':
      return size(wholeOf(file, 'ImageWidth'), wholeOf(file, 'ImageHeight'));
    case 'TIFF':
      return size(wholeOf(exif, 'ImageWidth'), wholeOf(exif, 'ImageLength'));
    case 'PNG': {
      const view = new DataView(buffer);
      return view.byteLength < 33 ? size(null, null) : size(view.getUint32(16), view.getUint32(20));
    }
    case 'HEIC':
    case 'AVIF':
      return size(null, null);
  }
}

const size = (
  width: number | null,
  height: number | null,
): Pick<PhotoFacts, 'widthPx' | 'heightPx'> => ({
  widthPx: width !== null && width > 0 ? width : null,
  heightPx: height !== null && height > 0 ? height : null,
});

const profileOf = ({ icc, exif }: Groups): string | null => {
  const name = textOf(icc, 'ICC Description');
  if (name !== null) return name.slice(0, NAME_LENGTH);
  return wholeOf(exif, 'ColorSpace') === 1 ? 'sRGB' : null;
};

const nameOf = (file: Blob): string => {
  const name = 'name' in file && typeof file.name === 'string' ? file.name : '';
  return (
    name
      .replaceAll(/\p{Cc}/gu, ' ')
      .trim()
      .slice(0, NAME_LENGTH) || 'photo'
  );
};
