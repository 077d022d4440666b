import { describe, expect, test } from 'vitest';

import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import { framingOfPhoto } from '../../../src/core/plan/photo-framing.ts';
import { defined } from '../../support/defined.ts';
import { plainPhoto } from '../../support/plain-photo.ts';

const fullFrame = {
  ...defined(demoShoot().spots['pier']).framing,
  sensorWidthMm: 36,
  sensorHeightMm: 24,
};

/** Of the picture's diagonal, by the tangent rule of any rectilinear lens. */
const diagonalFieldDeg = (focalLengthMm: number, diagonalMm: number): number =>
  (2 * Math.atan(diagonalMm / 2 / focalLengthMm) * 180) / Math.PI;

describe('a framing taken from a photo', () => {
  test('its direction, its orientation, and on a full frame its 35 mm equivalent', () => {
    const photo = { ...plainPhoto, bearingDeg: 300, focalLengthMm: 5.7, focalLength35Mm: 26 };
    expect(framingOfPhoto(photo, fullFrame)).toEqual({
      bearingDeg: 300,
      focalLengthMm: 26,
      orientation: 'landscape',
    });
    expect(framingOfPhoto({ ...photo, widthPx: 1067, heightPx: 1600 }, fullFrame)).toMatchObject({
      orientation: 'portrait',
    });
  });

  test('on a smaller or larger sensor it sees the same diagonal angle', () => {
    for (const [sensorWidthMm, sensorHeightMm] of [
      [23.5, 15.6],
      [17.3, 13],
      [43.8, 32.9],
    ] as const) {
      const framing = { ...fullFrame, sensorWidthMm, sensorHeightMm };
      const { focalLengthMm } = defined(
        framingOfPhoto({ ...plainPhoto, focalLength35Mm: 35 }, framing),
      );
      // A focal length is kept to 0.1 mm: 0.2° at 17 mm.
      const diagonalMm = Math.hypot(sensorWidthMm, sensorHeightMm);
      const offDeg =
        diagonalFieldDeg(defined(focalLengthMm), diagonalMm) - diagonalFieldDeg(35, 43.267);
      expect(Math.abs(offDeg)).toBeLessThan(0.2);
    }
  });

  test('without an equivalent the focal length is taken as it was', () => {
    expect(framingOfPhoto({ ...plainPhoto, focalLengthMm: 50 }, fullFrame)).toMatchObject({
      focalLengthMm: 50,
    });
  });

  test('what the photo does not say stays as it is', () => {
    expect(framingOfPhoto({ ...plainPhoto, bearingDeg: 12 }, fullFrame)).toEqual({
      bearingDeg: 12,
      orientation: 'landscape',
    });
    expect(framingOfPhoto(plainPhoto, fullFrame)).toBeNull();
    expect(framingOfPhoto({ ...plainPhoto, focalLengthMm: 2.2 }, fullFrame)).toBeNull();
  });
});
