import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { skylineAltitude, type Skyline } from '../../../src/core/skyline/skyline.ts';
import { withRuns } from '../../../src/core/skyline/traced-skyline.ts';

const at = (azimuthDeg: number, altitudeDeg: number): Skyline[number] => ({
  azimuthDeg,
  altitudeDeg,
});
const ridge: Skyline = [at(350, 4), at(365, 6), at(380, 5)];

describe('a run laid into a trace', () => {
  test('on an empty trace the rest of the round stays flat at 0', () => {
    const altitude = skylineAltitude(withRuns([], [ridge]));
    expect(altitude(350)).toBe(4);
    expect(altitude(5)).toBe(6);
    expect(altitude(20)).toBe(5);
    for (const azimuthDeg of [21, 90, 180, 270, 349]) expect(altitude(azimuthDeg)).toBe(0);
  });

  test('replaces what stood within it and leaves what stood beside it', () => {
    const before = [at(355, 12), at(90, 3), at(180, 9), at(300, 3)];
    const beforeAltitude = skylineAltitude(before);
    const altitude = skylineAltitude(withRuns(before, [ridge]));
    // Half-way between the run’s own points.
    expect(altitude(357.5)).toBe(5);
    for (const azimuthDeg of [25, 90, 135, 180, 250, 300, 345])
      // Points are kept to a hundredth of a degree.
      expect(Math.abs(altitude(azimuthDeg) - beforeAltitude(azimuthDeg))).toBeLessThan(0.02);
  });

  test('a run all round leaves nothing of what was', () => {
    const round = Array.from({ length: 361 }, (_, azimuthDeg) => at(azimuthDeg, 2));
    const altitude = skylineAltitude(withRuns([at(100, 40)], [round]));
    for (let azimuthDeg = 0; azimuthDeg < 360; azimuthDeg += 0.5)
      expect(altitude(azimuthDeg)).toBe(2);
  });

  test('no run changes nothing', () => expect(withRuns(ridge, [])).toEqual(ridge));

  test('within a run it is the run, a degree beside it what was, wherever it lies', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 359.9, noNaN: true }),
        fc.integer({ min: 1, max: 300 }),
        fc.array(
          fc.record({
            azimuthDeg: fc.double({ min: 0, max: 359.9, noNaN: true }),
            altitudeDeg: fc.double({ min: 0, max: 30, noNaN: true }),
          }),
          { maxLength: 10 },
        ),
        (fromDeg, wideDeg, before) => {
          const run = [at(fromDeg, 10), at(fromDeg + wideDeg / 2, 20), at(fromDeg + wideDeg, 10)];
          const altitude = skylineAltitude(withRuns(before, [run]));
          const was = skylineAltitude(before);
          // A hundredth of a degree of azimuth on a slope of up to 20° in half a degree.
          expect(Math.abs(altitude(fromDeg + wideDeg / 4) - 15)).toBeLessThan(0.5);
          const quiet = before.every(
            ({ azimuthDeg }) =>
              Math.abs(((azimuthDeg - fromDeg - wideDeg + 540) % 360) - 180) > 3 &&
              Math.abs(((azimuthDeg - fromDeg + 540) % 360) - 180) > 3,
          );
          if (!quiet || wideDeg > 350) return;
          for (const besideDeg of [fromDeg - 1, fromDeg + wideDeg + 1])
            expect(Math.abs(altitude(besideDeg) - was(besideDeg))).toBeLessThan(1);
        },
      ),
    );
  });
});
