import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatPower, roundToPowerDial } from '../../../src/core/strobe/power-scale.ts';

const tenths = { stepStops: 0.1, minPowerStops: -8 };

describe('a power in the head’s own scale', () => {
  test.each([
    { powerStops: 0, dial: '1/1', below: 'full power' },
    { powerStops: -0.8, dial: '1/2 + 0.2', below: '0.8 below full' },
    { powerStops: -1, dial: '1/2', below: '1.0 below full' },
    { powerStops: -0.3, dial: '1/2 + 0.7', below: '0.3 below full' },
    { powerStops: -3.666667, dial: '1/16 + 0.3', below: '3.7 below full' },
    { powerStops: -8, dial: '1/256', below: '8.0 below full' },
  ])('$powerStops as a fraction: $dial, $below', ({ powerStops, dial, below }) => {
    expect(formatPower(powerStops, { kind: 'fraction', ...tenths })).toEqual({ dial, below });
  });

  test('stops below full, numbered stops, percent and watt-seconds', () => {
    expect(formatPower(-0.8, { kind: 'stops-below-full', ...tenths }).dial).toBe('full − 0.8');
    expect(formatPower(0, { kind: 'stops-below-full', ...tenths }).dial).toBe('full');
    expect(formatPower(-0.8, { kind: 'numbered-stops', fullPowerNumber: 10, ...tenths }).dial).toBe(
      '9.2',
    );
    expect(formatPower(-8, { kind: 'numbered-stops', fullPowerNumber: 10, ...tenths }).dial).toBe(
      '2.0',
    );
    expect(formatPower(-1, { kind: 'percent', ...tenths }).dial).toBe('50 %');
    expect(formatPower(-2, { kind: 'watt-seconds', energyWs: 600, ...tenths }).dial).toBe('150 Ws');
  });

  test('an energy dial from 13 to 400 Ws spans 4.9 stops (a question-and-answer page)', () => {
    const scale = { kind: 'watt-seconds', energyWs: 400, ...tenths } as const;
    expect(formatPower(-4.94, scale).dial).toBe('13 Ws');
  });
});

describe('rounding to the dial', () => {
  test('lands on a step, within half of one, never beyond full or the lowest power', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -12, max: 2, noNaN: true }),
        fc.constantFrom(0.1, 1 / 3, 1 / 2, 1),
        fc.constantFrom(-5, -7, -8, -9),
        (powerStops, stepStops, minPowerStops) => {
          const dialled = roundToPowerDial(powerStops, { stepStops, minPowerStops });
          expect(dialled).toBeLessThanOrEqual(0);
          expect(dialled).toBeGreaterThanOrEqual(minPowerStops);
          const wanted = Math.min(0, Math.max(minPowerStops, powerStops));
          expect(Math.abs(dialled - wanted)).toBeLessThanOrEqual(stepStops / 2 + 1e-5);
          const steps = dialled / stepStops;
          expect(dialled === minPowerStops || Math.abs(steps - Math.round(steps)) < 1e-4).toBe(
            true,
          );
        },
      ),
    );
  });
});
