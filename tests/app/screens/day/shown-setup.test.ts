import { expect, test } from 'vitest';
import { shownSetup } from '../../../../src/app/screens/day/shown-setup.ts';
import { demoShoot } from '../../../../src/core/plan/demo-shoot.ts';
import type { Shoot } from '../../../../src/core/plan/shoot.ts';
import { instantAtClock } from '../../../../src/core/units/civil-time.ts';
import { defined } from '../../../support/defined.ts';

const shoot = demoShoot();

const withMorning = (): Shoot => {
  const fresh = { ...defined(shoot.setups['quartet']), startClock: '07:00' };
  return { ...shoot, setups: { ...shoot.setups, fresh } };
};

test('a column shows the reach of the selected setup, else of the block nearest the minute', () => {
  const day = withMorning();
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
