import fc from 'fast-check';

import {
  addLight,
  addSetup,
  addSpot,
  editLight,
  editSetup,
  editSetupFraming,
  editShoot,
  editSpot,
  editSpotFraming,
  removeLight,
  removeSetup,
  removeSpot,
  together,
  type Edit,
} from '../../src/core/plan/edits.ts';
import { addSkylinePoint, removeSkylinePoint } from '../../src/core/plan/skyline-edits.ts';
import { demoShoot } from '../../src/core/plan/demo-shoot.ts';
import type { Shoot } from '../../src/core/plan/shoot.ts';
import { defined } from './defined.ts';

/** Chooses among what the shoot holds when its turn comes, so that most edits meet something. */
export type RandomEdit = (shoot: Shoot, newId: string) => Edit<Shoot>;

const spotSample = structuredClone(defined(Object.values(demoShoot().spots)[0]));
const setupSample = structuredClone(defined(Object.values(demoShoot().setups)[0]));
const lightSample = structuredClone(defined(Object.values(setupSample.lights)[0]));

const pick = (entries: Readonly<Record<string, unknown>> | undefined, draw: number): string =>
  Object.keys(entries ?? {}).at(draw % Math.max(Object.keys(entries ?? {}).length, 1)) ?? 'none';

const single: fc.Arbitrary<RandomEdit> = fc
  .record({ which: fc.nat({ max: 15 }), draw: fc.nat({ max: 9 }), figure: fc.nat({ max: 3 }) })
  .map(({ which, draw, figure }) => (shoot, newId) => {
    const spotId = pick(shoot.spots, draw);
    const setupId = pick(shoot.setups, draw);
    const lightId = pick(shoot.setups[setupId]?.lights, draw);
    switch (which) {
      case 0:
        return editShoot({ title: `Title ${figure}` });
      case 1:
        return addSpot(newId, structuredClone({ ...spotSample, name: `Spot ${figure}` }));
      case 2:
        return editSpot(spotId, { name: `Name ${figure}`, walkInMin: figure });
      case 3:
        return removeSpot(spotId);
      case 4:
      case 5:
        return editSpotFraming(spotId, { bearingDeg: figure });
      case 6:
        return addSkylinePoint(spotId, newId, { azimuthDeg: figure, altitudeDeg: 1 });
      case 7:
        return removeSkylinePoint(spotId, pick(shoot.spots[spotId]?.skyline, figure));
      case 8:
        return spotId === 'none'
          ? () => undefined
          : addSetup(newId, structuredClone({ ...setupSample, spotId }));
      case 9:
        return editSetup(setupId, { holdStops: figure });
      case 10:
        return spotId === 'none' ? () => undefined : editSetup(setupId, { spotId });
      case 11:
        return editSetupFraming(setupId, { tiltDeg: figure });
      case 12:
        return removeSetup(setupId);
      case 13:
        return addLight(setupId, newId, structuredClone(lightSample));
      case 14:
        return editLight(setupId, lightId, { stops: -figure });
      default:
        return removeLight(setupId, lightId);
    }
  });

export const editArbitrary: fc.Arbitrary<RandomEdit> = fc.oneof(
  { arbitrary: single, weight: 5 },
  {
    arbitrary: fc.tuple(single, single).map(
      ([first, second]): RandomEdit =>
        (shoot, newId) =>
          together(first(shoot, newId), second(shoot, `${newId}b`)),
    ),
    weight: 1,
  },
);
