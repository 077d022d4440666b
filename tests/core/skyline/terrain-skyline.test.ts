import { describe, expect, test } from 'vitest';
import { destination, groundVector } from '../../../src/core/place/geodesy.ts';
import { terrainDropM } from '../../../src/core/skyline/terrain-drop.ts';
import { largestError } from '../../support/largest-error.ts';
import { seededRandom } from '../../support/seeded-framings.ts';
import { hills, skylineOf, skylineResult, terrainGrid } from '../../support/terrain-grid.ts';

const SECOND = 1 / 3600;
const degrees = (tangent: number): number => (Math.atan(tangent) * 180) / Math.PI;
const metresFrom =
  (top: { latitudeDeg: number; longitudeDeg: number }) =>
  (latitudeDeg: number, longitudeDeg: number): number =>
    groundVector(top, { latitudeDeg, longitudeDeg }).distanceM;

describe('level ground shows its horizon at the dip', () => {
  const dip = largestError('dip found over level ground', '′');
  const box = { south: 45.5, north: 46.5, west: 6.4, east: 7.6, stepDeg: 3 * SECOND };
  const plain = terrainGrid(box, () => 300);
  const table = (halfM: number) =>
    terrainGrid(box, (latitudeDeg) => (Math.abs(latitudeDeg - 46) <= halfM / 111_144 ? 500 : 0));

  // 1.797′√h: arccos(R′/(R′ + h)), k 0.13. The plain lies 300 m up, so that the sea's own horizon
  // below it cannot stand in for what the rays find.
  test.each([
    { eyeHeightM: 2, dipMinutes: 2.541 },
    { eyeHeightM: 10, dipMinutes: 5.681 },
    { eyeHeightM: 100, dipMinutes: 17.966 },
  ])('$eyeHeightM m above it: $dipMinutes′', ({ eyeHeightM, dipMinutes }) => {
    const place = { latitudeDeg: 46, longitudeDeg: 7 };
    const seen = skylineOf({ place, eyeHeightM, grids: [plain] });
    expect(seen.groundElevationM).toBeCloseTo(300, 6);
    for (const altitudeDeg of seen.altitudesDeg)
      expect(dip(altitudeDeg * 60 + dipMinutes)).toBeLessThan(0.01);
    expect(seen).toMatchObject({ voidShare: 0, uncoveredShare: 0, coveredKm: 40 });
  });

  test('from a table mountain in the sea its edge is the skyline, where the sea is not higher', () => {
    // 500 m above the sea the sea's horizon is 0.6697° down (1.797′√501.6).
    const place = { latitudeDeg: 46, longitudeDeg: 7 };
    const wide = skylineOf({ place, eyeHeightM: 1.6, grids: [table(1000)] });
    // The last row on the table, by the step of the rows.
    const edgeM = Math.floor(1000 / 111_144 / (3 * SECOND)) * 3 * SECOND * 111_144;
    const edgeDeg = degrees(-(1.6 + terrainDropM(edgeM)) / edgeM);
    expect(Math.abs((wide.altitudesDeg[0] ?? NaN) - edgeDeg)).toBeLessThan(0.002);
    expect(wide.ridgeDistanceKm[0]).toBeCloseTo(edgeM / 1000, 1);
    const narrow = skylineOf({ place, eyeHeightM: 1.6, grids: [table(100)] });
    expect(Math.abs((narrow.altitudesDeg[0] ?? NaN) * 60 + 1.797 * Math.sqrt(501.6))).toBeLessThan(
      0.02,
    );
    expect(narrow.ridgeDistanceKm[0]).toBeCloseTo(3.827 * Math.sqrt(501.6), 0);
  });
});

