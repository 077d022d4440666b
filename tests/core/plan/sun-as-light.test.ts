import { describe, expect, test } from 'vitest';

import { sunAsLight } from '../../../src/core/plan/sun-as-light.ts';
import { setupLightAt } from '../../../src/core/plan/setup-column.ts';
import type { SetupLight } from '../../../src/core/plan/setup-light.ts';
import { sceneOf } from '../../../src/core/plan/setup-light.ts';
import { demoSpots } from '../../../src/core/plan/demo-spots.ts';
import { defined } from '../../support/defined.ts';

const pier = { ...defined(demoSpots().pier), skyline: {} };

/** Local times of 14 May 2027 at the pier, sky clear. */
const lightAt = (clock: string): SetupLight =>
  setupLightAt(
    sceneOf(pier, pier.framing, {
      patch: null,
      people: 1,
      spacingM: 0.7,
      faceHeightM: 1.65,
      condition: 'clear',
    }),
    Date.parse(`2027-05-14T${clock}:00+02:00`),
  );

const seen = (clock: string, bearingDeg: number, shaded = false): ReturnType<typeof sunAsLight> =>
  sunAsLight(lightAt(clock), { shaded }, { bearingDeg });

describe('the sun is a light of the setup', () => {
  // The evening sun stands west-north-west, about 288° at 19:30.
  test('with the camera facing it, it strikes from behind: a rim', () => {
    expect(seen('19:30', 288)).toMatchObject({ role: 'rim', onFace: 'edge-only' });
    expect(Math.abs(seen('19:30', 288).angleDeg)).toBeGreaterThan(170);
  });
  test('with the sun behind the camera it is a rival key', () => {
    expect(seen('19:30', 108)).toMatchObject({ role: 'rival-key', onFace: 'nose-shadow' });
  });
  test('square to the line it lights one half of the face, from the right as from the left', () => {
    expect(seen('19:30', 198)).toMatchObject({ role: 'side', onFace: 'half-shadow' });
    // Facing south-south-west, the west is on the camera's right.
    expect(seen('19:30', 198).angleDeg).toBeGreaterThan(60);
    expect(seen('19:30', 18).angleDeg).toBeLessThan(-60);
  });
  test('at noon in May it stands over 60° high and shades the eyes', () => {
    expect(seen('13:05', 0).altitudeDeg).toBeGreaterThan(60);
    expect(seen('13:05', 0).onFace).toBe('eye-sockets');
  });
  test('after sunset it is down, behind a panel it is shaded', () => {
    expect(seen('21:00', 288)).toMatchObject({ role: 'down', edgeEv: -Infinity });
    expect(seen('19:30', 288, true)).toMatchObject({ role: 'shaded', edgeEv: -Infinity });
  });

  test('its edge reads about EV 15 when high and about EV 14 at 10°', () => {
    // Practitioners' figures for a surface facing the sun: about 15 high, 13.9 at 10°; half a stop.
    expect(Math.abs(seen('13:05', 288).edgeEv - 15)).toBeLessThan(0.5);
    const low = seen('19:23', 288);
    expect(Math.abs(low.altitudeDeg - 10)).toBeLessThan(1.2);
    expect(Math.abs(low.edgeEv - 13.9)).toBeLessThan(0.5);
  });

  test('it is warmer the lower it stands', () => {
    expect(seen('20:00', 288).kelvin).toBeLessThan(seen('18:00', 288).kelvin);
  });
});
