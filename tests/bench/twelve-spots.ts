import { demoKit } from '../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../src/core/plan/demo-shoot.ts';
import { inWrittenOrder } from '../../src/core/plan/order-key.ts';
import type { Shoot, Spot } from '../../src/core/plan/shoot.ts';
import { writeShootFile } from '../../src/exchange/shoot-file.ts';

const SPOTS = 12;

/** The demo's shoot with its spots repeated, each looking 30° further round. */
const twelveSpotShoot = (): Shoot => {
  const demo = demoShoot();
  const originals = Object.entries(demo.spots);
  const copies = Array.from({ length: SPOTS }, (_, at): readonly [string, Spot] => {
    const [id, spot] = originals[at % originals.length] ?? [];
    if (id === undefined || spot === undefined) throw new Error('The demo has no spots.');
    const round = Math.floor(at / originals.length);
    const bearingDeg = (spot.framing.bearingDeg + at * 30) % 360;
    return round === 0
      ? [id, spot]
      : [
          `${id}-${round}`,
          { ...spot, name: `${spot.name} ${round}`, framing: { ...spot.framing, bearingDeg } },
        ];
  });
  return {
    ...demo,
    id: 'twelve-spots',
    title: 'Twelve spots',
    spots: inWrittenOrder(Object.fromEntries(copies)),
  };
};

/** The same as a file the app imports. */
export const twelveSpotShootFile = (): string =>
  writeShootFile({ shoot: twelveSpotShoot(), kit: demoKit(), photos: {}, exportedAtMs: 0 });
