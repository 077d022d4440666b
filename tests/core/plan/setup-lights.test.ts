import { produce } from 'immer';
import { describe, expect, test } from 'vitest';

import { demoKit } from '../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import type { Kit } from '../../../src/core/plan/kit.ts';
import { setupQuestion, setupSources } from '../../../src/core/plan/setup-lights.ts';
import type { KitGap } from '../../../src/core/plan/kit-gap.ts';
import { ndFor } from '../../../src/core/plan/setup-filters.ts';
import type { SetupQuestion } from '../../../src/core/plan/setup-question.ts';
import type { Setup } from '../../../src/core/plan/setup-schema.ts';
import { defined } from '../../support/defined.ts';

const spot = defined(demoShoot().spots.pier);
const setupWith = (change: (setup: Setup) => void): Setup =>
  produce(defined(demoShoot().setups.quartet), change);
const kitWith = (change: (kit: Kit) => void): Kit => produce(demoKit(), change);
/** A key of measured output at the side, a fill under it on the axis. */
const plain = setupWith((draft) => {
  Object.assign(defined(draft.lights.key), {
    headId: 'head-600',
    modifierId: 'reflector',
    stops: 0,
    distanceM: 2.9,
    angleDeg: 30,
    heightM: 2.3,
  });
  Object.assign(defined(draft.lights.fill), {
    headId: 'head-400',
    modifierId: 'umbrella',
    stops: -1.6,
    distanceM: 2.8,
    angleDeg: 0,
  });
});

function question(setup: Setup, kit: Kit = demoKit()): SetupQuestion {
  const asked = setupQuestion(setup, spot, kit);
  if (!asked.ok) throw new Error(JSON.stringify(asked.problem));
  return asked.value;
}

const gap = (setup: Setup, kit: Kit = demoKit()): KitGap | null => {
  const asked = setupQuestion(setup, spot, kit);
  return asked.ok ? null : asked.problem;
};

