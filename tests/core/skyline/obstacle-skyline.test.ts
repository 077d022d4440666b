import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import {
  byObstacles,
  obstacleSkyline,
  type ObstacleSkyline,
} from '../../../src/core/skyline/obstacle-skyline.ts';
import type { Obstacle } from '../../../src/core/skyline/obstacle.ts';
import { largestError } from '../../support/largest-error.ts';
import { metresRound, plainBuilding, plainTrees, plainWall } from '../../support/metres-round.ts';

const TRIESTE = { latitudeDeg: 45.65, longitudeDeg: 13.76, elevationM: 3 };
const at = metresRound(TRIESTE);
const radians = Math.PI / 180;
const degrees = (tangent: number): number => Math.atan(tangent) / radians;

const skylineOf = (obstacles: readonly Obstacle[], eyeHeightM = 0): ObstacleSkyline =>
  obstacleSkyline({ place: TRIESTE, eyeHeightM, obstacles, date: '2027-07-01' });

/** Sectors reach an eighth of a degree to both sides; the nearest azimuth to a direction in one. */
const nearestIn = (azimuthDeg: number, towardsDeg: number): number => {
  const away = Math.abs(((azimuthDeg - towardsDeg + 540) % 360) - 180);
  return Math.max(0, away - 0.125);
};

describe('a long wall stands as its closed form says: tan altitude = height · cos(azimuth off the square) / distance', () => {
  const error = largestError('altitude of a wall', '°', {
    quantity: 'skyline of buildings and walls',
    method: 'outlines and their heights',
    comparedWith: 'the closed form of a long wall',
  });
  test.each([
    [0, 5, 20, 0],
    [90, 2.5, 1, 1.6],
    [217.3, 30, 400, 1.6],
    [359.9, 8, 12, 0],
  ])('square to %d°: %d m high, %d m off, eye at %d m', (squareDeg, heightM, awayM, eyeM) => {
    const along = (m: number): readonly [number, number] => [
      awayM * Math.sin(squareDeg * radians) + m * Math.cos(squareDeg * radians),
      awayM * Math.cos(squareDeg * radians) - m * Math.sin(squareDeg * radians),
    ];
    const half = 2 * awayM;
    const wall = { ...plainWall, heightM, outline: [at(...along(-half)), at(...along(half))] };
    const altitude = byObstacles(skylineOf([wall], eyeM));
    for (let azimuthDeg = 0; azimuthDeg < 360; azimuthDeg += 0.25) {
      const offDeg = nearestIn(azimuthDeg, squareDeg);
      // Its ends stand at atan(2) to both sides.
      const isBehind = offDeg < Math.atan(2) / radians - 1e-6;
      const expected = Math.atan(((heightM - eyeM) * Math.cos(offDeg * radians)) / awayM) / radians;
      if (!isBehind) expect(altitude(azimuthDeg)).toBe(-Infinity);
      // 1 mm of 1 m is 0.05°; degrees of longitude are good to a nanometre.
      else expect(error(altitude(azimuthDeg) - expected)).toBeLessThan(1e-4);
    }
  });
});

describe('a square tower 10 m wide and 20 m high, its near face 30 m north', () => {
  const tower = {
    ...plainBuilding,
    heightM: 20,
    outline: [at(-5, 30), at(5, 30), at(5, 40), at(-5, 40)],
  };
  const skyline = skylineOf([tower]);
  const altitude = byObstacles(skyline);

  test('stands at atan(20/30) = 33.69° in the middle and is seen from −9.46° to 9.46°', () => {
    expect(altitude(0)).toBeCloseTo(degrees(20 / 30), 4);
    expect(altitude(9.25)).toBeCloseTo(degrees((20 / 30) * Math.cos(9.125 * radians)), 4);
    expect(altitude(350.75)).toBeCloseTo(altitude(9.25), 4);
    expect(altitude(9.75)).toBe(-Infinity);
    expect(altitude(180)).toBe(-Infinity);
  });

  test('and the distance told is that of the near face', () => {
    expect(skyline.distancesM[0]).toBeCloseTo(30, 4);
    expect(skyline.obstacleIndices[0]).toBe(0);
    expect(skyline.obstacleIndices[720]).toBe(-1);
    expect(skyline.distancesM[720]).toBe(Infinity);
  });

  test('from a roof 20 m up its edge hides nothing', () => {
    expect(byObstacles(skylineOf([tower], 20))(0)).toBe(-Infinity);
  });

  test('on a terrace 12 m above the spot it stands at atan(32/30)', () => {
    const raised = { ...tower, footElevationM: TRIESTE.elevationM + 12 };
    expect(byObstacles(skylineOf([raised]))(0)).toBeCloseTo(degrees(32 / 30), 4);
  });

  test('from its other side its far face is the near one', () => {
    const [eastLongitude, northLatitude] = at(0, 80);
    const place = { latitudeDeg: northLatitude, longitudeDeg: eastLongitude, elevationM: 3 };
    const back = obstacleSkyline({ place, eyeHeightM: 0, obstacles: [tower], date: '2027-07-01' });
    expect(byObstacles(back)(180)).toBeCloseTo(degrees(20 / 40), 4);
  });
});

