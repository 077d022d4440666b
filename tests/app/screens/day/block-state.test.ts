import { expect, test } from 'vitest';
import { blockState, partText } from '../../../../src/app/screens/day/block-state.ts';
import { wishText } from '../../../../src/app/ui/hold-words.ts';
import { brokenText } from '../../../../src/app/ui/verdict-text.ts';
import { demoKit } from '../../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../../src/core/plan/demo-shoot.ts';
import { instantAtClock } from '../../../../src/core/units/civil-time.ts';

const shoot = demoShoot();
const at = (clock: string): number => instantAtClock(shoot.date, clock, 'Europe/Rome') ?? NaN;

test('a block that works says aperture, ND in stops with its density, the key’s power and what is in hand', () => {
  const state = blockState(shoot, demoKit(), 'quartet', at('20:10'));
  expect(state.works).toBe(true);
  expect(state.recipe).toMatch(/^f\/5\.6 · ND [1-5] stops? \(\d\.\d\) · 1\/\d+( \+ 0\.\d)?$/);
  expect(state.verdict).toMatch(/^\d\.\d in hand$/);
});

test('in the afternoon it says by how much it is short and which light runs out', () => {
  const state = blockState(shoot, demoKit(), 'quartet', at('16:00'));
  expect(state.works).toBe(false);
  expect(state.recipe).toBe('');
  expect(state.verdict).toMatch(/^short by \d\.\d, (key|fill) runs out first$/);
});

test('a light taken from the kit is named, not guessed around', () => {
  const kit = { ...demoKit(), heads: {} };
  expect(blockState(shoot, kit, 'quartet', at('20:00')).verdict).toBe('its head is not in the kit');
});

test('a block that works for a part of its time says until or from when', () => {
  const block = { startMs: at('20:00'), durationMin: 40 };
  const breaks = [{ fromMs: at('20:25'), toMs: at('21:30'), kind: 'too-dark' as const }];
  expect(partText(breaks, block, true, 'Europe/Rome')).toBe('until 20:25');
  const broken = [
    { fromMs: at('19:00'), toMs: at('20:10') - 30_000, kind: 'out-of-reach' as const },
  ];
  expect(partText(broken, block, false, 'Europe/Rome')).toBe('from 20:10');
  expect(partText([], block, true, 'Europe/Rome')).toBe('');
});

test('a hold is always said with what it is under', () => {
  expect(wishText(2, 'patch')).toBe('to hold it 2.0 under the patch');
  expect(wishText(-0.5, 'frame')).toBe('to hold it 0.5 over the whole sky in frame');
});

test('a head that cannot go low enough is said by its role', () => {
  expect(brokenText({ verdict: 'head-too-strong', shortByStops: 0.55, role: 'fill' })).toBe(
    'too dark: fill at lowest power is 0.6 too strong',
  );
});
