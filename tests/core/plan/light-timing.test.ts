import { describe, expect, test } from 'vitest';

import { demoKit } from '../../../src/core/plan/demo-kit.ts';
import type { Head } from '../../../src/core/plan/kit.ts';
import { lightTiming } from '../../../src/core/plan/light-timing.ts';
import type { Motion } from '../../../src/core/plan/setup-schema.ts';
import { viewOfMinute, demoMinute } from '../../support/demo-minute.ts';
import { defined } from '../../support/defined.ts';

const view = viewOfMinute(demoMinute('viola', '18:20', 'clear'));
const head = (changes: Partial<Head>): Head => ({
  ...defined(demoKit().heads['head-600']),
  ...changes,
});

const shot = (changes: Partial<Parameters<typeof lightTiming>[0]>, motion: Motion = 'walking') =>
  lightTiming({
    head: head({ flashDurationS: 1 / 200, flashDurationLowestS: 1 / 20_000 }),
    powerStops: 0,
    shutterS: 1 / 250,
    syncShutterS: 1 / 250,
    setup: { motion },
    framing: {
      ...view.framing,
      focalLengthMm: 85,
      cameraDistanceM: 3,
      sensorWidthMm: 36,
      sensorHeightMm: 24,
    },
    ...changes,
  });

describe('a light against shutter and movement', () => {
  test('1/200 s at full power behind 1/250 loses a quarter of a stop, at the lowest power nothing', () => {
    // −log2(1 − 10^(−200/250)); a tail cut to 1/20000 s is over long before.
    expect(shot({}).clippedStops).toBeCloseTo(0.249, 3);
    expect(shot({ powerStops: -8 }).clippedStops).toBeLessThan(1e-6);
    expect(shot({}).control).toBe('tail-cut');
  });

  test('walking across at 3 m through 85 mm smears 1.4 circles in a thousandth', () => {
    // 1.4 mm of way × 85/2915 over 43.27/1500 mm.
    const timing = shot({ head: head({ flashDurationS: 1 / 1000 }) });
    expect(timing.blurCircles).toBeCloseTo(
      (1.4 * 85) / (3000 - 85) / (Math.hypot(36, 24) / 1500),
      6,
    );
  });

  test('less power of a tail-cut head freezes more', () => {
    const full = defined(shot({}).blurCircles ?? undefined);
    const low = defined(shot({ powerStops: -4 }).blurCircles ?? undefined);
    // The mean proportional of 1/200 and 1/20000 s is 1/2000; at full the shutter ends it at 1/250.
    expect(low).toBeCloseTo(full / 8, 9);
  });

  test('in high-speed sync the shutter freezes, not the flash, and nothing is cut', () => {
    const timing = shot({ shutterS: 1 / 1000 });
    expect(timing.highSpeedSync).toBe(true);
    expect(timing.clippedStops).toBe(0);
    expect(timing.blurCircles).toBeCloseTo(
      (1.4 * 85) / (3000 - 85) / (Math.hypot(36, 24) / 1500),
      6,
    );
  });

  test('a head of unknown duration gives no figure', () => {
    const timing = shot({ head: head({ flashDurationS: null, flashDurationLowestS: null }) });
    expect(timing).toMatchObject({ flashDurationS: null, clippedStops: null, blurCircles: null });
  });
});
