import { settings } from '../exposure/nd-choices.ts';
import { filterStacks, type FilterStack } from '../exposure/lens-filter.ts';
import type { RecipeInput } from './recipe.ts';

const MAX_STACKED = 2;
const SAME_STOPS = 1e-6;

/** The ND that may go before the lens: as pinned, else every stack there is. */
export const ndStacks = (input: RecipeInput): readonly FilterStack[] => {
  const stacks = input.ndStacks ?? filterStacks(input.ndStops, input.maxStacked ?? MAX_STACKED);
  const pinned = input.pins?.ndStops;
  if (pinned === undefined) return stacks;
  const upTo = Math.max(pinned, input.pins?.ndUpToStops ?? pinned);
  return settings({ fromStops: pinned, toStops: upTo }).map((stops) => ({
    stops,
    filters: stacks.find((stack) => Math.abs(stack.stops - stops) < SAME_STOPS)?.filters ?? [],
  }));
};

/** The same kit with one ND filter more; where stacks are named it goes on alone. */
export const withOneMoreNd = (input: RecipeInput, stops: number): RecipeInput => ({
  ...input,
  ndStops: [...input.ndStops, stops],
  ...(input.ndStacks === undefined
    ? {}
    : { ndStacks: [...input.ndStacks, { stops, filters: [input.ndStops.length] }] }),
});
