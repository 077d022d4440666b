import { describe, expect, test } from 'vitest';

import { demoKit } from '../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import { KIT } from '../../../src/core/plan/kit.ts';
import { kitReferences, missingSpotIds } from '../../../src/core/plan/references.ts';
import { setupFixes } from '../../../src/core/plan/setup-fixes.ts';
import { SHOOT } from '../../../src/core/plan/shoot.ts';
import { demoMinute, viewOfMinute } from '../../support/demo-minute.ts';

describe('the demo', () => {
  test('its shoot and its kit pass their schemas', () => {
    expect(SHOOT.safeParse(demoShoot()).success).toBe(true);
    expect(KIT.safeParse(demoKit()).success).toBe(true);
  });

  test('has four spots and two battery heads, and all that its setups name is there', () => {
    const [shoot, kit] = [demoShoot(), demoKit()];
    expect(Object.keys(shoot.spots)).toHaveLength(4);
    expect(Object.values(kit.heads).reduce((sum, head) => sum + head.owned, 0)).toBe(2);
    expect(missingSpotIds(shoot).size).toBe(0);
    for (const { path, shelf, id } of kitReferences(shoot))
      expect(kit[shelf][id], path).toBeDefined();
  });

  test('no setup uses more of a head than the car holds', () => {
    const { heads } = demoKit();
    for (const setup of Object.values(demoShoot().setups)) {
      const used: Record<string, number> = {};
      for (const light of Object.values(setup.lights))
        used[light.headId] = (used[light.headId] ?? 0) + light.headCount;
      for (const [id, count] of Object.entries(used))
        expect(count, `${setup.name}: ${id}`).toBeLessThanOrEqual(heads[id]?.owned ?? 0);
    }
  });

  test('its lens covers every focal length and its camera every sensor', () => {
    const { cameras, lenses } = demoKit();
    const { setups, spots } = demoShoot();
    for (const { framing, spotId, lensId, cameraId } of Object.values(setups)) {
      const used = framing ?? spots[spotId]?.framing;
      expect(used?.focalLengthMm).toBeGreaterThanOrEqual(lenses[lensId]?.minFocalLengthMm ?? 0);
      expect(used?.focalLengthMm).toBeLessThanOrEqual(lenses[lensId]?.maxFocalLengthMm ?? 0);
      expect(used?.sensorWidthMm).toBe(cameras[cameraId]?.sensorWidthMm);
    }
  });

  test('its skylines say that they are invented', () => {
    for (const spot of Object.values(demoShoot().spots))
      expect(spot.skylineOrigin).toContain('invented');
  });

  test('at its setups’ own starts shows recipes, and for every shortage fixes', () => {
    const { setups, condition } = demoShoot();
    const works = Object.entries(setups).map(([setupId, { startClock }]) => {
      const asked = demoMinute(setupId, startClock, condition);
      const { ok } = viewOfMinute(asked).answer;
      expect(setupFixes(asked).length > 0, setupId).toBe(!ok);
      return ok;
    });
    expect(works).toContain(true);
  });

  test('is made afresh each time, so that nothing done to one copy shows in the next', () => {
    const first = demoShoot();
    first.title = 'changed';
    expect(demoShoot().title).not.toBe('changed');
  });
});
