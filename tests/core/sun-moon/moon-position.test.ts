import { describe, expect, test } from 'vitest';
import { moonPosition } from '../../../src/core/sun-moon/moon-position.ts';
import { SUN_AND_MOON_POSITIONS } from '../../reference/sun-and-moon-positions.ts';
import { evenPlace, evenSpread } from '../../support/even-spread.ts';
import { largestError } from '../../support/largest-error.ts';
import {
  referenceDirection,
  referenceMoonPhase,
  separationDeg,
} from '../../support/reference-sky.ts';

/** Series 0.005°, round earth under the parallax 0.006°, ΔT a few thousandths. */
const MOON_TOLERANCE_DEG = 0.02;

describe('the moon stands where published positions have it', () => {
  const record = largestError('moon, published positions', '°', {
    quantity: 'direction of the moon',
    method: 'suncalc 2, seen from the place, its refraction taken off',
    comparedWith: 'positions on which astronomy-engine, astropy and PyEphem agree',
  });
  test.each(SUN_AND_MOON_POSITIONS)(
    'at $at',
    ({ at, place, moon: [azimuthDeg, altitudeDeg], lit }) => {
      const [latitudeDeg, longitudeDeg] = place;
      const moon = moonPosition(Date.parse(at), { latitudeDeg, longitudeDeg });
      const ours = { azimuthDeg: moon.azimuthDeg, altitudeDeg: moon.trueAltitudeDeg };
      expect(record(separationDeg(ours, { azimuthDeg, altitudeDeg }))).toBeLessThan(
        MOON_TOLERANCE_DEG,
      );
      // Rounded to 0.001; seen from the place the phase differs by up to 1°, 0.009 of the disc.
      expect(Math.abs(moon.illuminatedFraction - lit)).toBeLessThan(0.0095);
    },
  );
});

test('Meeus’ examples 47.a and 48.a: distance, parallax, lit share and phase angle on 1992-04-12', () => {
  // 0 h dynamical time; ΔT 58.8 s. Distance from the earth's centre, through the parallax.
  const instantMs = Date.UTC(1992, 3, 12) - 58_800;
  const moon = moonPosition(instantMs, { latitudeDeg: 90, longitudeDeg: 0 });
  expect(Math.abs(moon.horizontalParallaxDeg - 0.99199)).toBeLessThan(0.00002);
  const fromCentreKm = 6378.14 / Math.sin((moon.horizontalParallaxDeg * Math.PI) / 180);
  expect(Math.abs(fromCentreKm - 368_409.7)).toBeLessThan(5);
  expect(Math.abs(moon.phaseAngleDeg - 69.0756)).toBeLessThan(0.02);
  expect(Math.abs(moon.illuminatedFraction - 0.6786)).toBeLessThan(0.0003);
});

describe('the moon agrees with astronomy-engine', () => {
  const record = largestError('moon, astronomy-engine', '°', {
    quantity: 'direction of the moon',
    method: 'suncalc 2, seen from the place, its refraction taken off',
    comparedWith: 'astronomy-engine, 2000 instants from 2000 to 2050',
  });
  test('at 2000 instants from 2000 to 2050 all over the globe', () => {
    const worst = { distanceKm: 0, litShare: 0, phaseAngleDeg: 0 };
    for (let n = 0; n < 2000; n += 1) {
      const place = evenPlace(n, { southDeg: -90, northDeg: 90 });
      const instantMs = Date.UTC(2000, 0, 1) + evenSpread(n, 0) * 50 * 365.25 * 86_400_000;
      const moon = moonPosition(instantMs, place);
      const direction = referenceDirection('Moon', instantMs, place);
      const phase = referenceMoonPhase(instantMs);
      const ours = { azimuthDeg: moon.azimuthDeg, altitudeDeg: moon.trueAltitudeDeg };
      expect(record(separationDeg(ours, direction))).toBeLessThan(MOON_TOLERANCE_DEG);
      worst.distanceKm = Math.max(
        worst.distanceKm,
        Math.abs(moon.distanceKm - direction.distanceKm),
      );
      worst.litShare = Math.max(
        worst.litShare,
        Math.abs(moon.illuminatedFraction - phase.illuminatedFraction),
      );
      worst.phaseAngleDeg = Math.max(
        worst.phaseAngleDeg,
        Math.abs(moon.phaseAngleDeg - phase.phaseAngleDeg),
      );
    }
    console.log('moon, astronomy-engine: largest errors in 2000', worst);
    // The earth's radius is taken as that of the equator everywhere: up to 21 km.
    expect(worst.distanceKm).toBeLessThan(60);
    expect(worst.litShare).toBeLessThan(0.0005);
    expect(worst.phaseAngleDeg).toBeLessThan(0.05);
  });
});
