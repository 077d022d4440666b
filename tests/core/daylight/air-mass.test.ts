import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pressureRatio, relativeAirMass } from '../../../src/core/daylight/air-mass.ts';
import { largestError } from '../../support/largest-error.ts';

describe('the path of sunlight through the air follows Kasten and Young 1989', () => {
  const record = largestError('air mass, published formula and points of a library', '', {
    quantity: 'air mass',
    method: 'Kasten & Young 1989',
    comparedWith: 'the published formula and test points of an open solar-energy library',
  });

  // Values of the published formula, and the test points of an
  // open solar-energy library at zenith distance 0, 80 and 89.9.
  test.each([
    { altitudeDeg: 0, airMass: 37.9196 },
    { altitudeDeg: 0.1, airMass: 36.467 },
    { altitudeDeg: 1, airMass: 26.3106 },
    { altitudeDeg: 2, airMass: 19.4332 },
    { altitudeDeg: 3, airMass: 15.1477 },
    { altitudeDeg: 5, airMass: 10.3058 },
    { altitudeDeg: 10, airMass: 5.586 },
    { altitudeDeg: 15, airMass: 3.8129 },
    { altitudeDeg: 20, airMass: 2.9031 },
    { altitudeDeg: 30, airMass: 1.9943 },
    { altitudeDeg: 45, airMass: 1.4126 },
    { altitudeDeg: 60, airMass: 1.154 },
    { altitudeDeg: 90, airMass: 0.9997 },
  ])('$altitudeDeg° is $airMass', ({ altitudeDeg, airMass }) => {
    // The table is rounded to four decimals, the library's points to three.
    expect(record(relativeAirMass(altitudeDeg) - airMass)).toBeLessThan(0.0006);
  });

  test('a higher sun never shines through more air', () => {
    fc.assert(
      fc.property(fc.double({ min: -5, max: 89.8, noNaN: true }), (altitudeDeg) => {
        expect(relativeAirMass(altitudeDeg + 0.1)).toBeLessThanOrEqual(
          relativeAirMass(altitudeDeg),
        );
      }),
    );
  });
});

describe('air pressure follows the standard atmosphere', () => {
  // Test points of an open solar-energy library, Pa.
  test.each([
    { elevationM: 0, pressurePa: 101325.0 },
    { elevationM: 1000, pressurePa: 89874.75 },
    { elevationM: 8000, pressurePa: 35600.5 },
    { elevationM: -100, pressurePa: 102532.07 },
  ])('$elevationM m: $pressurePa Pa', ({ elevationM, pressurePa }) => {
    expect(Math.abs(pressureRatio(elevationM) * 101325 - pressurePa)).toBeLessThan(0.1);
  });
});
