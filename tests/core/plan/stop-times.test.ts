import { Body, Equator, Horizon, MakeTime, Observer } from 'astronomy-engine';
import { describe, expect, test } from 'vitest';

import { demoKit } from '../../../src/core/plan/demo-kit.ts';
import { editSetup } from '../../../src/core/plan/edits.ts';
import type { SetupCaseInput } from '../../../src/core/plan/setup-case.ts';
import { stopTimes, type StopTimes } from '../../../src/core/plan/stop-times.ts';
import { stopLineText, type StopNames } from '../../../src/core/plan/stop-words.ts';
import { lightAt } from '../../../src/core/spot/light-at.ts';
import { instantAtClock } from '../../../src/core/units/civil-time.ts';
import { defined } from '../../support/defined.ts';
import { caseOfMinute, demoMinute, viewOfMinute } from '../../support/demo-minute.ts';

const MIN = 60_000;
const at = (asked: SetupCaseInput, clock: string): number =>
  defined(instantAtClock(asked.shoot.date, clock, 'Europe/Rome'));

function timesOf(
  asked: SetupCaseInput,
  from: string,
  to: string,
  order: 'aperture-first' | 'shutter-first' = 'aperture-first',
): StopTimes {
  const times = stopTimes(asked, { fromMs: at(asked, from), toMs: at(asked, to) }, order);
  if (!times.ok) throw new Error(`expected stop times, found ${JSON.stringify(times.problem)}`);
  return times.value;
}

