import { expect, test } from 'vitest';
import {
  horizonDistanceM,
  levelHorizonDeg,
  terrainAltitudeDeg,
  terrainDropM,
} from '../../../src/core/skyline/terrain-drop.ts';
import { largestError } from '../../support/largest-error.ts';

const drop = largestError('drop of the ground by curvature and refraction', 'm', {
  quantity: 'skyline of the terrain',
  method: 'curvature less refraction, coefficient 0.13',
  comparedWith: 'table of drops, 1 to 100 km, two decimals',
});
const dip = largestError('dip of the horizon', '′');
const ridge = largestError('altitude of a ridge 1000 m above the eye', '°');

// (1 − k)d²/2R with k 0.13: surveying handbooks give 0.0675 m/km² for k 1/7, 0.0785 without
// refraction; the table is computed with k 0.13, rounded to a centimetre.
test.each([
  { distanceKm: 1, dropM: 0.068, within: 0.0005 },
  { distanceKm: 10, dropM: 6.828, within: 0.0005 },
  { distanceKm: 20, dropM: 27.31, within: 0.005 },
  { distanceKm: 50, dropM: 170.7, within: 0.05 },
  { distanceKm: 100, dropM: 682.8, within: 0.05 },
])('over $distanceKm km the ground drops $dropM m', ({ distanceKm, dropM, within }) => {
  expect(drop(terrainDropM(distanceKm * 1000) - dropM)).toBeLessThan(within);
});

// Dip of the sea horizon, 1.797′√h for k 0.13, by arccos(R′/(R′ + h)), R′ = R/(1 − k).
test.each([
  { eyeM: 2, dipMinutes: 2.541 },
  { eyeM: 10, dipMinutes: 5.681 },
  { eyeM: 100, dipMinutes: 17.966 },
  { eyeM: 1000, dipMinutes: 56.809 },
])('from $eyeM m the sea horizon lies $dipMinutes′ down', ({ eyeM, dipMinutes }) => {
  expect(dip(levelHorizonDeg(eyeM) * 60 + dipMinutes)).toBeLessThan(0.01);
});

// Distance to the horizon 3.827 km √h with k 0.13.
test.each([
  { eyeM: 2, horizonKm: 5.41 },
  { eyeM: 100, horizonKm: 38.27 },
  { eyeM: 1000, horizonKm: 121.02 },
])('from $eyeM m the sea horizon is $horizonKm km away', ({ eyeM, horizonKm }) => {
  expect(Math.abs(horizonDistanceM(eyeM) / 1000 - horizonKm)).toBeLessThan(0.006);
});

test.each([
  { distanceKm: 10, altitudeDeg: 5.6719 },
  { distanceKm: 20, altitudeDeg: 2.7844 },
  { distanceKm: 50, altitudeDeg: 0.9502 },
])('1000 m above the eye at $distanceKm km is $altitudeDeg° up', ({ distanceKm, altitudeDeg }) => {
  const seenDeg = terrainAltitudeDeg({ aboveEyeM: 1000, distanceM: distanceKm * 1000 });
  expect(ridge(seenDeg - altitudeDeg)).toBeLessThan(1e-4);
});