describe('a single mountain stands at its altitude', () => {
  const record = largestError('altitude of a summit 1000 m above the eye, 10 to 50 km', '°', {
    quantity: 'skyline of the terrain',
    method: 'rays read where they cross the raster',
    comparedWith: 'published altitudes of a summit at 10, 20 and 50 km',
  });

  // atan((Δz − (1 − k)d²/2R)/d), eye 500 m, summit 1500 m; 2.8624° at 20 km without curvature.
  test.each([
    { distanceKm: 10, altitudeDeg: 5.6719 },
    { distanceKm: 20, altitudeDeg: 2.7844 },
    { distanceKm: 50, altitudeDeg: 0.9502 },
  ])('$distanceKm km to the north: $altitudeDeg°', ({ distanceKm, altitudeDeg }) => {
    const top = { latitudeDeg: 46.75, longitudeDeg: 7 };
    const place = destination(top, { distanceM: distanceKm * 1000, bearingDeg: 180 });
    const away = metresFrom(top);
    const box = { south: 46.1, north: 47.4, west: 6.9, east: 7.1, stepDeg: 3 * SECOND };
    const grid = terrainGrid(box, (latitudeDeg, longitudeDeg) =>
      Math.max(498, 1500 - away(latitudeDeg, longitudeDeg) / 2),
    );
    const seen = skylineOf({ place, eyeHeightM: 2, grids: [grid], reachM: 60_000 });
    expect(record((seen.altitudesDeg[0] ?? NaN) - altitudeDeg)).toBeLessThan(1e-3);
    expect(seen.ridgeDistanceKm[0]).toBeCloseTo(distanceKm, 2);
    // South of it the plain goes on to its own horizon.
    expect((seen.altitudesDeg[180] ?? NaN) * 60).toBeLessThan(-1.797 * Math.sqrt(2) + 0.02);
  });

  test.each([
    { latitudeDeg: 70, bearingDeg: 37 },
    { latitudeDeg: -88, bearingDeg: 123 },
    { latitudeDeg: 0.01, bearingDeg: 250 },
  ])('at latitude $latitudeDeg°, bearing $bearingDeg°', ({ latitudeDeg, bearingDeg }) => {
    const place = { latitudeDeg, longitudeDeg: 20 };
    const top = destination(place, { distanceM: 25_000, bearingDeg });
    const away = metresFrom(top);
    const columnStepDeg = (3 * SECOND) / Math.cos((latitudeDeg * Math.PI) / 180);
    const columns = Math.ceil(0.3 / 3 / SECOND);
    const box = {
      south: latitudeDeg - 0.3,
      north: latitudeDeg + 0.3,
      west: 20 - columns * columnStepDeg,
      east: 20 + columns * columnStepDeg,
      stepDeg: 3 * SECOND,
      columnStepDeg,
    };
    const grid = terrainGrid(box, (latitude, longitude) =>
      Math.max(0, 2000 - away(latitude, longitude) / 3),
    );
    const seen = skylineOf({ place, eyeHeightM: 2, grids: [grid], reachM: 30_000 });
    const highest = Math.max(...seen.altitudesDeg);
    expect(seen.altitudesDeg.indexOf(highest)).toBe(bearingDeg);
    // The summit lies up to 45 m from the nearest sample, 15 m lower: 0.034°.
    const expectedDeg = degrees((1998 - terrainDropM(25_000)) / 25_000);
    expect(Math.abs(highest - expectedDeg)).toBeLessThan(0.035);
    expect(highest).toBeLessThan(expectedDeg + 0.001);
  });
});

describe('a cone and a wall are seen as geometry has them', () => {
  const cone = largestError('flanks of a cone against the closed form', '°');
  const wall = largestError('top of a wall against the closed form', '°');

  test('the flanks of a cone fall away on both sides of its summit', () => {
    const top = { latitudeDeg: 46.05, longitudeDeg: 7.0 };
    const awayM = 2000;
    const place = destination(top, { distanceM: awayM, bearingDeg: 180 });
    const away = metresFrom(top);
    const grid = terrainGrid(
      { south: 46.025, north: 46.075, west: 6.975, east: 7.025, stepDeg: SECOND / 3 },
      (latitudeDeg, longitudeDeg) => Math.max(100, 800 - 0.6 * away(latitudeDeg, longitudeDeg)),
    );
    const seen = skylineOf({ place, eyeHeightM: 2, grids: [grid], reachM: 2700 });
    const aboveM = 800 - 102;
    const flank = 0.6;
    const root = Math.sqrt((flank * awayM) ** 2 - aboveM ** 2);
    for (let azimuthDeg = -25; azimuthDeg <= 25; azimuthDeg += 1) {
      // Line of sight that touches the cone z = H − s·r: D m = A cos β − |sin β| √(s²D² − A²). In
      // a sector the azimuth nearest the summit is highest.
      const beta = (Math.max(0, Math.abs(azimuthDeg) - 0.5) * Math.PI) / 180;
      const tangent = (aboveM * Math.cos(beta) - Math.sin(beta) * root) / awayM;
      const touchM =
        (aboveM * tangent - flank ** 2 * awayM * Math.cos(beta)) / (tangent ** 2 - flank ** 2);
      const expectedDeg = degrees(tangent - terrainDropM(touchM) / touchM);
      const found = seen.altitudesDeg[(azimuthDeg + 360) % 360] ?? NaN;
      // Between samples 10 m apart the cone sags by 0.6 Δ²/8r, 0.4 m 20 m from its axis: 0.011°.
      expect(cone(found - expectedDeg)).toBeLessThan(0.02);
    }
  });

  test('a wall 60 m high 1 km to the north lowers as the cosine of the bearing', () => {
    const place = { latitudeDeg: 0.2, longitudeDeg: 30 };
    const wallRow = 0.21;
    const grid = terrainGrid(
      { south: 0, north: 0.4, west: 29.8, east: 30.2, stepDeg: SECOND },
      (latitudeDeg) => (latitudeDeg > wallRow - SECOND / 2 ? 160 : 100),
    );
    const { distanceM } = groundVector(place, { latitudeDeg: wallRow, longitudeDeg: 30 });
    const seen = skylineOf({ place, eyeHeightM: 2, grids: [grid], reachM: 15_000 });
    for (let azimuthDeg = -80; azimuthDeg <= 80; azimuthDeg += 1) {
      const nearest = (Math.max(0, Math.abs(azimuthDeg) - 0.5) * Math.PI) / 180;
      const alongM = distanceM / Math.cos(nearest);
      const expectedDeg = degrees((58 - terrainDropM(alongM)) / alongM);
      const found = seen.altitudesDeg[(azimuthDeg + 360) % 360] ?? NaN;
      expect(wall(found - expectedDeg)).toBeLessThan(0.005);
    }
  });
});

