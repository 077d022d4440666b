/*
 * Files with camera data, laid out by hand: TIFF 6.0 (header, directories of 12-byte entries, values
 * of more than four bytes behind them), Exif 2.32 (tags, APP1 of JPEG, chunk eXIf of PNG, chunk EXIF
 * of WebP, item Exif of HEIF).
 */
export type ByteOrder = 'big' | 'little';

type Rational = readonly [numerator: number, denominator: number];

/** One value of a directory, by its type of TIFF 6.0. */
export type TagValue =
  | { readonly type: 'ascii'; readonly text: string }
  | { readonly type: 'byte' | 'short' | 'long'; readonly values: readonly number[] }
  | { readonly type: 'rational' | 'srational'; readonly values: readonly Rational[] };

export type Directory = Readonly<Record<number, TagValue>>;

export const ascii = (text: string): TagValue => ({ type: 'ascii', text });
export const byte = (...values: readonly number[]): TagValue => ({ type: 'byte', values });
export const short = (...values: readonly number[]): TagValue => ({ type: 'short', values });
export const long = (...values: readonly number[]): TagValue => ({ type: 'long', values });
export const rational = (...values: readonly Rational[]): TagValue => ({
  type: 'rational',
  values,
});
export const srational = (...values: readonly Rational[]): TagValue => ({
  type: 'srational',
  values,
});

const CODES = { byte: 1, ascii: 2, short: 3, long: 4, rational: 5, srational: 10 } as const;
const SIZES = { byte: 1, ascii: 1, short: 2, long: 4, rational: 8, srational: 8 } as const;
const EXIF_POINTER = 0x8769;
const GPS_POINTER = 0x8825;

export type CameraData = {
  readonly main?: Directory;
  readonly exif?: Directory;
  readonly gps?: Directory;
};

const countOf = (value: TagValue): number =>
  value.type === 'ascii' ? new TextEncoder().encode(value.text).length + 1 : value.values.length;

const directorySize = (directory: Directory): number =>
  Object.values(directory).reduce((sum, value) => {
    const size = countOf(value) * SIZES[value.type];
    return sum + 12 + (size > 4 ? size : 0);
  }, 6);

/** A TIFF structure of these directories. */
export function tiffBytes({ main = {}, exif, gps }: CameraData, order: ByteOrder): Uint8Array {
  const little = order === 'little';
  const bytes: number[] = little ? [0x49, 0x49, 42, 0] : [0x4d, 0x4d, 0, 42];
  const put = (value: number, size: number): void => {
    const places = Array.from({ length: size }, (_, at) => Math.floor(value / 256 ** at) & 255);
    bytes.push(...(little ? places : places.toReversed()));
  };
  const putValue = (value: TagValue): void => {
    if (value.type === 'ascii') bytes.push(...new TextEncoder().encode(`${value.text}\0`));
    else
      for (const part of value.values)
        if (typeof part === 'number') put(part, SIZES[value.type]);
        else for (const half of part) put(half >>> 0, 4);
  };

  const putDirectory = (directory: Directory): void => {
    const entries = Object.entries(directory)
      .map(([tag, value]) => [Number(tag), value] as const)
      .toSorted(([first], [second]) => first - second);
    let behind = bytes.length + 2 + entries.length * 12 + 4;
    put(entries.length, 2);
    for (const [tag, value] of entries) {
      put(tag, 2);
      put(CODES[value.type], 2);
      put(countOf(value), 4);
      const size = countOf(value) * SIZES[value.type];
      const start = bytes.length;
      if (size > 4) {
        put(behind, 4);
        behind += size;
      } else putValue(value);
      while (bytes.length < start + 4) bytes.push(0);
    }
    put(0, 4);
    for (const [, value] of entries) if (countOf(value) * SIZES[value.type] > 4) putValue(value);
  };
  const pointers = (exif === undefined ? 0 : 1) + (gps === undefined ? 0 : 1);
  const exifAt = 8 + directorySize(main) + 12 * pointers;
  const gpsAt = exifAt + (exif === undefined ? 0 : directorySize(exif));
  put(8, 4);
  putDirectory({
    ...main,
    ...(exif === undefined ? {} : { [EXIF_POINTER]: long(exifAt) }),
    ...(gps === undefined ? {} : { [GPS_POINTER]: long(gpsAt) }),
  });
  if (exif !== undefined) putDirectory(exif);
  if (gps !== undefined) putDirectory(gps);
  return Uint8Array.from(bytes);
}

const joined = (...parts: readonly (Uint8Array | readonly number[])[]): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(parts.flatMap((part) => [...part]));

const letters = (text: string): readonly number[] =>
  text.split('').map((letter) => letter.charCodeAt(0));

