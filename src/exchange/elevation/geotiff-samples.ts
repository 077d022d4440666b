import { HIGHEST_HEIGHT_M, VOID_HEIGHT_M } from '../../core/skyline/elevation-grid.ts';

/** The kinds of sample that hold heights, by sample format and bits, as a file's tags say. */
export type SampleKind = 'int16' | 'uint16' | 'int32' | 'float32' | 'float64';

const KINDS: Readonly<Record<string, SampleKind>> = {
  '1-16': 'uint16',
  '2-16': 'int16',
  '2-32': 'int32',
  '3-32': 'float32',
  '3-64': 'float64',
};

export const sampleKind = (format: number, bits: number): SampleKind | null =>
  KINDS[`${format}-${bits}`] ?? null;

export const sampleWords = (format: number, bits: number): string =>
  `${bits}-bit ${{ 1: 'whole numbers without sign', 2: 'whole numbers', 3: 'fractions' }[format] ?? 'samples of an unknown kind'}`;

/** The samples as heights, where they lie if they fit; a value without sign that is no height becomes a void. */
export function samplesAsHeights(
  values: ArrayLike<number> & { readonly buffer: ArrayBufferLike },
  kind: SampleKind,
): Int16Array | Float32Array {
  switch (kind) {
    case 'int16':
    case 'float32':
      return values as unknown as Int16Array | Float32Array;
    case 'uint16': {
      const heights = new Int16Array(values.buffer);
      for (let index = 0; index < heights.length; index += 1)
        if ((values[index] ?? 0) > HIGHEST_HEIGHT_M) heights[index] = VOID_HEIGHT_M;
      return heights;
    }
    case 'int32':
    case 'float64':
      return Float32Array.from(values);
  }
}
