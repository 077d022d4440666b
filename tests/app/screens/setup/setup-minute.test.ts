import { describe, expect, test } from 'vitest';

import { nextChange } from '../../../../src/app/screens/setup/next-change.ts';
import {
  minuteOf,
  setupBlock,
  stripRange,
} from '../../../../src/app/screens/setup/setup-minute.ts';
import { demoKit } from '../../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../../src/core/plan/demo-shoot.ts';
import { setupView, type SetupView } from '../../../../src/core/plan/setup-view.ts';
import { instantAtClock } from '../../../../src/core/units/civil-time.ts';

const ZONE = 'Europe/Rome';
const DATE = '2027-05-14';
const at = (clock: string): number => instantAtClock(DATE, clock, ZONE) ?? NaN;
const block = { startMs: at('20:00'), endMs: at('20:40') };
const range = { startMs: at('04:00'), endMs: at('22:00') };

describe('the minute a setup is opened at', () => {
  test('is its start when the real clock is on another day', () => {
    const presentMs = at('20:00') - 5 * 86_400_000;
    expect(minuteOf({ chosenMs: null, presentMs, block, range })).toEqual({
      minuteMs: at('20:00'),
      isPresent: false,
    });
  });

  test.each(['19:00', '20:06', '21:39'])(
    'is the present minute at %s, within an hour of it',
    (clock) => {
      expect(minuteOf({ chosenMs: null, presentMs: at(clock) + 31_000, block, range })).toEqual({
        minuteMs: at(clock),
        isPresent: true,
      });
    },
  );

  test('is its start when the clock is more than an hour away', () => {
    const { minuteMs } = minuteOf({ chosenMs: null, presentMs: at('18:59'), block, range });
    expect(minuteMs).toBe(at('20:00'));
  });

  test('is the minute that was chosen, unless that belongs to another day', () => {
    const presentMs = at('12:00');
    expect(minuteOf({ chosenMs: at('17:00'), presentMs, block, range }).minuteMs).toBe(at('17:00'));
    const other = at('17:00') - 86_400_000;
    expect(minuteOf({ chosenMs: other, presentMs, block, range }).minuteMs).toBe(at('20:00'));
  });
});

test('a start that clocks skip falls back to noon', () => {
  const spring = setupBlock('2027-03-28', { zone: ZONE }, { startClock: '02:30', durationMin: 30 });
  expect(spring.startMs).toBe(instantAtClock('2027-03-28', '12:00', ZONE));
});

test('the strip spans nautical twilight in full hours and never leaves the block out', () => {
  const none = { sunriseMs: null, sunsetMs: null, solarNoonMs: null, civilDawnMs: null, civilDuskMs: null, astronomicalDawnMs: null, astronomicalDuskMs: null }; // prettier-ignore
  const events = { ...none, nauticalDawnMs: at('04:20'), nauticalDuskMs: at('21:50') };
  const day = { startMs: at('00:00'), endMs: at('00:00') + 86_400_000 };
  expect(stripRange(events, day, block)).toEqual({ startMs: at('04:00'), endMs: at('22:00') });
  const late = { startMs: at('22:30'), endMs: at('23:10') };
  expect(stripRange(events, day, late).endMs).toBe(day.endMs);
});

const seen = (clock: string): SetupView => {
  const view = setupView({
    shoot: demoShoot(),
    kit: demoKit(),
    setupId: 'quartet',
    instantMs: at(clock),
  });
  if (!view.ok) throw new Error('expected a view');
  return view.value;
};

const dials = (ms: number) => {
  const view = setupView({ shoot: demoShoot(), kit: demoKit(), setupId: 'quartet', instantMs: ms });
  if (!view.ok || !view.value.answer.ok) return null;
  const { shutterS, fNumber, iso, ndStops, lights } = view.value.answer.value.recipe;
  return [shutterS, fNumber, iso, ndStops, ...lights.map(({ powerStops }) => powerStops)];
};

describe('the next change', () => {
  test('is the first minute whose recipe differs, each minute solved by itself', () => {
    const now = seen('20:00');
    if (!now.answer.ok) throw new Error('expected a recipe');
    const next = nextChange(now, now.answer.value.recipe, at('20:00'));
    if (next === null) throw new Error('expected a change');
    for (let ms = at('20:00'); ms < next.atMs; ms += 60_000)
      expect(dials(ms)).toEqual(dials(at('20:00')));
    expect(dials(next.atMs)).not.toEqual(dials(at('20:00')));
  });

  test('is the end where the setup stops working', () => {
    const now = seen('20:50');
    if (!now.answer.ok) throw new Error('expected a recipe');
    let ms = at('20:50');
    let recipe = now.answer.value.recipe;
    for (let changes = 0; changes < 90; changes += 1) {
      const next = nextChange(now, recipe, ms);
      if (next === null) throw new Error('expected the dark to end it');
      if (next.recipe === null) {
        const view = setupView({
          shoot: demoShoot(),
          kit: demoKit(),
          setupId: 'quartet',
          instantMs: next.atMs,
        });
        expect(view.ok && view.value.answer.ok).toBe(false);
        return;
      }
      ms = next.atMs;
      recipe = next.recipe;
    }
    throw new Error('it never ended');
  });
});
