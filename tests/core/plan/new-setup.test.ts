import { expect, test } from 'vitest';

import { demoKit } from '../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import { addSetup } from '../../../src/core/plan/edits.ts';
import type { Kit } from '../../../src/core/plan/kit.ts';
import { newLight, nextRole } from '../../../src/core/plan/new-light.ts';
import { copyOf, newSetup } from '../../../src/core/plan/new-setup.ts';
import { inOrder } from '../../../src/core/plan/order-key.ts';
import { setupView } from '../../../src/core/plan/setup-view.ts';
import { SHOOT, type Shoot } from '../../../src/core/plan/shoot.ts';
import { instantAtClock } from '../../../src/core/units/civil-time.ts';
import { defined } from '../../support/defined.ts';

const made = (kit: Kit, spotId: string) =>
  newSetup(demoShoot(), kit, { name: 'Fresh', spotId, startClock: '19:45', lightId: 'light' });

const withNew = (kit: Kit, spotId: string): Shoot => {
  const setup = made(kit, spotId);
  if (!setup.ok) throw new Error(setup.problem);
  const shoot = demoShoot();
  addSetup('fresh', setup.value)(shoot);
  return shoot;
};

test('at each spot of the demo a new setup is one the shoot accepts, and stands last', () => {
  for (const spotId of Object.keys(demoShoot().spots)) {
    const shoot = withNew(demoKit(), spotId);
    expect(SHOOT.safeParse(shoot).success).toBe(true);
    expect(inOrder(shoot.setups).at(-1)?.[0]).toBe('fresh');
  }
});

test('it is solved with one key', () => {
  const shoot = withNew(demoKit(), 'pier');
  const instantMs = instantAtClock(shoot.date, '19:45', 'Europe/Rome') ?? NaN;
  const view = setupView({ shoot, kit: demoKit(), setupId: 'fresh', instantMs });
  expect(view.ok && view.value.sources.map(({ light }) => light.role)).toEqual(['key']);
});

test('its lens is one that has the focal length of the spot', () => {
  const kit = demoKit();
  for (const [spotId, { framing }] of Object.entries(demoShoot().spots)) {
    const { lensId } = defined(withNew(kit, spotId).setups['fresh']);
    const { minFocalLengthMm, maxFocalLengthMm } = defined(kit.lenses[lensId]);
    expect(framing.focalLengthMm).toBeGreaterThanOrEqual(minFocalLengthMm);
    expect(framing.focalLengthMm).toBeLessThanOrEqual(maxFocalLengthMm);
  }
});

test.each([{ cameras: {} }, { lenses: {} }])('with a kit of %j it says what is missing', (none) => {
  const setup = made({ ...demoKit(), ...none }, 'pier');
  expect(setup.ok ? '' : setup.problem).toMatch(/camera.*lens.*Kit/);
});

test('without heads or modifiers it has no lights', () => {
  const kit = { ...demoKit(), heads: {}, modifiers: {} };
  const shoot = withNew(kit, 'pier');
  expect(SHOOT.safeParse(shoot).success).toBe(true);
  expect(shoot.setups['fresh']?.lights).toEqual({});
  expect(newLight(kit, {}, 'key')).toBeNull();
});

test('a copy stands right after its original', () => {
  const shoot = demoShoot();
  const copy = copyOf(shoot, 'cello');
  if (copy === null) throw new Error('expected a copy');
  addSetup('copied', copy)(shoot);
  const ids = inOrder(shoot.setups).map(([id]) => id);
  expect(ids[ids.indexOf('cello') + 1]).toBe('copied');
  expect(SHOOT.safeParse(shoot).success).toBe(true);
});

test('after a key comes the fill, and from a head that is not in use', () => {
  const { cello } = demoShoot().setups;
  if (cello === undefined) throw new Error('the demo changed its ids');
  expect(nextRole(cello.lights)).toBe('fill');
  expect(newLight(demoKit(), cello.lights, 'fill')?.headId).toBe('head-400');
});
