import { fail, ok, type Result } from '../units/result.ts';

/** Density D = −log10 T of one stop, log10 2. [iso5] */
const DENSITY_PER_STOP = Math.log10(2);

export const stopsFromDensity = (density: number): number => density / DENSITY_PER_STOP;
export const densityFromStops = (stops: number): number => stops * DENSITY_PER_STOP;
export const stopsFromFilterFactor = (factor: number): number => Math.log2(factor);
export const filterFactorFromStops = (stops: number): number => 2 ** stops;

/** 'ND 2 stops (0.6)': stops to a tenth, density as engraved. */
export const formatNd = (stops: number): string => {
  const shown = Math.round(stops * 10) / 10;
  return `ND ${shown} ${shown === 1 ? 'stop' : 'stops'} (${densityFromStops(stops).toFixed(1)})`;
};

const NUMBER = String.raw`(\d+(?:[.,]\d+)?)`;
const STOPS_TEXT = new RegExp(
  `^(?:nd )?(?:${NUMBER}|(\\d+) (\\d)/(\\d)|(\\d)/(\\d)) ?(?:stops?|ev)$`,
);
const DENSITY_TEXT = /^(?:nd ?)?(\d[.,]\d+)(?: nd)?$/;
const FACTOR_TEXT = new RegExp(`^(?:nd ?(\\d+)|[x×] ?${NUMBER}|${NUMBER} ?[x×])$`);

/**
 * What is engraved on a filter ring, as stops. With a decimal point it is a density (0.6), after
 * 'ND' without one, or with ×, a factor (ND4, ×4); 'stops' says stops. A bare whole number could be
 * any of the three and is refused. [iso5]
 */
export const parseEngravedFilter = (
  engraving: string,
): Result<number, { readonly sentence: string }> => {
  const text = engraving.trim().toLowerCase().replace(/\s+/g, ' ');
  const stops = stopsFromText(text);
  if (stops !== null && stops > 0 && stops <= 20) return ok(stops);
  return fail({
    sentence: `Found “${engraving.trim()}”; expected a density such as 0.6, a factor such as ND4 or ×4, or stops such as 2 stops.`,
  });
};

const stopsFromText = (text: string): number | null => {
  const asStops = STOPS_TEXT.exec(text);
  if (asStops !== null) {
    const [, decimal, whole, over, under, onlyOver, onlyUnder] = asStops;
    if (decimal !== undefined) return decimalNumber(decimal);
    if (whole !== undefined) return Number(whole) + Number(over) / Number(under);
    return Number(onlyOver) / Number(onlyUnder);
  }
  const asDensity = DENSITY_TEXT.exec(text);
  if (asDensity !== null) return stopsFromDensity(decimalNumber(asDensity[1]));
  const asFactor = FACTOR_TEXT.exec(text);
  if (asFactor === null) return null;
  return stopsFromFilterFactor(decimalNumber(asFactor[1] ?? asFactor[2] ?? asFactor[3]));
};

const decimalNumber = (digits: string | undefined): number =>
  Number((digits ?? '').replace(',', '.'));

export type FilterStack = {
  /** Density of the whole stack, stops: densities add. [iso5] */
  readonly stops: number;
  /** Which of the owned filters, by place in the list. */
  readonly filters: readonly number[];
};

/** Every way to screw at most `maxStacked` of the owned filters together, none included. */
export const filterStacks = (owned: readonly number[], maxStacked: number): FilterStack[] => {
  const stacks: FilterStack[] = [{ stops: 0, filters: [] }];
  for (let filter = 0; filter < owned.length; filter += 1) {
    const without = stacks.length;
    for (let index = 0; index < without; index += 1) {
      const stack = stacks[index];
      if (stack === undefined || stack.filters.length >= maxStacked) continue;
      stacks.push({
        stops: stack.stops + (owned[filter] ?? 0),
        filters: [...stack.filters, filter],
      });
    }
  }
  return stacks;
};
