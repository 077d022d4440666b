import { fail, ok, type Result } from '../../core/units/result.ts';

/** The keys and tags of a GeoTIFF that say where its samples lie. (OGC 19-008r4) */
export type GeotiffReference = {
  readonly geoKeys: Readonly<Record<string, unknown>> | null;
  /** Six numbers: raster i, j, k, then longitude, latitude, height. */
  readonly tiePoint: ArrayLike<number> | undefined;
  readonly pixelScale: ArrayLike<number> | undefined;
  /** Sixteen numbers, where there is no tie point. */
  readonly transformation: ArrayLike<number> | undefined;
};

export type SampleLattice = {
  /** Of the first sample. */
  readonly west: number;
  readonly north: number;
  readonly columnStep: number;
  readonly rowStep: number;
  /** A sample stands for the area round it, not for a point. */
  readonly isArea: boolean;
};

/** Geographic systems in degrees within a metre or two of WGS 84, by EPSG code. */
const LIKE_WGS84 = [4326, 4979, 4269, 4258, 4283, 7844, 4167, 6318, 4617, 4674];
const USER_DEFINED = 32767;
const DEGREE = 9102;
const METRE = 9001;

/** Where the samples lie, or why this is not a raster in degrees on WGS 84. */
export function sampleLattice(reference: GeotiffReference): Result<SampleLattice, string> {
  const { geoKeys } = reference;
  const systemFault = geoKeys === null ? 'no coordinate system' : notDegrees(geoKeys);
  if (systemFault !== null)
    return fail(`expected degrees on WGS 84 (EPSG:4326), found ${systemFault}`);
  const verticalUnit = geoKeys?.['VerticalUnitsGeoKey'];
  if (typeof verticalUnit === 'number' && ![0, METRE, USER_DEFINED].includes(verticalUnit))
    return fail(`expected heights in metres, found the unit of EPSG:${verticalUnit}`);
  const corner = cornerOf(reference);
  if (corner === null)
    return fail(
      'expected a tie point and a pixel size, or a transformation without rotation, found neither',
    );
  const { west, north, columnStep, rowStep } = corner;
  if (![west, north, columnStep, rowStep].every(Number.isFinite) || columnStep <= 0 || rowStep <= 0)
    return fail(
      `expected rows from north to south and columns from west to east, found steps of ${columnStep}° and ${rowStep}°`,
    );
  if (Math.abs(north) > 91 || Math.abs(west) > 361 || columnStep > 1 || rowStep > 1)
    return fail(
      `expected degrees, found a corner at ${west}, ${north} with steps of ${columnStep}, ${rowStep}`,
    );
  const isArea = geoKeys?.['GTRasterTypeGeoKey'] !== 2;
  const shift = isArea ? 0.5 : 0;
  return ok({
    west: west + shift * columnStep,
    north: north - shift * rowStep,
    columnStep,
    rowStep,
    isArea,
  });
}

function notDegrees(geoKeys: Readonly<Record<string, unknown>>): string | null {
  const projected = geoKeys['ProjectedCSTypeGeoKey'] ?? geoKeys['ProjectedCRSGeoKey'];
  const model = geoKeys['GTModelTypeGeoKey'];
  const citation = geoKeys['PCSCitationGeoKey'] ?? geoKeys['GTCitationGeoKey'];
  const named =
    typeof citation === 'string' ? ` (${citation.replace(/[|\0\s]+$/, '').slice(0, 80)})` : '';
  if (model === 1 || typeof projected === 'number')
    return typeof projected === 'number' && projected !== USER_DEFINED
      ? `the projection EPSG:${projected}${named}`
      : `a projection of its own${named}`;
  if (model !== 2) return 'no geographic coordinate system';
  const system = geoKeys['GeographicTypeGeoKey'] ?? geoKeys['GeodeticCRSGeoKey'];
  if (typeof system !== 'number' || !LIKE_WGS84.includes(system))
    return `the geographic system ${typeof system === 'number' && system !== USER_DEFINED ? `EPSG:${system}` : 'of its own'}${named}`;
  const unit = geoKeys['GeogAngularUnitsGeoKey'];
  return typeof unit === 'number' && unit !== DEGREE ? `angles in the unit EPSG:${unit}` : null;
}

function cornerOf({
  tiePoint,
  pixelScale,
  transformation,
}: GeotiffReference): Omit<SampleLattice, 'isArea'> | null {
  if (tiePoint !== undefined && pixelScale !== undefined) {
    const [columnStep = NaN, rowStep = NaN] = Array.from(pixelScale);
    const [i = NaN, j = NaN, , x = NaN, y = NaN] = Array.from(tiePoint);
    return { west: x - i * columnStep, north: y + j * rowStep, columnStep, rowStep };
  }
  if (transformation === undefined) return null;
  const [a = NaN, b = NaN, , west = NaN, d = NaN, e = NaN, , north = NaN] =
    Array.from(transformation);
  return b === 0 && d === 0 ? { west, north, columnStep: a, rowStep: -e } : null;
}
