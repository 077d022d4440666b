import { describe, expect, test } from 'vitest';

import { sharpRows } from '../../../src/core/plan/sharp-rows.ts';
import type { ShootFraming } from '../../../src/core/plan/spot-schema.ts';

const framing: ShootFraming = {
  bearingDeg: 0,
  tiltDeg: 0,
  focalLengthMm: 85,
  sensorWidthMm: 36,
  sensorHeightMm: 24,
  orientation: 'landscape',
  cameraDistanceM: 5,
  cameraHeightM: 1.6,
};
const rows = { people: 9, spacingM: 0.7, faceHeightM: 1.65, rows: 3, rowSpacingM: 0.8 };

/** Textbook form (Ray, Applied Photographic Optics): circle of a 1500th of the diagonal. */
const farM = (fNumber: number, focusM: number): number => {
  const hyperfocalM = 0.085 ** 2 / (fNumber * (Math.hypot(0.036, 0.024) / 1500)) + 0.085;
  return (focusM * (hyperfocalM - 0.085)) / (hyperfocalM - focusM);
};

describe('whether the last row is sharp', () => {
  test('three rows 0.8 m apart with 85 mm at 5 m: wide open the last stands outside, by how much', () => {
    const found = sharpRows(framing, rows, { fNumber: 2, maxFNumber: 22 });
    expect(found.lastRowM).toBeCloseTo(6.6, 12);
    expect(found.outsideM).toBeCloseTo(6.6 - farM(2, 5), 6);
  });

  test('the aperture named covers it, a third stop wider does not', () => {
    const { coveredFromFNumber, between } = sharpRows(framing, rows, {
      fNumber: 2,
      maxFNumber: 22,
    });
    if (coveredFromFNumber === null || between === null) throw new Error('expected apertures');
    expect(farM(coveredFromFNumber, 5)).toBeGreaterThanOrEqual(6.6);
    expect(farM(coveredFromFNumber / 2 ** (1 / 6), 5)).toBeLessThan(6.6);
    expect(sharpRows(framing, rows, { fNumber: coveredFromFNumber, maxFNumber: 22 }).outsideM).toBe(
      0,
    );
    // Between the rows a wider one will do: at the harmonic mean both ends are as far out of it.
    expect(between.focusM).toBeCloseTo(2 / (1 / 5 + 1 / 6.6), 9);
    expect(between.fNumber).toBeLessThan(coveredFromFNumber);
    expect(farM(between.fNumber, between.focusM)).toBeGreaterThanOrEqual(6.6);
  });

  test('a lens that does not stop down so far has no such aperture', () => {
    const found = sharpRows(framing, rows, { fNumber: 2, maxFNumber: 4 });
    expect(found.coveredFromFNumber).toBeNull();
  });

  test('one row is always where the focus is', () => {
    expect(
      sharpRows(framing, { ...rows, rows: 1 }, { fNumber: 1.2, maxFNumber: 16 }),
    ).toMatchObject({
      outsideM: 0,
      coveredFromFNumber: null,
    });
  });
});