const big = (value: number, size: number): readonly number[] =>
  Array.from({ length: size }, (_, at) => Math.floor(value / 256 ** (size - 1 - at)) & 255);

const little = (value: number, size: number): readonly number[] => big(value, size).toReversed();

/** The APP1 segment of camera data. */
const app1 = (tiff: Uint8Array): Uint8Array =>
  joined([0xff, 0xe1], big(tiff.length + 8, 2), letters('Exif\0\0'), tiff);

/** Start of frame of a picture 6000 px wide and 4000 px high, one component. */
const FRAME = [0xff, 0xc0, ...big(11, 2), 8, ...big(4000, 2), ...big(6000, 2), 1, 1, 0x11, 0];
const SCAN = [0xff, 0xda, ...big(8, 2), 1, 1, 0, 0, 63, 0, 0x55];

/** A JPEG of no picture worth showing, with the camera data in front. */
export const jpegWith = (data: CameraData, order: ByteOrder = 'big'): Uint8Array<ArrayBuffer> =>
  joined([0xff, 0xd8], app1(tiffBytes(data, order)), FRAME, SCAN, [0xff, 0xd9]);

export const jpegWithout = (): Uint8Array<ArrayBuffer> =>
  joined([0xff, 0xd8], FRAME, SCAN, [0xff, 0xd9]);

/** A JPEG made elsewhere with the camera data put in front. */
export const jpegWithInFront = (
  jpeg: Uint8Array,
  data: CameraData,
  order: ByteOrder = 'big',
): Uint8Array<ArrayBuffer> =>
  joined(jpeg.subarray(0, 2), app1(tiffBytes(data, order)), jpeg.subarray(2));

const chunk = (type: string, data: readonly number[] | Uint8Array): Uint8Array =>
  joined(big(data.length, 4), letters(type), data, [0, 0, 0, 0]);

export const pngWith = (data: CameraData, order: ByteOrder = 'big'): Uint8Array<ArrayBuffer> =>
  joined(
    [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
    chunk('IHDR', [...big(6000, 4), ...big(4000, 4), 8, 2, 0, 0, 0]),
    chunk('eXIf', tiffBytes(data, order)),
    chunk('IEND', []),
  );

export const webpWith = (data: CameraData, order: ByteOrder = 'big'): Uint8Array<ArrayBuffer> => {
  const tiff = tiffBytes(data, order);
  const padded = tiff.length % 2 === 0 ? tiff : joined(tiff, [0]);
  const chunks = joined(
    letters('VP8X'),
    little(10, 4),
    [0x08, 0, 0, 0],
    little(5999, 3),
    little(3999, 3),
    letters('EXIF'),
    little(tiff.length, 4),
    padded,
  );
  return joined(letters('RIFF'), little(chunks.length + 4, 4), letters('WEBP'), chunks);
};

export const tiffWith = (data: CameraData, order: ByteOrder = 'big'): Uint8Array<ArrayBuffer> =>
  joined(tiffBytes(data, order));

const box = (type: string, ...content: readonly (Uint8Array | readonly number[])[]): Uint8Array => {
  const inside = joined(...content);
  return joined(big(inside.length + 8, 4), letters(type), inside);
};

/** A HEIF file that holds nothing but an Exif item: ISO/IEC 23008-12 annex A.2.1, ISO/IEC 14496-12 8.11. */
export const heicWith = (data: CameraData, order: ByteOrder = 'big'): Uint8Array<ArrayBuffer> => {
  const item = joined(big(6, 4), letters('Exif\0\0'), tiffBytes(data, order));
  const fileType = box('ftyp', letters('heic'), big(0, 4), letters('mif1heic'));
  const entry = box('infe', [2, 0, 0, 0], big(1, 2), big(0, 2), letters('Exif'), [0]);
  const info = box('iinf', big(0, 4), big(1, 2), entry);
  const located = (itemAt: number): Uint8Array =>
    box(
      'iloc',
      big(0, 4),
      [0x44, 0x00],
      big(1, 2),
      big(1, 2),
      big(0, 2),
      big(1, 2),
      big(itemAt, 4),
      big(item.length, 4),
    );
  const meta = (itemAt: number): Uint8Array => box('meta', big(0, 4), info, located(itemAt));
  const itemAt = fileType.length + meta(0).length + 8;
  return joined(fileType, meta(itemAt), box('mdat', item));
};

/** As a browser hands a file over. */
export const fileOf = (
  bytes: Uint8Array<ArrayBuffer>,
  name = 'scout-01.jpg',
  type = 'image/jpeg',
): File => new File([bytes], name, { type });
