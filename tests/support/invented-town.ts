import { metresPerDegree } from '../../src/core/place/metres-per-degree.ts';
import type { Corner, Obstacle } from '../../src/core/skyline/obstacle.ts';

/** An even spread of numbers from 0 to 1, the same at every run. */
const spreadFrom = (seed: number): (() => number) => {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
};

/**
 * Blocks of houses with a street round each, garden walls and rows of trees, about 45 m apart, as
 * dense as an old town. No place on earth.
 */
export function inventedTown(
  count: number,
  { latitudeDeg, longitudeDeg }: { readonly latitudeDeg: number; readonly longitudeDeg: number },
): readonly Obstacle[] {
  const next = spreadFrom(count);
  const { northM, eastM } = metresPerDegree(latitudeDeg);
  const side = Math.ceil(Math.sqrt(count));
  return Array.from({ length: count }, (_, index) => {
    const east = 45 * ((index % side) - side / 2) + 10 * next();
    const north = 45 * (Math.floor(index / side) - side / 2) + 10 * next();
    const [wide, deep, turn] = [8 + 25 * next(), 8 + 25 * next(), Math.PI * next()];
    const corners: readonly (readonly [number, number])[] = [
      [0, 0],
      [wide, 0],
      [wide, deep / 2],
      [wide / 2, deep / 2],
      [wide / 2, deep],
      [wide / 4, deep * 1.1],
      [0, deep],
    ];
    const outline = corners.map(([x, y]): Corner => [
      longitudeDeg + (east + x * Math.cos(turn) - y * Math.sin(turn)) / eastM,
      latitudeDeg + (north + x * Math.sin(turn) + y * Math.cos(turn)) / northM,
    ]);
    const pick = next();
    const solid = { crownBaseM: 0, passesInLeaf: 0, passesBare: 0, footElevationM: null };
    if (pick < 0.1)
      return { ...solid, kind: 'wall', closed: false, outline: outline.slice(0, 3), heightM: 2.5 };
    if (pick < 0.2)
      return {
        ...solid,
        kind: 'trees',
        closed: pick < 0.15,
        outline,
        heightM: 8 + 8 * next(),
        crownBaseM: 2,
        passesInLeaf: 0.2,
        passesBare: 0.6,
      };
    return { ...solid, kind: 'building', closed: true, outline, heightM: 4 + 20 * next() ** 2 };
  });
}
