import { filterStacks, type FilterStack } from './lens-filter.ts';

export type OwnedNd = {
  /** Of a variable one its weakest and strongest; of others the same. */
  readonly fromStops: number;
  readonly toStops: number;
  readonly ringMm: number;
};

/** A variable one is set by eye: thirds are as fine as it goes. [lightingPractice] */
const CLICK_STOPS = 1 / 3;
const SAME_STOPS = 1e-6;

/**
 * Every density that the owned ND makes before a lens, each with the fewest filters that make it;
 * none included. Stacks deeper than there is room for are left out, and two variable ones together:
 * they cross. [lightingPractice]
 */
export function ndChoices(
  owned: readonly OwnedNd[],
  room: { readonly mostFilters: number; readonly mostMm: number },
): readonly FilterStack[] {
  const found = new Map<number, FilterStack>();
  const stacks = filterStacks(
    owned.map(({ fromStops }) => fromStops),
    room.mostFilters,
  );
  for (const { filters } of stacks) {
    const rings = filters.flatMap((place) => owned[place] ?? []);
    if (sum(rings.map(({ ringMm }) => ringMm)) > room.mostMm + SAME_STOPS) continue;
    if (rings.filter(varies).length > 1) continue;
    const ends = {
      fromStops: sum(rings.map(({ fromStops }) => fromStops)),
      toStops: sum(rings.map(({ toStops }) => toStops)),
    };
    for (const stops of settings(ends)) {
      const key = Math.round(stops / SAME_STOPS);
      const other = found.get(key);
      if (other === undefined || other.filters.length > filters.length)
        found.set(key, { stops, filters });
    }
  }
  return [...found.values()];
}

const varies = ({ fromStops, toStops }: OwnedNd): boolean => toStops - fromStops > SAME_STOPS;

/** From the weakest in thirds, the strongest itself included. */
export function settings(ends: {
  readonly fromStops: number;
  readonly toStops: number;
}): readonly number[] {
  const { fromStops, toStops } = ends;
  const clicks = Math.ceil((toStops - fromStops) / CLICK_STOPS - SAME_STOPS);
  return Array.from({ length: clicks + 1 }, (_, click) =>
    Math.min(toStops, fromStops + click * CLICK_STOPS),
  );
}

const sum = (values: readonly number[]): number =>
  values.reduce((total, value) => total + value, 0);
