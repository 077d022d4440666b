/** One filter before the lens. */
export type StackedFilter = {
  readonly kind: 'nd' | 'variable-nd' | 'graduated-nd' | 'polariser' | 'colour';
  /** Of a variable one, at its weakest; of a polariser, from light that is not polarised. */
  readonly stops: number;
  /** Of a variable one, at its strongest. */
  readonly maxStops: number | null;
  /** Positive is warmer. */
  readonly miredShift: number;
  /** Green passed more than red and blue, stops. */
  readonly greenStops: number;
  readonly ringMm: number;
};

export type FilterStackFigures = {
  /** ND and variable ND, at the weakest and at the strongest. */
  readonly nd: { readonly fromStops: number; readonly toStops: number };
  /** Colour filters and what a polariser takes from everything. */
  readonly otherStops: number;
  /** Of the graduated ones above their edge. */
  readonly graduatedStops: number;
  readonly polarisers: number;
  readonly miredShift: number;
  readonly greenStops: number;
  /** All rings together. */
  readonly depthMm: number;
};

/**
 * What a stack takes from flash and ambient alike, whatever its order: densities add, so stops do,
 * and mired shifts do. [iso5] What takes from a part of the picture alone stands apart.
 */
export function filterStackFigures(filters: readonly StackedFilter[]): FilterStackFigures {
  const sum = (value: (filter: StackedFilter) => number): number =>
    filters.reduce((total, filter) => total + value(filter), 0);
  const of = (filter: StackedFilter, ...kinds: readonly StackedFilter['kind'][]): number =>
    kinds.includes(filter.kind) ? filter.stops : 0;
  return {
    nd: {
      fromStops: sum((filter) => of(filter, 'nd', 'variable-nd')),
      toStops: sum((filter) =>
        filter.kind === 'variable-nd' ? strongestStops(filter) : of(filter, 'nd'),
      ),
    },
    otherStops: sum((filter) => of(filter, 'polariser', 'colour')),
    graduatedStops: sum((filter) => of(filter, 'graduated-nd')),
    polarisers: filters.filter(({ kind }) => kind === 'polariser').length,
    miredShift: sum(({ miredShift }) => miredShift),
    greenStops: sum(({ greenStops }) => greenStops),
    depthMm: sum(({ ringMm }) => ringMm),
  };
}

/** One whose strongest is not known, or is less than its weakest, does not vary. */
export const strongestStops = ({
  stops,
  maxStops,
}: Pick<StackedFilter, 'stops' | 'maxStops'>): number => Math.max(stops, maxStops ?? stops);
