import { describe, expect, test } from 'vitest';
import {
  ev100FromDomeIlluminance,
  ev100FromIlluminance,
  ev100FromLuminance,
  luminanceFromEv100,
} from '../../../src/core/exposure/exposure-value.ts';
import { largestError } from '../../support/largest-error.ts';

describe('EV at ISO 100, luminance and illuminance go together as ISO 2720 says', () => {
  const record = largestError('EV, ISO 2720', 'stop', {
    quantity: 'EV of a luminance or illuminance',
    method: 'ISO 2720, K 12.5, C 250 flat and 330 dome',
    comparedWith: 'the standard’s formula, EV −6 to 16, six figures',
  });
  // N²/t = L S/K = E S/C with K 12.5, C 250 flat and 330 dome, evaluated to six figures.
  test.each([
    { ev: -6, cdM2: 0.00195313, flatLux: 0.0390625, domeLux: 0.0515625 },
    { ev: -3, cdM2: 0.015625, flatLux: 0.3125, domeLux: 0.4125 },
    { ev: 0, cdM2: 0.125, flatLux: 2.5, domeLux: 3.3 },
    { ev: 5, cdM2: 4, flatLux: 80, domeLux: 105.6 },
    { ev: 10, cdM2: 128, flatLux: 2560, domeLux: 3379.2 },
    { ev: 12, cdM2: 512, flatLux: 10240, domeLux: 13516.8 },
    { ev: 15, cdM2: 4096, flatLux: 81920, domeLux: 108134.4 },
    { ev: 16, cdM2: 8192, flatLux: 163840, domeLux: 216268.8 },
  ])('EV $ev is $cdM2 cd/m² and $flatLux lx', ({ ev, cdM2, flatLux, domeLux }) => {
    // The table has six figures: 1e-5 stop.
    expect(record(ev100FromLuminance(cdM2) - ev)).toBeLessThan(1e-5);
    expect(record(ev100FromIlluminance(flatLux) - ev)).toBeLessThan(1e-5);
    expect(record(ev100FromDomeIlluminance(domeLux) - ev)).toBeLessThan(1e-5);
    expect(Math.abs(luminanceFromEv100(ev) / cdM2 - 1)).toBeLessThan(1e-5);
  });

  // A published list of luminances in an encyclopaedia's orders of magnitude: cloudy sky 2,
  // scene in sun 5, clear sky 7, sunlit cloud 10 kcd/m².
  test.each([
    { cdM2: 2000, ev: 13.97 },
    { cdM2: 5000, ev: 15.29 },
    { cdM2: 7000, ev: 15.77 },
    { cdM2: 10000, ev: 16.29 },
  ])('a sky of $cdM2 cd/m² is EV $ev', ({ cdM2, ev }) => {
    expect(Math.abs(ev100FromLuminance(cdM2) - ev)).toBeLessThan(0.03);
  });

  test('no light is minus infinity', () => {
    expect(ev100FromLuminance(0)).toBe(Number.NEGATIVE_INFINITY);
  });
});
