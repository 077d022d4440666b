import { describe, expect, test } from 'vitest';

import { correlatedTemperature } from '../../../src/core/colour/correlated-temperature.ts';
import { clearSkyColour, skyColour } from '../../../src/core/sky/sky-colour.ts';

const sunAtZenithDistance = (
  zenithDeg: number,
): { azimuthDeg: number; apparentAltitudeDeg: number } => ({
  azimuthDeg: 0,
  apparentAltitudeDeg: 90 - zenithDeg,
});

describe('the colour of the clear sky is the published model’s', () => {
  // Preetham, Shirley, Smits 1999, appendix A.2, evaluated from the printed coefficients: 5 digits.
  test.each([
    [2, 30, 0.25142, 0.25592],
    [2.5, 60, 0.24147, 0.24733],
    [3, 30, 0.25343, 0.25979],
    [3, 60, 0.24493, 0.25257],
    [3, 75, 0.25601, 0.26866],
    [3, 85, 0.27234, 0.29046],
    [4, 45, 0.25067, 0.25935],
    [6, 60, 0.26547, 0.28179],
  ])('zenith at turbidity %d, sun %d° from it', (turbidity, sunZenithDeg, x, y) => {
    const zenith = clearSkyColour(
      turbidity,
      sunAtZenithDistance(sunZenithDeg),
    )({
      azimuthDeg: 0,
      altitudeDeg: 90,
    });
    expect(Math.abs(zenith.x - x)).toBeLessThan(1e-5);
    expect(Math.abs(zenith.y - y)).toBeLessThan(1e-5);
  });

  // The same, by zenith distance and azimuth from the sun; turbidity 3, sun at 60°: 4 digits.
  test.each([
    [60, 0, 0.3017, 0.3168],
    [30, 0, 0.2635, 0.2693],
    [60, 90, 0.2547, 0.2675],
    [60, 180, 0.2493, 0.265],
    [85, 0, 0.3452, 0.3478],
    [85, 90, 0.3094, 0.3194],
    [85, 180, 0.3086, 0.3205],
  ])('%d° from the zenith, %d° from the sun’s azimuth', (zenithDeg, azimuthDeg, x, y) => {
    const seen = clearSkyColour(
      3,
      sunAtZenithDistance(60),
    )({
      azimuthDeg,
      altitudeDeg: 90 - zenithDeg,
    });
    expect(Math.abs(seen.x - x)).toBeLessThan(1e-4);
    expect(Math.abs(seen.y - y)).toBeLessThan(1e-4);
  });
});

describe('the sky of a condition', () => {
  const sun = { azimuthDeg: 270, apparentAltitudeDeg: 15 };
  const away = { azimuthDeg: 90, altitudeDeg: 40 };

  test('a clear sky away from the sun is bluer than 9000 K; published bands begin there', () => {
    expect(correlatedTemperature(skyColour('clear', sun)(away)).kelvin).toBeGreaterThan(9000);
  });

  test('an overcast sky is one white, inside the published 5900 to 7500 K', () => {
    const overcast = skyColour('heavy-overcast', sun);
    expect(overcast(away)).toEqual(overcast({ azimuthDeg: 10, altitudeDeg: 5 }));
    expect(correlatedTemperature(overcast(away)).kelvin).toBeGreaterThan(5900);
    expect(correlatedTemperature(overcast(away)).kelvin).toBeLessThan(7500);
  });

  test('broken cloud lies between the two', () => {
    const [clear, broken, cloud] = (['clear', 'broken-cloud', 'bright-overcast'] as const).map(
      (condition) => skyColour(condition, sun)(away).x,
    );
    expect(broken).toBeGreaterThan(clear ?? NaN);
    expect(broken).toBeLessThan(cloud ?? NaN);
  });

  test('with the sun below half a degree the colours of half a degree stay', () => {
    const [down, half, up] = [-5, 0.5, 3].map((apparentAltitudeDeg) =>
      skyColour('clear', { azimuthDeg: 270, apparentAltitudeDeg })(away),
    );
    expect(down).toEqual(half);
    expect(up).not.toEqual(half);
  });
});
