import { expect, test } from 'vitest';
import { destination } from '../../../src/core/place/geodesy.ts';
import { largestError } from '../../support/largest-error.ts';
import { seededRandom } from '../../support/seeded-framings.ts';
import { skylineOf, terrainGrid, type TerrainBox } from '../../support/terrain-grid.ts';

// A skyline found the long way: along 64 ways a degree, by the geodesics of GeographicLib, a look
// every 0.3 ‰ of the distance (5 cm at least) at heights between the samples of its own table.
const record = largestError('random terrain against a look at every point of it', '°', {
  quantity: 'skyline of the terrain',
  method: 'rays read where they cross the raster',
  comparedWith: 'random terrain, a look at every point of it',
});

const LOOKS_A_DEGREE = 64;
const REACH_M = 8000;
const KNOT_M = 200;

test.each([
  { seed: 5, latitudeDeg: 46.02, roughM: 40 },
  { seed: 6, latitudeDeg: -33.51, roughM: 15 },
  { seed: 7, latitudeDeg: 68.5, roughM: 90 },
])('ground of chance, seed $seed, at $latitudeDeg°', ({ seed, latitudeDeg, roughM }) => {
  const step = 1 / 1200;
  const reachDeg = 0.08;
  const eastDeg = reachDeg / Math.cos((latitudeDeg * Math.PI) / 180);
  const west = 13 - Math.round(eastDeg / step) * step;
  const south = Math.round((latitudeDeg - reachDeg) / step) * step;
  const box: TerrainBox = {
    south,
    west,
    north: south + 2 * reachDeg,
    east: 26 - west,
    stepDeg: step,
  };
  const random = seededRandom(seed);
  const grid = terrainGrid(
    box,
    (latitude, longitude) =>
      600 +
      250 * Math.sin(latitude * 190) * Math.cos(longitude * 230) +
      roughM * (random() - 0.5) * 2,
  );
  const place = { latitudeDeg, longitudeDeg: 13.0123 };
  const eyeHeightM = 1.7;
  const seen = skylineOf({ place, eyeHeightM, grids: [grid], reachM: REACH_M });

  const heightAt = (latitude: number, longitude: number): number => {
    const row = (box.north - latitude) / step;
    const column = (longitude - box.west) / step;
    const r = Math.floor(row);
    const c = Math.floor(column);
    const sample = (down: number, right: number): number =>
      grid.heights[(r + down) * grid.columns + c + right] ?? NaN;
    const upper = sample(0, 0) * (c + 1 - column) + sample(0, 1) * (column - c);
    const lower = sample(1, 0) * (c + 1 - column) + sample(1, 1) * (column - c);
    return upper * (r + 1 - row) + lower * (row - r);
  };
  const eyeM = heightAt(latitudeDeg, place.longitudeDeg) + eyeHeightM;
  expect(Math.abs(seen.eyeElevationM - eyeM)).toBeLessThan(1e-6);

  for (const sector of [0, 37, 90, 128, 180, 222, 270, 313]) {
    let highest = -Infinity;
    for (let look = 0; look <= LOOKS_A_DEGREE; look += 1) {
      const bearingDeg = sector - 0.5 + look / LOOKS_A_DEGREE;
      let from = { latitudeDeg, longitudeDeg: place.longitudeDeg };
      for (let knotM = KNOT_M; knotM <= REACH_M; knotM += KNOT_M) {
        const to = destination(place, { distanceM: knotM, bearingDeg });
        for (let d = Math.max(0.05, knotM - KNOT_M); d < knotM; d += Math.max(0.05, d * 3e-4)) {
          const share = (d - knotM + KNOT_M) / KNOT_M;
          const heightM = heightAt(
            from.latitudeDeg + share * (to.latitudeDeg - from.latitudeDeg),
            from.longitudeDeg + share * (to.longitudeDeg - from.longitudeDeg),
          );
          // Drop 0.0683 m/km², k 0.13.
          highest = Math.max(highest, (heightM - eyeM - 6.828e-8 * d * d) / d);
        }
        from = to;
      }
    }
    const expectedDeg = (Math.atan(highest) * 180) / Math.PI;
    const found = seen.altitudesDeg[sector] ?? NaN;
    // Rays 1/32° apart miss a summit of 45° on the sky by up to 1/64°, the looks by some more.
    expect(record(found - expectedDeg)).toBeLessThan(0.02);
  }
});
