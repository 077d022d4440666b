import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { editLight, editSetup, together } from '../../../src/core/plan/edits.ts';
import { planSketch, standAt } from '../../../src/core/plan/plan-sketch.ts';
import { standPosition } from '../../../src/core/plan/row-of-faces.ts';
import { defined } from '../../support/defined.ts';
import { demoMinute, viewOfMinute } from '../../support/demo-minute.ts';

const quartet = viewOfMinute(demoMinute('quartet', '20:00', 'broken-cloud'));

describe('a setup from above, to scale', () => {
  const sketch = planSketch(quartet);

  test('the key at 4.2 m and 35° stands to the camera’s right, before the faces', () => {
    const key = defined(sketch.lights.find(({ role }) => role === 'key'));
    // 2.3 m high over faces of 1.65 m: √(4.2² − 0.65²) = 4.149 m on the ground; sin and cos of 35°.
    expect(key.rightM).toBeCloseTo(4.149 * Math.sin((35 * Math.PI) / 180), 2);
    expect(key.towardsCameraM).toBeCloseTo(4.149 * Math.cos((35 * Math.PI) / 180), 2);
    expect(key.widthM).toBe(0.18);
  });

  test('four faces 0.7 m apart, the one nearer to the key brighter', () => {
    expect(sketch.faces.map(({ rightM }) => Number(rightM.toFixed(2)))).toEqual([
      -1.05, -0.35, 0.35, 1.05,
    ]);
    const stops = sketch.faces.map((face) => face.stops);
    expect(stops).toEqual(stops.toSorted((one, other) => one - other));
    // Inverse square by hand, to the right end: the lamp at (2.38, 3.40, 0.65).
    const [toMiddle, toEnd] = [0, 1.05].map((x) => (2.38 - x) ** 2 + 3.4 ** 2 + 0.65 ** 2);
    expect(stops[3]).toBeCloseTo(Math.log2((toMiddle ?? NaN) / (toEnd ?? NaN)), 1);
  });

  test('a 35 mm lens on 36 mm sees 5.25 m at 5.1 m', () => {
    expect(2 * sketch.halfFieldM).toBeCloseTo((5.1 * 36) / 35, 2);
  });

  test('a light that stands in the picture says so', () => {
    const inside = viewOfMinute(
      demoMinute(
        'quartet',
        '20:00',
        'broken-cloud',
        together(
          editLight('quartet', 'key', { angleDeg: 175, distanceM: 2 }),
          editSetup('quartet', {}),
        ),
      ),
    );
    expect(planSketch(inside).lights.find(({ role }) => role === 'key')?.isInFrame).toBe(true);
  });
});

describe('a light put down with the pointer', () => {
  test('comes to stand where it was put, to the steps of a tape: 5 cm and a degree', () =>
    fc.assert(
      fc.property(
        fc.double({ min: -8, max: 8, noNaN: true }),
        fc.double({ min: -8, max: 8, noNaN: true }),
        (rightM, towardsCameraM) => {
          fc.pre(Math.hypot(rightM, towardsCameraM) > 1);
          const stand = standAt({ rightM, towardsCameraM }, 2.3, { faceHeightM: 1.65 });
          const there = standPosition({ ...stand, heightM: 2.3 }, { faceHeightM: 1.65 });
          const awayM = Math.hypot(rightM, towardsCameraM);
          // Half a step of the tape, and half a degree of the way round.
          const within = 0.04 + (awayM * 0.5 * Math.PI) / 180;
          expect(Math.abs(there.rightM - rightM)).toBeLessThan(within);
          expect(Math.abs(there.towardsCameraM - towardsCameraM)).toBeLessThan(within);
        },
      ),
    ));
});
