import type { Corner, Obstacle } from '../../src/core/skyline/obstacle.ts';
import { seededRandom } from '../support/seeded-framings.ts';

/** About a metre at 45.65° north, degrees. */
const NORTH_DEG = 1 / 111_150;
const EAST_DEG = 1 / 77_900;

/**
 * An invented town of blocks 30 m apart round a place: houses of four to eight corners, turned any
 * way, 3 to 25 m high, every tenth outline a row of trees.
 */
export function townOfOutlines(
  count: number,
  centre: { readonly longitudeDeg: number; readonly latitudeDeg: number },
): readonly Obstacle[] {
  const random = seededRandom(7);
  const side = Math.ceil(Math.sqrt(count));
  return Array.from({ length: count }, (_, index): Obstacle => {
    const eastM = ((index % side) - side / 2) * 30;
    const northM = (Math.floor(index / side) - side / 2) * 30;
    const turn = random() * Math.PI;
    const at = (x: number, y: number): Corner => [
      centre.longitudeDeg + (eastM + x * Math.cos(turn) - y * Math.sin(turn)) * EAST_DEG,
      centre.latitudeDeg + (northM + x * Math.sin(turn) + y * Math.cos(turn)) * NORTH_DEG,
    ];
    const halfM = 5 + random() * 7;
    const heightM = 3 + random() * 22;
    if (index % 10 === 9)
      return {
        kind: 'trees',
        closed: false,
        outline: [at(-halfM, 0), at(0, 2), at(halfM, 0)],
        heightM,
        crownBaseM: 2,
        passesInLeaf: 0.2,
        passesBare: 0.6,
        footElevationM: null,
      };
    return {
      kind: 'building',
      closed: true,
      outline:
        index % 3 === 0
          ? [
              at(-halfM, -6),
              at(halfM, -6),
              at(halfM, 6),
              at(2, 6),
              at(2, 2),
              at(-2, 2),
              at(-2, 6),
              at(-halfM, 6),
            ]
          : [at(-halfM, -6), at(halfM, -6), at(halfM, 6), at(-halfM, 6)],
      heightM,
      crownBaseM: 0,
      passesInLeaf: 0,
      passesBare: 0,
      footElevationM: null,
    };
  });
}
