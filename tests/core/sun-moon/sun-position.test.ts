import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sunPosition } from '../../../src/core/sun-moon/sun-position.ts';
import { SUN_AND_MOON_POSITIONS } from '../../reference/sun-and-moon-positions.ts';
import { evenPlace, evenSpread } from '../../support/even-spread.ts';
import { largestError } from '../../support/largest-error.ts';
import { referenceDirection, separationDeg } from '../../support/reference-sky.ts';

/** What suncalc's series is good for (measured against JPL DE405: 0.014°). */
const SERIES_TOLERANCE_DEG = 0.015;

describe('the sun stands where published positions have it', () => {
  const recordExample = largestError('sun, NREL worked example', '°', {
    quantity: 'direction of the sun',
    method: 'suncalc 2, its refraction taken off',
    comparedWith: 'worked example of NREL/TP-560-34302, table A5.1',
  });
  test('in the worked example of NREL/TP-560-34302, table A5.1', () => {
    const sun = sunPosition(Date.parse('2003-10-17T19:30:30Z'), {
      latitudeDeg: 39.742476,
      longitudeDeg: -105.1786,
      elevationM: 1830.14,
    });
    expect(recordExample(sun.azimuthDeg - 194.340241)).toBeLessThan(0.005);
    expect(recordExample(sun.trueAltitudeDeg - 39.872046)).toBeLessThan(0.005);
  });

  const record = largestError('sun, published positions', '°', {
    quantity: 'direction of the sun',
    method: 'suncalc 2, its refraction taken off',
    comparedWith: 'positions on which astronomy-engine, astropy and PyEphem agree',
  });
  test.each(SUN_AND_MOON_POSITIONS)('at $at', ({ at, place, sun: [azimuthDeg, altitudeDeg] }) => {
    const [latitudeDeg, longitudeDeg] = place;
    const sun = sunPosition(Date.parse(at), { latitudeDeg, longitudeDeg });
    const ours = { azimuthDeg: sun.azimuthDeg, altitudeDeg: sun.trueAltitudeDeg };
    expect(record(separationDeg(ours, { azimuthDeg, altitudeDeg }))).toBeLessThan(
      SERIES_TOLERANCE_DEG,
    );
  });
});

describe('the sun agrees with astronomy-engine', () => {
  const record = largestError('sun, astronomy-engine', '°', {
    quantity: 'direction of the sun',
    method: 'suncalc 2, its refraction taken off',
    comparedWith: 'astronomy-engine, 3000 instants from 2000 to 2050',
  });
  test('at 3000 instants from 2000 to 2050 all over the globe', () => {
    let sumDeg = 0;
    for (let n = 0; n < 3000; n += 1) {
      const place = evenPlace(n, { southDeg: -90, northDeg: 90 });
      const instantMs = Date.UTC(2000, 0, 1) + evenSpread(n, 0) * 50 * 365.25 * 86_400_000;
      const sun = sunPosition(instantMs, place);
      const expected = referenceDirection('Sun', instantMs, place);
      const ours = { azimuthDeg: sun.azimuthDeg, altitudeDeg: sun.trueAltitudeDeg };
      expect(record(separationDeg(ours, expected))).toBeLessThan(SERIES_TOLERANCE_DEG);
      sumDeg += ours.altitudeDeg - expected.altitudeDeg;
    }
    // No side is favoured: leaving out the sun's parallax would cost 0.0019° on average.
    expect(Math.abs(sumDeg / 3000)).toBeLessThan(0.0005);
  });
});

const instant = fc.integer({ min: Date.UTC(1950, 0, 1), max: Date.UTC(2050, 0, 1) });
const place = fc.record({
  latitudeDeg: fc.double({ min: -90, max: 90, noNaN: true }),
  longitudeDeg: fc.double({ min: -180, max: 180, noNaN: true }),
});

test('azimuth is 0 to 360, and refraction only ever lifts the sun, by up to 0.65°', () => {
  fc.assert(
    fc.property(instant, place, (instantMs, where) => {
      const sun = sunPosition(instantMs, where);
      expect(sun.azimuthDeg).toBeGreaterThanOrEqual(0);
      expect(sun.azimuthDeg).toBeLessThan(360);
      const liftDeg = sun.apparentAltitudeDeg - sun.trueAltitudeDeg;
      expect(liftDeg).toBeGreaterThanOrEqual(-0.0001);
      expect(liftDeg).toBeLessThan(0.65);
    }),
  );
});

test('the true altitude has no step where the library behind it changes its refraction, at the horizon', () => {
  const trieste = { latitudeDeg: 45.65, longitudeDeg: 13.76 };
  const altitudesDeg = Array.from(
    { length: 1200 },
    (_, second) => sunPosition(Date.UTC(2027, 4, 14, 18, 15, second), trieste).trueAltitudeDeg,
  );
  expect(altitudesDeg[0]).toBeGreaterThan(0);
  expect(altitudesDeg.at(-1)).toBeLessThan(-1);
  for (const [index, altitudeDeg] of altitudesDeg.slice(1).entries()) {
    const fallDeg = (altitudesDeg[index] ?? Number.NaN) - altitudeDeg;
    // The sun sinks by at most 15″ of arc a second of time, 0.0042°, and here by about two thirds.
    expect(fallDeg).toBeGreaterThan(0.002);
    expect(fallDeg).toBeLessThan(0.0042);
  }
});