describe('the stop times of a setup', () => {
  const asked = demoMinute('quartet', '20:20', 'clear');
  const times = timesOf(asked, '20:20', '21:10');

  test('lie within 20 s of a minute scan of the light, straight between its minutes', () => {
    const { scene } = caseOfMinute({ ...asked, instantMs: times.fromMs });
    // The default patch stands on the side away from the sun, which changes it within this hour.
    const scan = new Map<number, number>();
    const evAt = (instantMs: number): number => {
      const known = scan.get(instantMs);
      if (known !== undefined) return known;
      const { patch } = caseOfMinute({ ...asked, instantMs }).light;
      const { patchEv } = defined(lightAt({ ...scene, patch, instantMs }).skyInFrame);
      scan.set(instantMs, patchEv);
      return patchEv;
    };
    const beganEv = evAt(times.fromMs);
    expect(times.lines.length).toBeGreaterThanOrEqual(4);
    let worstMs = 0;
    for (const { atMs, stops } of times.lines) {
      let minuteMs = times.fromMs;
      while (evAt(minuteMs + MIN) > beganEv + stops) minuteMs += MIN;
      const [above, below] = [evAt(minuteMs), evAt(minuteMs + MIN)];
      const scanned = minuteMs + (MIN * (above - beganEv - stops)) / (above - below);
      worstMs = Math.max(worstMs, Math.abs(atMs - scanned));
    }
    console.info(`stop times against a minute scan: ${(worstMs / 1000).toFixed(1)} s at most`);
    expect(worstMs).toBeLessThan(20_000);
  });

  test('begin with what the setup shows at that minute', () => {
    const view = viewOfMinute({ ...asked, instantMs: times.fromMs });
    expect(view.answer.ok && view.answer.value.recipe).toEqual(times.start);
    expect(times.fromMs).toBe(at(asked, '20:20'));
  });

  test('end with the setup', () => {
    const last = defined(times.lines.at(-1));
    expect(last.atMs).toBeLessThanOrEqual(at(asked, '21:10'));
    expect(timesOf(asked, '20:20', '20:40').lines).toEqual(
      times.lines.filter(({ atMs }) => atMs <= at(asked, '20:40')),
    );
  });

  // Explanatory Supplement 1992 (E2), the sun by another library. The sky of a heavy overcast keeps
  // one shape the same round the horizon, so every patch of it falls as its illuminance does.
  test('from −4° down come within 20 s of the published polynomial under an even sky', () => {
    const even = demoMinute(
      'quartet',
      '20:50',
      'heavy-overcast',
      editSetup('quartet', { holdStops: 4 }),
    );
    const { scene } = caseOfMinute(even);
    const place = new Observer(scene.place.latitudeDeg, scene.place.longitudeDeg, 0);
    const sunDeg = (ms: number): number => {
      const time = MakeTime(new Date(ms));
      const { ra, dec } = Equator(Body.Sun, time, place, true, true);
      return Horizon(time, place, ra, dec).altitude;
    };
    let fromMs = at(even, '20:30');
    while (sunDeg(fromMs) > -4) fromMs += 1000;
    const found = stopTimes(even, { fromMs, toMs: fromMs + 14 * MIN }, 'aperture-first');
    if (!found.ok) throw new Error(JSON.stringify(found.problem));
    const ev = (ms: number): number => {
      const x = sunDeg(ms) / 90;
      const log10 =
        sunDeg(ms) >= -5
          ? 2.88 + 21.81 * x - 258.11 * x ** 2 - 858.36 * x ** 3
          : 2.7 + 12.17 * x - 431.69 * x ** 2 - 1899.83 * x ** 3;
      return log10 * Math.log2(10);
    };
    expect(found.value.fromMs).toBe(fromMs);
    expect(found.value.lines.length).toBeGreaterThanOrEqual(3);
    let worstMs = 0;
    for (const { atMs, stops } of found.value.lines) {
      let plainMs = fromMs;
      while (ev(plainMs) > ev(fromMs) + stops) plainMs += 500;
      worstMs = Math.max(worstMs, Math.abs(atMs - plainMs));
    }
    console.info(`stop times against the polynomial: ${(worstMs / 1000).toFixed(1)} s at most`);
    expect(worstMs).toBeLessThan(20_000);
  });

  test('name the limit where nothing more can be changed', () => {
    const { lines } = timesOf(asked, '20:20', '21:40');
    const first = lines.findIndex(({ setting }) => !setting.ok);
    expect(first).toBeGreaterThan(3);
    const stuck = defined(lines[first]).setting;
    expect(!stuck.ok && stuck.problem.problem.kind).toBe('head-too-strong');
    expect(!stuck.ok && stuck.problem.limits).toEqual([
      { kind: 'head-at-lowest', lights: [expect.any(Number)] },
    ]);
  });

  test('of a setup that never works say so, and a span turned round is none', () => {
    const bright = demoMinute('quartet', '12:00', 'clear', editSetup('quartet', { holdStops: 8 }));
    const never = stopTimes(
      bright,
      { fromMs: at(bright, '12:00'), toMs: at(bright, '12:10') },
      'aperture-first',
    );
    expect(!never.ok && never.problem).toMatchObject({
      kind: 'never-works',
      problem: { kind: 'sky-above-reach' },
    });
    const turned = stopTimes(asked, { fromMs: 2, toMs: 1 }, 'aperture-first');
    expect(!turned.ok && turned.problem.kind).toBe('no-time');
    const gone = stopTimes({ ...asked, setupId: 'none' }, { fromMs: 1, toMs: 2 }, 'aperture-first');
    expect(!gone.ok && gone.problem.kind).toBe('gone');
  });

  test('of a setup that begins out of reach begin when it works', () => {
    const { fromMs } = timesOf(asked, '19:00', '20:40');
    expect(fromMs).toBeGreaterThan(at(asked, '19:00'));
    expect(viewOfMinute({ ...asked, instantMs: fromMs }).answer.ok).toBe(true);
    expect(viewOfMinute({ ...asked, instantMs: fromMs - MIN }).answer.ok).toBe(false);
  });

  test('are said in the head’s own scale, with its meter value', () => {
    const head = defined(demoKit().heads['head-600']);
    const names: StopNames = {
      zone: 'Europe/Rome',
      dialStep: 'third',
      lights: ['key', 'fill'].map((name) => ({
        name,
        scale: { kind: 'fraction', stepStops: head.stepStops, minPowerStops: head.minPowerStops },
      })),
    };
    const text = stopLineText(defined(times.lines[0]), names);
    expect(text).toMatch(/^20:\d\d, 1 stop darker: .*key 1\/\d+.* below full\).*meter f\//);
  });
});
