import type { GeoTIFFImage } from 'geotiff';
import { markVoids, type ElevationGrid } from '../../core/skyline/elevation-grid.ts';
import { fail, ok, type Result } from '../../core/units/result.ts';
import type { ElevationArea } from './elevation-area.ts';
import { readBands } from './geotiff-bands.ts';
import { blobSource } from './blob-source.ts';
import { TooLargeUnpacked } from './inflate-within.ts';
import { limitInflate } from './geotiff-inflate.ts';
import { sampleLattice, type SampleLattice } from './geotiff-reference.ts';
import { sampleKind, sampleWords, type SampleKind } from './geotiff-samples.ts';
import { copyOutermost, sampleWindows, type SampleWindow } from './geotiff-window.ts';

type HeightFile = { readonly name: string; readonly blob: Blob };

type HeightImage = SampleLattice & {
  readonly columns: number;
  readonly rows: number;
  readonly kind: SampleKind;
  readonly noDataValue: number;
};

/** Larger than any sheet of heights, and still addressed exactly. */
const MAX_SIDE = 4e6;
const PACKINGS: Readonly<Record<number, string>> = {
  1: 'none',
  5: 'LZW',
  8: 'deflate',
  32946: 'deflate',
};

/** The heights of a GeoTIFF in degrees that lie within reach; none where none does. Only the window needed is read. */
export async function* readGeotiff(
  file: HeightFile,
  area: ElevationArea,
): AsyncGenerator<number, Result<readonly ElevationGrid[], string>> {
  const beginning = await file.blob
    .slice(0, 4)
    .arrayBuffer()
    .catch(() => null);
  if (beginning === null)
    return fail(`${file.name}: the file could not be read; it may have been moved or locked.`);
  if (!isTiff(new Uint8Array(beginning)))
    return fail(`${file.name}: expected a GeoTIFF, found a file that does not begin like one.`);
  try {
    const tiff = await import('geotiff');
    await limitInflate(tiff);
    const image = await (await tiff.GeoTIFF.fromSource(blobSource(file.blob))).getImage(0);
    const heights = await heightImage(image);
    if (!heights.ok) return fail(`${file.name}: ${heights.problem}.`);
    const grids: ElevationGrid[] = [];
    for (const window of sampleWindows(heights.value, area)) {
      const grid = yield* readWindow(file.name, image, heights.value, window);
      if (!grid.ok) return fail(`${file.name}: ${grid.problem}.`);
      grids.push(grid.value);
    }
    if (grids.length > 0 && grids.every(({ voidCount, heights: all }) => voidCount === all.length))
      return fail(
        `${file.name}: expected heights within ${Math.round(area.reachM / 1000)} km of the spot, found only voids.`,
      );
    return ok(grids);
  } catch (error) {
    return fail(
      error instanceof TooLargeUnpacked
        ? `${file.name}: a part of it unpacks to more than it says; it was not read further.`
        : `${file.name}: the GeoTIFF is damaged or cut short.`,
    );
  }
}

const isTiff = ([a, b, c, d]: Uint8Array): boolean =>
  (a === 0x49 && b === 0x49 && (c === 42 || c === 43) && d === 0) ||
  (a === 0x4d && b === 0x4d && c === 0 && (d === 42 || d === 43));

async function heightImage(image: GeoTIFFImage): Promise<Result<HeightImage, string>> {
  const columns = image.getWidth();
  const rows = image.getHeight();
  if (!(columns >= 2 && rows >= 2 && columns <= MAX_SIDE && rows <= MAX_SIDE))
    return fail(`expected 2 to ${MAX_SIDE} columns and rows, found ${columns} × ${rows}`);
  const bands = image.getSamplesPerPixel();
  if (bands !== 1) return fail(`expected one band of heights, found ${bands} bands`);
  const [format, bits] = [image.getSampleFormat(), image.getBitsPerSample()];
  const kind = sampleKind(format, bits);
  if (kind === null)
    return fail(`expected heights of 16 or 32 bits, found ${sampleWords(format, bits)}`);
  const packing: unknown = image.fileDirectory.getValue('Compression') ?? 1;
  if (!(Number(packing) in PACKINGS))
    return fail(
      `expected heights unpacked or packed by LZW or deflate, found packing number ${String(packing)}`,
    );
  const tag = async (name: 'ModelTiepoint' | 'ModelPixelScale' | 'ModelTransformation') =>
    image.fileDirectory.hasTag(name)
      ? ((await image.fileDirectory.loadValue(name)) as ArrayLike<number>)
      : undefined;
  const lattice = sampleLattice({
    geoKeys: image.getGeoKeys(),
    tiePoint: await tag('ModelTiepoint'),
    pixelScale: await tag('ModelPixelScale'),
    transformation: await tag('ModelTransformation'),
  });
  if (!lattice.ok) return lattice;
  const noDataValue = image.getGDALNoData() ?? Number.NaN;
  return ok({ ...lattice.value, columns, rows, kind, noDataValue });
}

async function* readWindow(
  name: string,
  image: GeoTIFFImage,
  heightsOf: HeightImage,
  window: SampleWindow,
): AsyncGenerator<number, Result<ElevationGrid, string>> {
  const { left, top, right, bottom, turns } = window;
  const read = yield* readBands(image, heightsOf.kind, window);
  if (!read.ok) return read;
  const heights = read.value;
  copyOutermost(heights, window, heightsOf);
  const { noDataValue, west, north, columnStep, rowStep, isArea } = heightsOf;
  return ok({
    name,
    lattice: 'degrees',
    west: west + 360 * turns + left * columnStep,
    north: north - top * rowStep,
    columnStep,
    rowStep,
    columns: right - left,
    rows: bottom - top,
    rim: isArea ? 0.5 : 0,
    heights,
    ...markVoids(heights, heights instanceof Float32Array ? Math.fround(noDataValue) : noDataValue),
    filled: null,
  });
}
