/** What stands for a height that is not known, in whole metres and in fractions alike. */
export const VOID_HEIGHT_M = -32768;

/** Below the lowest and above the highest dry land with room to spare; a height outside is a fault of the data. */
export const LOWEST_HEIGHT_M = -500;
export const HIGHEST_HEIGHT_M = 9000;

/**
 * Heights on a lattice, row by row from the north-west corner, above sea level as the data have
 * it. Between the samples of a row or a column a height is linear, inside a cell bilinear.
 */
export type ElevationGrid = {
  /** Where it comes from, as the user knows it. */
  readonly name: string;
  /**
   * What the rows and columns are even in: degrees of latitude and longitude on WGS 84, or shares
   * of the web-Mercator world square, counted from its north-west corner.
   */
  readonly lattice: 'degrees' | 'web-mercator';
  /** Of the first sample; a longitude or a share may lie any number of turns away. */
  readonly west: number;
  readonly north: number;
  /** Both positive; rows go south. */
  readonly columnStep: number;
  readonly rowStep: number;
  readonly columns: number;
  readonly rows: number;
  /** How much of the outermost cells counts as no data, in steps: 0, or 0.5 where the outermost samples are copies. */
  readonly rim: number;
  readonly heights: Int16Array | Float32Array;
  /** Voids as they came. */
  readonly voidCount: number;
  /** How many of them were heights that no land has. */
  readonly absurdCount: number;
  /** One bit a sample, set where a void was filled from its neighbours; null where none was. */
  readonly filled: Uint8Array | null;
};

export const isFilled = (filled: Uint8Array | null, index: number): boolean =>
  filled !== null && ((filled[index >> 3] ?? 0) & (1 << (index & 7))) !== 0;

/** Puts voids where heights are absurd or not a number; how many it found of each. */
export function markVoids(
  heights: Int16Array | Float32Array,
  noDataValue: number,
): { readonly voidCount: number; readonly absurdCount: number } {
  let voidCount = 0;
  let absurdCount = 0;
  for (let index = 0; index < heights.length; index += 1) {
    const heightM = heights[index] ?? Number.NaN;
    if (heightM >= LOWEST_HEIGHT_M && heightM <= HIGHEST_HEIGHT_M && heightM !== noDataValue)
      continue;
    if (heightM !== noDataValue && heightM !== VOID_HEIGHT_M) absurdCount += 1;
    heights[index] = VOID_HEIGHT_M;
    voidCount += 1;
  }
  return { voidCount, absurdCount };
}