describe('a ray more or less, and where the tiles are cut, changes nothing', () => {
  const rays = largestError('32 rays a degree against 128', '°', {
    quantity: 'skyline of the terrain',
    method: 'rays read where they cross the raster',
    comparedWith: 'the same with four times the rays',
  });

  test.each([
    { roughness: 0.42, chanceM: 0 },
    { roughness: 0.45, chanceM: 25 },
  ])('four times the rays agree within 0.05°: hills, $chanceM m of chance', (ground) => {
    const box = { south: 45.78, north: 46.24, west: 6.68, east: 7.35, stepDeg: 3 * SECOND };
    const near = { south: 45.93, north: 46.08, west: 6.9, east: 7.12, stepDeg: SECOND };
    const random = seededRandom(3);
    const smooth = hills(ground.roughness);
    const heightM = (latitudeDeg: number, longitudeDeg: number): number =>
      smooth(latitudeDeg, longitudeDeg) + ground.chanceM * (2 * random() - 1);
    const grids = [terrainGrid(box, heightM), terrainGrid(near, heightM)];
    const question = {
      place: { latitudeDeg: 46.011, longitudeDeg: 7.013 },
      eyeHeightM: 1.6,
      grids,
      reachM: 25_000,
    };
    const usual = skylineOf(question);
    const fourfold = skylineOf({ ...question, raysPerDegree: 128 });
    expect(Math.max(...usual.altitudesDeg)).toBeGreaterThan(5);
    usual.altitudesDeg.forEach((altitudeDeg, sector) => {
      expect(rays(altitudeDeg - (fourfold.altitudesDeg[sector] ?? NaN))).toBeLessThan(0.05);
    });
  });

  const ground = hills(0.42);
  const moved = (latitudeDeg: number, longitude: number): number =>
    ground(latitudeDeg, ((longitude + 360) % 360) - 180 + 7);
  const box = { south: 45.85, north: 46.15, west: 6.8, east: 7.2, stepDeg: 3 * SECOND };
  const question = { eyeHeightM: 1.6, reachM: 12_000 };
  const place = { latitudeDeg: 46, longitudeDeg: 7 };
  const whole = skylineOf({ ...question, place, grids: [terrainGrid(box, ground)] });

  test('four tiles that share their edges are one', () => {
    const tiles = [
      { ...box, north: 46, east: 7 },
      { ...box, south: 46, east: 7 },
      { ...box, north: 46, west: 7 },
      { ...box, south: 46, west: 7 },
    ].map((each) => terrainGrid(each, ground));
    const seen = skylineOf({ ...question, place, grids: tiles });
    expect(seen.uncoveredShare).toBe(0);
    seen.altitudesDeg.forEach((altitudeDeg, sector) => {
      expect(Math.abs(altitudeDeg - (whole.altitudesDeg[sector] ?? NaN))).toBeLessThan(1e-3);
    });
  });

  test.each([
    { named: 'east of the date line', longitudeDeg: -180 },
    { named: 'on it, counted from the west', longitudeDeg: 180 },
  ])(
    'the same ground laid over the date line looks the same, the spot $named',
    ({ longitudeDeg }) => {
      const west = terrainGrid({ ...box, west: 179.8, east: 180 }, moved);
      const east = terrainGrid({ ...box, west: -180, east: -179.8 }, moved);
      const seen = skylineOf({
        ...question,
        place: { ...place, longitudeDeg },
        grids: [west, east],
      });
      expect(seen.uncoveredShare).toBe(0);
      seen.altitudesDeg.forEach((altitudeDeg, sector) => {
        expect(Math.abs(altitudeDeg - (whole.altitudesDeg[sector] ?? NaN))).toBeLessThan(1e-3);
      });
    },
  );

  test('where a fine grid lies, a coarse one with a false mountain is not looked at', () => {
    const coarse = terrainGrid({ ...box, stepDeg: 15 * SECOND }, (latitudeDeg) =>
      latitudeDeg > 46.02 ? 3000 : 100,
    );
    const fine = terrainGrid({ ...box, north: 46.1 }, () => 100);
    const seen = skylineOf({ ...question, place, grids: [coarse, fine] });
    // The mountain begins behind the fine grid, 11.1 km to the north.
    expect(seen.ridgeDistanceKm[0]).toBeCloseTo(11.114, 2);
    expect(seen.altitudesDeg[0]).toBeCloseTo(degrees((2898.4 - terrainDropM(11_114)) / 11_114), 2);
    expect(seen.altitudesDeg[180]).toBeLessThan(0);
  });
});