describe('what a recipe is asked with', () => {
  test('the lights in their order, each with its distance, face and ratio', () => {
    expect(question(plain).lights).toMatchObject([
      { role: 'key', stops: 0, distanceM: 2.9, heads: 1, stepStops: 0.1, minPowerStops: -8 },
      { role: 'fill', stops: -1.6, guideNumberM: 54, distanceM: 2.8 },
    ]);
    // f/32 at 2 m from a face 9 cm in radius.
    expect(question(plain).lights[0]?.guideNumberM).toBeCloseTo(32 * Math.sqrt(4.0081), 9);
    expect(question(plain).lights[1]?.sourceDiameterM).toBeCloseTo(1.1, 9);
  });

  test('hold, margin, wish and apertures as the setup and its lens have them', () => {
    expect(question(plain)).toMatchObject({
      hold: { stops: 2, under: 'patch' },
      unlitUnderStops: 2,
      wish: { fNumber: 5.6 },
      lens: { minFNumber: 2.8, maxFNumber: 22 },
      ndStops: [2, 3],
      shaded: false,
    });
  });

  test('a leaf shutter gives its own sync speed and needs no high-speed sync', () => {
    const kit = kitWith((draft) => {
      defined(draft.lenses['lens-24-70']).leafShutterS = 1 / 800;
    });
    expect(question(plain, kit).camera.syncShutterS).toBe(1 / 800);
    expect(question(plain, kit).camera.hssLossStops).toBeUndefined();
  });

  test('high-speed sync needs every head to have it, and costs what the worst of them loses', () => {
    expect(question(plain).camera).toMatchObject({ hssLossStops: 2, fastestShutterS: 1 / 8000 });
    const worse = kitWith((draft) => {
      defined(draft.heads['head-400']).hssLossStops = 2.6;
    });
    expect(question(plain, worse).camera.hssLossStops).toBe(2.6);
    const without = kitWith((draft) => {
      defined(draft.heads['head-400']).hssLossStops = null;
    });
    expect(question(plain, without).camera.fastestShutterS).toBeUndefined();
  });

  test.each([
    ['posing in the hand at 35 mm: 1/60 for the pose', 'posing', false, 35, 1 / 60],
    ['standing still in the hand at 70 mm: 1/70 for the hand', 'still', false, 70, 1 / 70],
    ['standing still on a tripod: 1/15', 'still', true, 70, 1 / 15],
    ['running: never slower than sync', 'running', true, 35, 1 / 250],
  ] as const)(
    'the slowest shutter, %s (common practice)',
    (_, motion, tripod, focalLengthMm, slowestS) => {
      const setup = setupWith((draft) => {
        Object.assign(draft, { motion, tripod, framing: { ...spot.framing, focalLengthMm } });
      });
      expect(question(setup).camera.slowestShutterS).toBeCloseTo(slowestS, 9);
    },
  );

  test('pins are handed on, pinned ND by itself and what a polariser takes from everything beside it', () => {
    const setup = setupWith((draft) => {
      Object.assign(draft, {
        pinnedShutterS: 1 / 125,
        pinnedFNumber: 4,
        pinnedIso: 200,
        pinnedFilterIds: { 'nd-2': true, polariser: true },
      });
      defined(draft.lights.fill).pinnedPowerStops = -3;
    });
    expect(question(setup).pins).toEqual({
      shutterS: 1 / 125,
      fNumber: 4,
      iso: 200,
      ndStops: 2,
      powerStops: [null, -3],
    });
    expect(question(setup).otherFilterStops).toBe(1.5);
    expect(question(setup).skyFilters).toEqual({ graduation: null, polariser: true });
    const bare = setupWith((draft) => void (draft.pinnedFilterIds = {}));
    expect(question(bare).pins).toEqual({ ndStops: 0, powerStops: [null, null] });
  });

  test.each<readonly [KitGap['what'], (setup: Setup) => void]>([
    ['camera', (setup) => void (setup.cameraId = 'gone')],
    ['lens', (setup) => void (setup.lensId = 'gone')],
    ['head', (setup) => void (defined(setup.lights.key).headId = 'gone')],
    ['modifier', (setup) => void (defined(setup.lights.key).modifierId = 'gone')],
    ['gel', (setup) => void (defined(setup.lights.key).gelId = 'gone')],
    ['filter', (setup) => void (setup.pinnedFilterIds = { gone: true })],
  ])('a %s that the kit does not hold is named', (what, change) => {
    expect(gap(setupWith(change))).toEqual({ kind: 'not-in-kit', what, id: 'gone' });
  });

  test('a gel in the kit costs its light', () => {
    const setup = setupWith((draft) => void (defined(draft.lights.key).gelId = 'cto-full'));
    const { stops } = defined(demoKit().gels['cto-full']);
    expect(stops).toBeGreaterThan(0.3);
    expect(question(setup).lights[0]?.lossStops).toBeCloseTo(stops, 12);
  });

  test('polarisers are no ND, and the NDs come in the kit’s order', () => {
    const wide = { threadMm: 82 };
    expect(ndFor(wide, demoKit()).map(([id]) => id)).toEqual(['nd-2', 'nd-3']);
    // Common practice: a step ring takes a wider filter, nothing takes a narrower one.
    const kit = demoKit();
    Object.assign(kit.filters['nd-2'] ?? {}, { threadMm: 67 });
    expect(ndFor(wide, kit).map(([id]) => id)).toEqual(['nd-3']);
    expect(ndFor({ threadMm: 62 }, kit).map(([id]) => id)).toEqual(['nd-2', 'nd-3']);
  });
});

test('a source says where its light stands and how it spreads over the row', () => {
  const sources = setupSources(plain, spot, demoKit());
  if (!sources.ok) throw new Error('expected sources');
  const [key, fill] = sources.value;
  expect([key?.lightId, fill?.lightId]).toEqual(['key', 'fill']);
  expect(key?.stand).toMatchObject({ distanceM: 2.9, angleDeg: 30, sourceRadiusM: 0.09 });
  // Faces at ±1.05 m: key 0.65 m above, 2.826 m off on the ground at 30°.
  const level = Math.sqrt(2.9 ** 2 - 0.65 ** 2);
  const square = (faceM: number): number =>
    (level / 2 - faceM) ** 2 + 0.75 * level ** 2 + 0.65 ** 2 + 0.09 ** 2;
  expect(key?.faces.spreadStops).toBeCloseTo(Math.log2(square(-1.05) / square(1.05)), 9);
});
