import { describe, expect, test } from 'vitest';

import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import { editSetupFraming, editSetup } from '../../../src/core/plan/edits.ts';
import { setupScene, setupsAt, type SetupScene } from '../../../src/core/plan/setup-light.ts';
import { setupLightAt } from '../../../src/core/plan/setup-column.ts';
import { lightAt } from '../../../src/core/spot/light-at.ts';
import { headThere } from '../../support/by-hand/frame.ts';
import { defined } from '../../support/defined.ts';
import { demoMinute } from '../../support/demo-minute.ts';

const sceneOf = ({ shoot, setupId }: ReturnType<typeof demoMinute>): SetupScene => {
  const setup = defined(shoot.setups[setupId]);
  return setupScene(shoot, setup, defined(shoot.spots[setup.spotId]));
};

describe('the scene of a setup', () => {
  test('the last head stands where a camera 1.4 m high, 5.1 m away and tilted 6° sees a face 1.65 m high', () => {
    const { heads } = sceneOf(demoMinute('quartet', '20:00', 'clear'));
    const camera = { bearing: 300, tilt: 6, focal: 35, width: 36, height: 24 };
    // Four faces 0.7 m apart: the last one 1.05 m to the right.
    const there = headThere(camera, { distance: 5.1, camera: 1.4, face: 1.65, across: 1.05 });
    expect(heads.right.xFraction).toBeCloseTo(there.right, 9);
    expect(heads.left.xFraction).toBeCloseTo(-there.right, 9);
    expect(heads.right.yFraction).toBeCloseTo(there.up, 9);
  });

  test('held upright the sides of the sensor are swapped', () => {
    const upright = demoMinute(
      'quartet',
      '20:00',
      'clear',
      editSetupFraming('quartet', { orientation: 'portrait' }),
    );
    expect(sceneOf(upright).framing).toMatchObject({ sensorWidthMm: 24, sensorHeightMm: 36 });
  });

  test('a setup’s own framing comes before its spot’s', () => {
    const own = demoMinute(
      'quartet',
      '20:00',
      'clear',
      editSetupFraming('quartet', { bearingDeg: 70 }),
    );
    expect(sceneOf(own).framing.bearingDeg).toBe(70);
    expect(sceneOf(demoMinute('quartet', '20:00', 'clear')).framing.bearingDeg).toBe(300);
  });
});

describe('the patch that is read', () => {
  const minute = demoMinute('quartet', '20:00', 'clear');

  test('lies on the side away from the sun and changes sides as the sun crosses the lens axis', () => {
    const scene = sceneOf(minute);
    // The sun crosses 300° at about 20:40: left of the axis before, right of it after.
    expect(setupLightAt(scene, minute.instantMs).patch?.xFraction).toBeCloseTo(0.45, 9);
    expect(setupLightAt(scene, minute.instantMs + 50 * 60_000).patch?.xFraction).toBeCloseTo(
      -0.45,
      9,
    );
  });

  test('is the user’s own where one was drawn, at every minute', () => {
    const patch = { xFraction: 0.1, yFraction: 0.3, widthFraction: 0.2, heightFraction: 0.1 };
    const own = demoMinute('quartet', '20:00', 'clear', editSetup('quartet', { patch }));
    const scene = sceneOf(own);
    for (const minutes of [0, 50]) {
      const instantMs = own.instantMs + minutes * 60_000;
      const light = setupLightAt(scene, instantMs);
      expect(light.patch).toEqual(patch);
      const { skyInFrame } = lightAt({ ...scene, patch, instantMs });
      expect(light.skyInFrame?.patchEv).toBe(skyInFrame?.patchEv);
    }
  });

  test('is none where no height in the picture is half sky, and the whole sky stands in', () => {
    const low = demoMinute(
      'quartet',
      '20:00',
      'clear',
      editSetupFraming('quartet', { tiltDeg: -17 }),
    );
    const light = setupLightAt(sceneOf(low), low.instantMs);
    expect(light.patch).toBeNull();
    const sky = defined(light.skyInFrame);
    expect(sky.patchIsFrame).toBe(true);
    expect(sky.patchEv).toBe(sky.meanEv);
  });
});

test('setups of a spot come in their order, those of other spots do not', () => {
  expect(setupsAt(demoShoot(), 'pier').map(([id]) => id)).toEqual(['quartet']);
  expect(setupsAt(demoShoot(), 'gone')).toEqual([]);
});