describe('what the data do not say is said', () => {
  const box = { south: 45.6, north: 46.4, west: 6.4, east: 7.6, stepDeg: 3 * SECOND };
  const place = { latitudeDeg: 46, longitudeDeg: 7, elevationM: 640 };
  const plain = terrainGrid(box, () => 600);

  test('data on the eastern side only cover half of the rays', () => {
    const east = terrainGrid({ ...box, west: 6.99 }, () => 600);
    const seen = skylineOf({ place, eyeHeightM: 2, grids: [east] });
    // Each ray to the west leaves the data after 774 m/sin of its bearing to the meridian.
    const leavesM = 774.5;
    const nearest = Math.asin(leavesM / 40_000);
    const known = (2 * Math.log(1 / Math.tan(nearest / 2)) * leavesM) / 40_000 + 2 * nearest;
    expect(Math.abs(seen.uncoveredShare - (0.5 - known / (2 * Math.PI)))).toBeLessThan(0.002);
    expect(seen.coveredKm).toBeLessThan(1.3);
    expect(seen.coveredKm).toBeGreaterThan(0.3);
    expect(seen.altitudesDeg[90]).toBeCloseTo((-1.797 * Math.sqrt(2)) / 60, 3);
    // To the west nothing is known but that the sea lies no lower.
    expect(seen.altitudesDeg[270]).toBeGreaterThanOrEqual((-1.798 * Math.sqrt(602)) / 60);
  });

  test('ground and stated elevation are both told, and either can be stood on', () => {
    const onData = skylineOf({ place, eyeHeightM: 2, grids: [plain] });
    expect(onData).toMatchObject({
      groundElevationM: 600,
      statedElevationM: 640,
      eyeElevationM: 602,
    });
    const onStated = skylineOf({
      place,
      eyeHeightM: 2,
      grids: [plain],
      standsOn: 'stated-elevation',
    });
    expect(onStated.eyeElevationM).toBe(642);
    expect(onStated.altitudesDeg[0]).toBeCloseTo((-1.797 * Math.sqrt(42)) / 60, 3);
  });

  test.each([
    {
      says: 'under the ground, which the data have at 600 m',
      question: { place: { ...place, elevationM: 90 }, standsOn: 'stated-elevation' as const },
    },
    {
      says: 'states no elevation',
      question: {
        place: { latitudeDeg: 46, longitudeDeg: 7 },
        standsOn: 'stated-elevation' as const,
      },
    },
    {
      says: 'do not cover the spot at 47.0000, 7.0000',
      question: { place: { ...place, latitudeDeg: 47 } },
    },
    {
      says: 'from the pole; terrain is worked out from 95 km',
      question: { place: { ...place, latitudeDeg: -89.6 } },
    },
    { says: 'found NaN, 7', question: { place: { ...place, latitudeDeg: NaN } } },
    {
      says: 'Expected a camera 0 to 9000 m above the ground, found -1',
      question: { eyeHeightM: -1 },
    },
    { says: 'Expected to look 1 to 150 km far, found 400', question: { reachM: 400_000 } },
    { says: 'Expected 4 to 1024 rays a degree, found 1.5', question: { raysPerDegree: 1.5 } },
    { says: 'No elevation data were given', question: { grids: [] } },
  ])('no answer, but why: $says', ({ says, question }) => {
    const result = skylineResult({ place, eyeHeightM: 2, grids: [plain], ...question });
    expect(result).toEqual({ ok: false, problem: expect.stringContaining(says) });
  });

  test('below the sea, level ground is level', () => {
    const basin = terrainGrid(box, () => -410);
    const seen = skylineOf({ place, eyeHeightM: 2, grids: [basin] });
    expect((seen.altitudesDeg[12] ?? NaN) * 60).toBeCloseTo(-2.541, 1);
  });
});
