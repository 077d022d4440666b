import { deflateSync } from 'node:zlib';

export type TiffSample = 'int16' | 'uint16' | 'int32' | 'float32' | 'float64' | 'uint8';

const KINDS = {
  uint8: { format: 1, bytes: 1 },
  uint16: { format: 1, bytes: 2 },
  int16: { format: 2, bytes: 2 },
  int32: { format: 2, bytes: 4 },
  float32: { format: 3, bytes: 4 },
  float64: { format: 3, bytes: 8 },
} as const;

type Field = {
  readonly tag: number;
  readonly type: 2 | 3 | 4 | 12;
  readonly values: readonly number[];
};
const SIZES = { 2: 1, 3: 2, 4: 4, 12: 8 } as const;

export type TiffQuestion = {
  readonly columns: number;
  readonly rows: number;
  readonly kind: TiffSample;
  readonly value: (row: number, column: number) => number;
  readonly isBigEndian?: boolean;
  readonly isDeflated?: boolean;
  readonly rowsPerStrip?: number;
  /** GeoKeys as in the directory: key and value, of the kind that needs no further place. */
  readonly geoKeys?: Readonly<Record<number, number>> | null;
  readonly citation?: string;
  readonly tiePoint?: readonly number[] | null;
  readonly pixelScale?: readonly number[];
  readonly transformation?: readonly number[];
  readonly noData?: string;
  /** What the head says instead of the truth. */
  readonly statedColumns?: number;
  readonly statedRows?: number;
  readonly bands?: number;
  readonly compression?: number;
};

/** GTModelType geographic, GTRasterType area, EPSG:4326. */
export const WGS84_KEYS = { 1024: 2, 1025: 1, 2048: 4326 };

/** A GeoTIFF written by hand from the specifications (TIFF 6.0, OGC 19-008r4), in strips. */
export function tiffFile(question: TiffQuestion): Uint8Array<ArrayBuffer> {
  const { columns, rows, kind, isBigEndian = false, isDeflated = false } = question;
  const { format, bytes } = KINDS[kind];
  const rowsPerStrip = question.rowsPerStrip ?? rows;
  const strips: Uint8Array[] = [];
  for (let top = 0; top < rows; top += rowsPerStrip) {
    const height = Math.min(rowsPerStrip, rows - top);
    const strip = new DataView(new ArrayBuffer(columns * height * bytes));
    for (let row = 0; row < height; row += 1)
      for (let column = 0; column < columns; column += 1)
        put(
          strip,
          kind,
          (row * columns + column) * bytes,
          question.value(top + row, column),
          !isBigEndian,
        );
    const plain = new Uint8Array(strip.buffer);
    strips.push(isDeflated ? new Uint8Array(deflateSync(plain)) : plain);
  }
  const fields = fieldsOf(question, { format, bytes, rowsPerStrip, strips });
  return assemble(fields, strips, !isBigEndian);
}

const text = (value: string): readonly number[] => [...Buffer.from(`${value}\0`, 'latin1')];

function fieldsOf(
  question: TiffQuestion,
  {
    format,
    bytes,
    rowsPerStrip,
    strips,
  }: { format: number; bytes: number; rowsPerStrip: number; strips: readonly Uint8Array[] },
): readonly Field[] {
  const { columns, rows, geoKeys = WGS84_KEYS, citation, isDeflated = false } = question;
  const keys = Object.entries(geoKeys ?? {}).map(([key, value]) => [Number(key), 0, 1, value]);
  if (citation !== undefined) keys.push([1026, 34737, citation.length + 1, 0]);
  keys.sort((one, other) => (one[0] ?? 0) - (other[0] ?? 0));
  const fields: Field[] = [
    { tag: 256, type: 4, values: [question.statedColumns ?? columns] },
    { tag: 257, type: 4, values: [question.statedRows ?? rows] },
    { tag: 258, type: 3, values: [bytes * 8] },
    { tag: 259, type: 3, values: [question.compression ?? (isDeflated ? 8 : 1)] },
    { tag: 262, type: 3, values: [1] },
    { tag: 273, type: 4, values: strips.map(() => 0) },
    { tag: 277, type: 3, values: [question.bands ?? 1] },
    { tag: 278, type: 4, values: [rowsPerStrip] },
    { tag: 279, type: 4, values: strips.map(({ length }) => length) },
    { tag: 339, type: 3, values: [format] },
  ];
  if (question.transformation !== undefined)
    fields.push({ tag: 34264, type: 12, values: question.transformation });
  else if (question.tiePoint !== null) {
    fields.push({ tag: 33550, type: 12, values: question.pixelScale ?? [0.01, 0.01, 0] });
    fields.push({ tag: 33922, type: 12, values: question.tiePoint ?? [0, 0, 0, 7, 46, 0] });
  }
  if (geoKeys !== null)
    fields.push({ tag: 34735, type: 3, values: [1, 1, 0, keys.length, ...keys.flat()] });
  if (citation !== undefined) fields.push({ tag: 34737, type: 2, values: text(`${citation}|`) });
  if (question.noData !== undefined)
    fields.push({ tag: 42113, type: 2, values: text(question.noData) });
  return fields.toSorted((one, other) => one.tag - other.tag);
}

function assemble(
  fields: readonly Field[],
  strips: readonly Uint8Array[],
  little: boolean,
): Uint8Array<ArrayBuffer> {
  const directoryAt = 8;
  let freeAt = directoryAt + 2 + fields.length * 12 + 4;
  const places = fields.map(({ type, values }) => {
    const size = SIZES[type] * values.length;
    const at = freeAt;
    if (size > 4) freeAt += size + (size % 2);
    return { size, at };
  });
  const stripAt = strips.map(({ length }) => {
    const at = freeAt;
    freeAt += length + (length % 2);
    return at;
  });
  const file = new Uint8Array(freeAt);
  const view = new DataView(file.buffer);
  view.setUint16(0, little ? 0x4949 : 0x4d4d, false);
  view.setUint16(2, 42, little);
  view.setUint32(4, directoryAt, little);
  view.setUint16(directoryAt, fields.length, little);
  fields.forEach(({ tag, type, values }, index) => {
    const { size, at } = places[index] ?? { size: 0, at: 0 };
    const entry = directoryAt + 2 + index * 12;
    view.setUint16(entry, tag, little);
    view.setUint16(entry + 2, type, little);
    view.setUint32(entry + 4, values.length, little);
    if (size > 4) view.setUint32(entry + 8, at, little);
    const start = size > 4 ? at : entry + 8;
    (tag === 273 ? stripAt : values).forEach((value, place) => {
      const where = start + place * SIZES[type];
      if (type === 2) view.setUint8(where, value);
      else if (type === 3) view.setUint16(where, value, little);
      else if (type === 4) view.setUint32(where, value, little);
      else view.setFloat64(where, value, little);
    });
  });
  strips.forEach((strip, index) => file.set(strip, stripAt[index]));
  return file;
}

function put(view: DataView, kind: TiffSample, at: number, value: number, little: boolean): void {
  if (kind === 'uint8') view.setUint8(at, value);
  else if (kind === 'uint16') view.setUint16(at, value, little);
  else if (kind === 'int16') view.setInt16(at, value, little);
  else if (kind === 'int32') view.setInt32(at, value, little);
  else if (kind === 'float32') view.setFloat32(at, value, little);
  else view.setFloat64(at, value, little);
}
