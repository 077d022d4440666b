import { describe, expect, test } from 'vitest';

import { demoKit } from '../../../src/core/plan/demo-kit.ts';
import { lightPace, slowestPace } from '../../../src/core/plan/light-pace.ts';
import { defined } from '../../support/defined.ts';

const head = {
  ...defined(demoKit().heads['head-600']),
  recycleS: 2,
  popsPerCharge: 300,
  burstPops: 20,
  burstRestS: 60,
};

describe('the pace of a light', () => {
  test('half power: ready in half the time, twice the pops, twice as many in a row', () => {
    expect(lightPace({ lightId: 'key', head, powerStops: -1 }, 1)).toEqual({
      lightId: 'key',
      recycleS: 1,
      popsPerCharge: 600,
      popsBeforeRest: 40,
      restS: 60,
      // 40 pops in 40 s, then 60 s of rest.
      framesPerMinute: expect.closeTo(24, 9),
    });
  });

  test('the cold takes pops, not recycling', () => {
    const cold = lightPace({ lightId: 'key', head, powerStops: -1 }, 0.65);
    expect(cold.popsPerCharge).toBe(390);
    expect(cold.recycleS).toBe(1);
  });

  test('all fire together: the slowest sets the pace', () => {
    const key = lightPace({ lightId: 'key', head, powerStops: 0 }, 1);
    const fill = lightPace({ lightId: 'fill', head, powerStops: -3 }, 1);
    expect(slowestPace([fill, key])?.lightId).toBe('key');
    expect(slowestPace([])).toBeNull();
  });
});
