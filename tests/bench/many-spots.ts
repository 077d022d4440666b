import { demoKit } from '../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../src/core/plan/demo-shoot.ts';
import type { Spot } from '../../src/core/plan/shoot.ts';
import { writeShootFile } from '../../src/exchange/shoot-file.ts';
import { seededRandom } from '../support/seeded-framings.ts';

/** Half the width of the square they lie in. */
const SPREAD_DEG = 0.15;

/** The demo's shoot with its spots repeated over a stretch of land, as a file the app imports. */
export const manySpotShootFile = (count: number): string => {
  const demo = demoShoot();
  const originals = Object.values(demo.spots);
  const random = seededRandom(count);
  const around = (middleDeg: number): number =>
    Math.round((middleDeg + (random() - 0.5) * 2 * SPREAD_DEG) * 1e6) / 1e6;
  const spots = Array.from({ length: count }, (_, at): readonly [string, Spot] => {
    const spot = originals[at % originals.length];
    if (spot === undefined) throw new Error('The demo has no spots.');
    return [
      `spot-${at}`,
      {
        ...spot,
        order: orderOf(at),
        name: `Spot ${at + 1}`,
        latitudeDeg: around(45.65),
        longitudeDeg: around(13.75),
        framing: { ...spot.framing, bearingDeg: (at * 37) % 360 },
      },
    ];
  });
  return writeShootFile({
    shoot: {
      ...demo,
      id: `spots-${count}`,
      title: `${count} spots`,
      spots: Object.fromEntries(spots),
      setups: {},
    },
    kit: demoKit(),
    photos: {},
    exportedAtMs: 0,
  });
};

/** Three letters that sort as the numbers do. */
const orderOf = (at: number): string =>
  [Math.floor(at / 625), Math.floor(at / 25) % 25, at % 25]
    .map((digit) => String.fromCharCode('b'.charCodeAt(0) + digit))
    .join('');
