import * as z from 'zod/mini';
import { expect, test } from 'vitest';
import { newSetup } from '../../../../src/app/screens/day/new-setup.ts';
import { shownSetup } from '../../../../src/app/screens/day/shown-setup.ts';
import { demoKit } from '../../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../../src/core/plan/demo-shoot.ts';
import { inOrder } from '../../../../src/core/plan/order-key.ts';
import { setupView } from '../../../../src/core/plan/setup-view.ts';
import { SETUP, type Shoot } from '../../../../src/core/plan/shoot.ts';
import { instantAtClock } from '../../../../src/core/units/civil-time.ts';

const shoot = demoShoot();
const kit = demoKit();

const withNew = (startClock: string): Shoot => {
  const made = newSetup(shoot, kit, { spotId: 'pier', startClock });
  if (!made.ok) throw new Error(made.problem);
  return { ...shoot, setups: { ...shoot.setups, fresh: made.value } };
};

test('a new setup is one the shoot accepts, stands last and is solved', () => {
  const { setups } = withNew('19:45');
  expect(z.safeParse(SETUP, setups['fresh']).success).toBe(true);
  expect(inOrder(setups).at(-1)?.[0]).toBe('fresh');
  const instantMs = instantAtClock(shoot.date, '19:45', 'Europe/Rome') ?? NaN;
  const view = setupView({ shoot: withNew('19:45'), kit, setupId: 'fresh', instantMs });
  expect(view.ok && view.value.sources.map(({ light }) => light.role)).toEqual(['key']);
});

test('without a camera in the kit it says what is missing', () => {
  const made = newSetup(shoot, { ...kit, cameras: {} }, { spotId: 'pier', startClock: '19:45' });
  expect(made.ok ? '' : made.problem).toMatch(/camera.*Kit/);
});

test('a column shows the reach of the selected setup, else of the block nearest the minute', () => {
  const day = withNew('07:00');
  const at = (clock: string, selectedId: string | null): string | undefined =>
    shownSetup(day, 'pier', {
      selectedId,
      minuteMs: instantAtClock(shoot.date, clock, 'Europe/Rome') ?? NaN,
    })?.[0];
  expect(at('08:00', null)).toBe('fresh');
  expect(at('19:00', null)).toBe('quartet');
  expect(at('19:00', 'fresh')).toBe('fresh');
  expect(at('19:00', 'cello')).toBe('quartet');
  expect(shownSetup({ ...day, setups: {} }, 'pier', { selectedId: null, minuteMs: 0 })).toBeNull();
});
