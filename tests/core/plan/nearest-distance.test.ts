import fc from 'fast-check';
import { expect, test } from 'vitest';

import { lightInFrame } from '../../../src/core/plan/light-in-frame.ts';
import { nearestDistanceM } from '../../../src/core/plan/nearest-distance.ts';
import { faceSpread } from '../../../src/core/plan/row-of-faces.ts';
import type { ShootFraming } from '../../../src/core/plan/spot-schema.ts';

const span = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });

const cases = fc.record({
  stand: fc.record({
    distanceM: span(0.6, 9),
    angleDeg: span(-180, 180),
    heightM: span(0.5, 4),
    sourceRadiusM: span(0, 0.7),
  }),
  row: fc.record({
    people: fc.integer({ min: 1, max: 6 }),
    spacingM: span(0.4, 1),
    faceHeightM: span(1.2, 1.8),
    spreadLimitStops: span(0.1, 1.5),
  }),
  focalLengthMm: span(20, 135),
  cameraDistanceM: span(1.5, 9),
});

test('a light moved to its nearest place is neither in the picture nor past the spread, and a step nearer it would be', () => {
  fc.assert(
    fc.property(cases, ({ stand, row, focalLengthMm, cameraDistanceM }) => {
      const framing: ShootFraming = {
        bearingDeg: 80,
        tiltDeg: 5,
        focalLengthMm,
        sensorWidthMm: 36,
        sensorHeightMm: 24,
        orientation: 'landscape',
        cameraDistanceM,
        cameraHeightM: 1.5,
      };
      const breaks = (distanceM: number): boolean => {
        const moved = { ...stand, distanceM };
        return (
          distanceM < 0.5 ||
          lightInFrame(moved, row, framing) ||
          faceSpread(moved, row).spreadStops > row.spreadLimitStops
        );
      };
      const nearestM = nearestDistanceM(stand, row, framing);
      expect(nearestM).toBeLessThanOrEqual(stand.distanceM);
      const stepsTaken = Math.round((stand.distanceM - nearestM) / 0.05);
      for (let steps = 1; steps <= stepsTaken; steps += 1)
        expect(breaks(stand.distanceM - steps * 0.05)).toBe(false);
      expect(breaks(stand.distanceM - (stepsTaken + 1) * 0.05)).toBe(true);
    }),
    { numRuns: 400 },
  );
});
