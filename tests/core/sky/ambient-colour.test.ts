import { describe, expect, test } from 'vitest';

import { correlatedTemperature } from '../../../src/core/colour/correlated-temperature.ts';
import { ambientColour, skyKelvin, sunKelvin } from '../../../src/core/sky/ambient-colour.ts';

describe('the colour of sun and sky lies in the published bands', () => {
  // Colour-temperature tables of practitioners' pages; they disagree by hundreds of kelvin.
  test.each([
    ['at the horizon', 0, 1900, 3000],
    ['an hour after sunrise', 10, 3300, 3600],
    ['at 20 to 30°', 25, 4000, 4600],
    ['at noon', 60, 5000, 5600],
  ])('the sun %s', (_, altitudeDeg, from, to) => {
    expect(sunKelvin(altitudeDeg)).toBeGreaterThanOrEqual(from);
    expect(sunKelvin(altitudeDeg)).toBeLessThanOrEqual(to);
  });

  test('the sun never gets warmer as it rises', () => {
    for (let altitude = -2; altitude < 80; altitude += 1)
      expect(sunKelvin(altitude + 1)).toBeGreaterThanOrEqual(sunKelvin(altitude));
  });

  test('open shade under a blue sky is 9000 to 12 000 K, overcast 5900 to 7500 K', () => {
    expect(skyKelvin('clear')).toBeGreaterThan(9000);
    expect(skyKelvin('clear')).toBeLessThan(12_000);
    expect(skyKelvin('heavy-overcast')).toBeGreaterThan(5900);
    expect(skyKelvin('heavy-overcast')).toBeLessThan(7500);
  });

  test('sun and sky together lie between the two, near average daylight with a high sun', () => {
    const seen = ambientColour({
      condition: 'clear',
      sunAltitudeDeg: 60,
      beamLux: 80_000,
      restLux: 17_000,
    });
    const { kelvin } = correlatedTemperature(seen);
    // Photographic daylight, average noon sun and sky: 5500 to 6500 K.
    expect(kelvin).toBeGreaterThan(5400);
    expect(kelvin).toBeLessThan(6500);
  });

  test('with its back to the sun a face has the sky’s colour alone', () => {
    const seen = ambientColour({
      condition: 'clear',
      sunAltitudeDeg: 10,
      beamLux: 0,
      restLux: 5000,
    });
    expect(correlatedTemperature(seen).kelvin).toBeCloseTo(11_000, -2);
  });
});