describe('an outline round the camera', () => {
  const block = { ...plainBuilding, outline: [at(-9, -9), at(9, -9), at(9, 9), at(-9, 9)] };
  const yard = [at(-5, -5), at(5, -5), at(5, 5), at(-5, 5)];

  test('a courtyard is open above: 10 m walls 5 m off stand at atan(2) on all four sides', () => {
    const skyline = skylineOf([{ ...block, holes: [yard] }]);
    expect(skyline.roundCamera).toEqual([]);
    for (const azimuthDeg of [0, 90, 180, 270])
      expect(byObstacles(skyline)(azimuthDeg)).toBeCloseTo(Math.atan(2) / radians, 4);
  });

  test.each([
    ['inside a house', block, 1.6, 'camera-inside'],
    ['on its roof', block, 11.6, 'camera-on-top'],
    ['under a bridge deck', { ...block, crownBaseM: 5 }, 1.6, 'camera-underneath'],
    [
      'under the crowns of a wood',
      { ...plainTrees, outline: block.outline },
      1.6,
      'camera-underneath',
    ],
  ] as const)('%s it is left out and said', (_, obstacle, eyeHeightM, because) => {
    const skyline = skylineOf([obstacle], eyeHeightM);
    expect(skyline.roundCamera).toEqual([{ index: 0, because }]);
    expect(skyline.altitudesDeg.every((altitude) => altitude === -Infinity)).toBe(true);
  });

  test('a garden wall that runs round the camera is a wall on every side', () => {
    const skyline = skylineOf([{ ...plainWall, closed: true, outline: block.outline }]);
    expect(skyline.roundCamera).toEqual([]);
    expect(skyline.altitudesDeg.every((altitude) => altitude > 38)).toBe(true);
  });
});

describe('what is not counted, or not as it stands', () => {
  const row = { ...plainTrees, outline: [at(-20, 30), at(20, 30)] };

  test('crowns that let half the light through are no skyline, denser ones are one to the ground', () => {
    const open = skylineOf([{ ...row, passesInLeaf: 0.5 }]);
    expect(open.openCount).toBe(1);
    expect(byObstacles(open)(0)).toBe(-Infinity);
    const dense = skylineOf([{ ...row, passesInLeaf: 0.49 }]);
    expect(byObstacles(dense)(0)).toBeCloseTo(Math.atan(10 / 30) / radians, 4);
  });

  test('a bare row in January lets the light through', () => {
    const deciduous = { ...row, passesInLeaf: 0.2, passesBare: 0.6 };
    const place = TRIESTE;
    const inMonth = (date: string): number =>
      obstacleSkyline({ place, eyeHeightM: 0, obstacles: [deciduous], date }).openCount;
    expect(inMonth('2027-01-10')).toBe(1);
    expect(inMonth('2027-06-10')).toBe(0);
  });

  test('what stands farther than 3 km is left out', () => {
    const [near, far] = [2990, 3010].map((m) => ({
      ...plainWall,
      outline: [at(-50, m), at(50, m)],
    }));
    if (near === undefined || far === undefined) throw new Error('no walls');
    expect(skylineOf([near, far]).beyondCount).toBe(1);
  });

  test('a wall at arm’s length is taken at half a metre and said', () => {
    const skyline = skylineOf([{ ...plainWall, outline: [at(-2, 0.1), at(2, 0.1)] }]);
    expect(skyline.tooNear).toEqual([0]);
    expect(byObstacles(skyline)(0)).toBeCloseTo(Math.atan(10 / 0.5) / radians, 4);
  });

  test('a wall that runs through the camera stands before and behind it', () => {
    const skyline = skylineOf([
      {
        ...plainWall,
        outline: [at(0, -20), [TRIESTE.longitudeDeg, TRIESTE.latitudeDeg], at(0, 20)],
      },
    ]);
    expect(byObstacles(skyline)(0)).toBeGreaterThan(80);
    expect(byObstacles(skyline)(180)).toBeGreaterThan(80);
    expect(byObstacles(skyline)(90)).toBe(-Infinity);
  });

  test('a wall seen end on is as high as its near end', () => {
    const skyline = skylineOf([{ ...plainWall, outline: [at(0, 40), at(0, 20)] }]);
    expect(byObstacles(skyline)(0)).toBeCloseTo(Math.atan(10 / 20) / radians, 3);
    expect(byObstacles(skyline)(0.5)).toBe(-Infinity);
  });

  test('no outline, no edge', () => {
    expect(skylineOf([]).altitudesDeg.every((altitude) => altitude === -Infinity)).toBe(true);
  });
});

