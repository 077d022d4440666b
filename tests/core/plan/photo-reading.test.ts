import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { ev100FromLuminance } from '../../../src/core/exposure/exposure-value.ts';
import { photoEv100, readingOfPhoto } from '../../../src/core/plan/photo-reading.ts';
import { plainPhoto } from '../../support/plain-photo.ts';

describe('a photo’s exposure is a reading of the place', () => {
  // ASA PH2.12-1961, additive system: Av 6 (f/8), Tv 8 (1/256 s), so EV 14 at ISO 100; each
  // doubling of the speed takes one off. Tabled values, exact for exact stops.
  test.each([
    [8, 1 / 256, 100, 14],
    [8, 1 / 256, 400, 12],
    [16, 1 / 128, 100, 15],
    [1, 1, 100, 0],
    [2, 4, 100, 0],
    [Math.SQRT2, 2, 3200, -5],
  ])('f/%d for %d s at ISO %d is EV %d at ISO 100', (fNumber, shutterS, iso, ev100) => {
    expect(photoEv100({ fNumber, shutterS, iso })).toBeCloseTo(ev100, 9);
  });

  // ISO 2720: a meter of K 12.5 sets N²/t = L·S/K; 4096 cd/m² at ISO 100 is EV 15.
  test('it is the EV of the luminance that a reflected-light meter sets it by', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 50_000, noNaN: true }),
        fc.double({ min: 1, max: 22, noNaN: true }),
        fc.double({ min: 50, max: 6400, noNaN: true }),
        (luminanceCdM2, fNumber, iso) => {
          const shutterS = (fNumber ** 2 * 12.5) / (luminanceCdM2 * iso);
          fc.pre(shutterS <= 3600);
          expect(photoEv100({ fNumber, shutterS, iso })).toBeCloseTo(
            ev100FromLuminance(luminanceCdM2),
            9,
          );
        },
      ),
    );
  });

  test('half an exposure is none, and neither is one brighter or darker than any scene', () => {
    for (const missing of ['fNumber', 'shutterS', 'iso'])
      expect(photoEv100({ fNumber: 8, shutterS: 1 / 250, iso: 100, [missing]: null })).toBeNull();
    expect(photoEv100({ fNumber: 128, shutterS: 1e-6, iso: 1 })).toBeNull();
    expect(photoEv100({ fNumber: 0.5, shutterS: 3600, iso: 1e7 })).toBeNull();
  });

  test('the reading keeps when and whither, and says that it comes from a photo', () => {
    const photo = {
      ...plainPhoto,
      fNumber: 8,
      shutterS: 1 / 256,
      iso: 100,
      takenAtMs: 5,
      bearingDeg: 300,
    };
    expect(readingOfPhoto(photo, { photoId: 'p', order: 'n' })).toEqual({
      order: 'n',
      atMs: 5,
      ev100: 14,
      bearingDeg: 300,
      from: 'photo',
      photoId: 'p',
      note: '',
    });
    expect(readingOfPhoto(plainPhoto, { photoId: 'p', order: 'n' })).toBeNull();
  });
});