test.each([
  ['the antimeridian from the west', { latitudeDeg: -16.8, longitudeDeg: 179.99999 }],
  ['the antimeridian from the east', { latitudeDeg: -16.8, longitudeDeg: -179.99999 }],
  ['the north pole', { latitudeDeg: 90, longitudeDeg: 0 }],
  ['the south pole', { latitudeDeg: -90, longitudeDeg: 0 }],
])('a ring of walls 50 m off stands at one altitude all round at %s', (_, place) => {
  const round = metresRound(place);
  const corners = Array.from({ length: 72 }, (__, n) =>
    round(50 * Math.sin(n * 5 * radians), 50 * Math.cos(n * 5 * radians)),
  );
  const { altitudesDeg } = obstacleSkyline({
    place,
    eyeHeightM: 1.6,
    obstacles: [{ ...plainWall, closed: true, outline: corners }],
    date: '2027-07-01',
  });
  const altitudes = [...altitudesDeg];
  // Half way between corners the chord is 50 m · cos 2.5° off; a sector reaches 0.125° from a corner.
  const chordM = 50 * Math.cos(2.5 * radians);
  expect(Math.min(...altitudes)).toBeCloseTo(
    Math.atan((8.4 * Math.cos(2.375 * radians)) / chordM) / radians,
    4,
  );
  expect(Math.max(...altitudes)).toBeCloseTo(Math.atan(8.4 / chordM) / radians, 4);
});

/** Distance along a ray to an edge by solving for both parameters; Infinity when it misses. */
const hitM = (
  azimuthDeg: number,
  [ax, ay]: readonly [number, number],
  [bx, by]: readonly [number, number],
): number => {
  const [dx, dy] = [Math.sin(azimuthDeg * radians), Math.cos(azimuthDeg * radians)];
  const determinant = dx * (ay - by) - dy * (ax - bx);
  const away = (ax * (ay - by) - ay * (ax - bx)) / determinant;
  const share = (dx * ay - dy * ax) / determinant;
  return away > 0 && share >= 0 && share <= 1 ? away : Infinity;
};

describe('among random outlines', () => {
  type Outline = {
    readonly corners: readonly (readonly [number, number])[];
    readonly heightM: number;
  };
  const metre = fc.integer({ min: -400, max: 400 });
  const outlines = fc.array(
    fc.record({
      corners: fc.array(fc.tuple(metre, metre), { minLength: 2, maxLength: 5 }),
      heightM: fc.integer({ min: 1, max: 60 }),
    }),
    { minLength: 1, maxLength: 6 },
  );

  const byRays = (all: readonly Outline[], azimuthsDeg: readonly number[]): number =>
    Math.max(
      ...azimuthsDeg.flatMap((azimuthDeg) =>
        all.flatMap(({ corners, heightM }) =>
          corners.slice(1).map((to, index) => {
            const away = hitM(azimuthDeg, corners[index] ?? [0, 0], to);
            return away === Infinity ? -Infinity : Math.atan(heightM / Math.max(0.5, away));
          }),
        ),
      ),
    ) / radians;

  test('no sector is lower than a ray in it nor higher than the highest ray', () => {
    fc.assert(
      fc.property(outlines, fc.integer({ min: 0, max: 1439 }), (all, sector) => {
        const altitude = skylineOf(
          all.map(({ corners, heightM }) => ({
            ...plainWall,
            heightM,
            outline: corners.map(([east, north]) => at(east, north)),
          })),
        ).altitudesDeg[sector];
        const [low, high] = [(sector - 0.5) / 4, (sector + 0.5) / 4];
        const even = Array.from({ length: 51 }, (_, n) => low + (n / 50) * (high - low));
        const atCorners = all
          .flatMap(({ corners }) => corners)
          .flatMap(([east, north]) => {
            const azimuth = (Math.atan2(east, north) / radians + 360) % 360;
            return [-1e-7, 1e-7].flatMap((by) => [azimuth + by, azimuth + by - 360]);
          })
          .filter((azimuth) => azimuth >= low && azimuth <= high);
        const wide = [low - 1e-6, ...even, ...atCorners, high + 1e-6];
        const narrow = [...even.slice(1, -1), ...atCorners];
        // A hundredth of a degree where a fiftieth of the sector lies between two rays.
        expect(altitude).toBeGreaterThanOrEqual(byRays(all, narrow) - 0.01);
        if (altitude !== -Infinity) expect(altitude).toBeLessThanOrEqual(byRays(all, wide) + 0.01);
      }),
      { numRuns: 300 },
    );
  });
});
