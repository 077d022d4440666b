import { describe, expect, test } from 'vitest';

import { isInShadow } from '../../../src/core/skyline/in-shadow.ts';
import type { Obstacle } from '../../../src/core/skyline/obstacle.ts';
import {
  shadowUnionJob,
  type ShadowUnion,
  type ShadowUnionInput,
} from '../../../src/worker/ground/shadow-union-job.ts';
import { inventedTown } from '../../support/invented-town.ts';
import { largestError } from '../../support/largest-error.ts';
import { metresRound, plainBuilding, plainTrees, plainWall } from '../../support/metres-round.ts';

const PLACE = { latitudeDeg: 45.65, longitudeDeg: 13.76 };
const at = metresRound(PLACE);
/** In the south: shadows fall north, as long as things are high. */
const SUN = { azimuthDeg: 180, apparentAltitudeDeg: 45 };

const run = async (
  input: Partial<ShadowUnionInput>,
): Promise<{
  readonly shares: readonly number[];
  readonly answer: Awaited<ReturnType<typeof last>>;
}> => {
  const shares: number[] = [];
  const answer = await last(input, shares);
  return { shares, answer };
};

const last = async (input: Partial<ShadowUnionInput>, shares: number[]) => {
  const job = shadowUnionJob({ obstacles: [], sun: SUN, date: '2027-07-01', points: [], ...input });
  for (;;) {
    const step = await job.next();
    if (step.done === true) return step.value;
    shares.push(step.value);
  }
};

const unionOf = async (obstacles: readonly Obstacle[], sun = SUN): Promise<ShadowUnion> => {
  const { answer } = await run({ obstacles, sun });
  if (!answer.ok) throw new Error(answer.problem);
  return answer.value;
};

const square = (east: number, north: number, sideM: number): Obstacle['outline'] => [
  at(east, north),
  at(east + sideM, north),
  at(east + sideM, north + sideM),
  at(east, north + sideM),
];
const house = (east: number, north: number, heightM = 10): Obstacle => ({
  ...plainBuilding,
  heightM,
  outline: square(east, north, 10),
});

describe('the area in shadow', () => {
  const error = largestError('area of the union of shadows', '%', {
    quantity: 'shadows on level ground',
    method: 'union on a grid of centimetres',
    comparedWith: 'areas worked by hand',
  });
  // Corners lie on whole centimetres: half a centimetre along the border of each.
  test.each([
    ['a house of 10 × 10 × 10 m, its footprint and as much behind it', [house(0, 0)], 200],
    ['two houses apart', [house(0, 0), house(50, 0)], 400],
    ['the same house twice is the same house once', [house(0, 0), house(0, 0)], 200],
    // 15 m wide in all, 20 m deep.
    ['two houses that overlap by half', [house(0, 0), house(5, 0)], 300],
    // The one behind lies wholly in the first one's shadow and throws its own 10 m farther.
    ['a house in the shadow of another', [house(0, 0), house(0, 10)], 300],
    // Overlap 5 × 15 m of two 10 × 20 m.
    ['two that overlap in one corner', [house(0, 0), house(5, 5)], 325],
    ['a wall of 10 m length and height', [{ ...plainWall, outline: [at(0, 0), at(10, 0)] }], 100],
    // From 4 m to 10 m behind it.
    ['a row of crowns', [{ ...plainTrees, closed: false, outline: [at(0, 0), at(10, 0)] }], 60],
    // 50 × 50 m less a yard of 30 × 30 m, whose first 10 m are dark, and 10 m behind the whole.
    [
      'a courtyard house',
      [{ ...plainBuilding, outline: square(-10, -10, 50), holes: [square(0, 0, 30)] }],
      2500 - 900 + 300 + 500,
    ],
  ])('%s', async (_, obstacles, areaM2) => {
    const union = await unionOf(obstacles);
    expect(error((100 * (union.areaM2 - areaM2)) / areaM2)).toBeLessThan(0.2);
  });

  test('a lit yard is a hole of its polygon', async () => {
    const { polygons } = await unionOf([
      { ...plainBuilding, outline: square(-10, -10, 50), holes: [square(0, 0, 30)] },
    ]);
    expect(polygons).toHaveLength(1);
    expect(polygons[0]?.holes).toHaveLength(1);
  });

  test('crowns that let half of the light through are no shadow', async () => {
    const row = { ...plainTrees, closed: false, passesInLeaf: 0.5, outline: [at(0, 0), at(9, 0)] };
    expect((await unionOf([row])).areaM2).toBe(0);
    expect((await unionOf([])).polygons).toEqual([]);
  });
});

const isIn = (
  ring: readonly (readonly [number, number])[],
  [x, y]: readonly [number, number],
): boolean => {
  let inside = false;
  for (const [index, [toX, toY]] of ring.entries()) {
    const [fromX, fromY] = ring.at(index - 1) ?? [NaN, NaN];
    if (fromY > y !== toY > y && x < fromX + ((y - fromY) / (toY - fromY)) * (toX - fromX))
      inside = !inside;
  }
  return inside;
};

const turn = (ring: readonly [number, number][]): number =>
  ring.slice(1).reduce((sum, [x, y], index) => {
    const [fromX, fromY] = ring[index] ?? [0, 0];
    const [originX, originY] = ring[0] ?? [0, 0];
    return sum + (fromX - originX) * (y - originY) - (x - originX) * (fromY - originY);
  }, 0);

describe('the union of a town of 400 outlines', () => {
  const town = inventedTown(400, PLACE);
  const sun = { azimuthDeg: 222, apparentAltitudeDeg: 20 };

  test('holds the points from which the sun is hidden and no other, and its area is their share', async () => {
    const { polygons, areaM2 } = await unionOf(town, sun);
    let dark = 0;
    let wrong = 0;
    const probes = Array.from({ length: 3000 }, (_, n): readonly [number, number] => [
      ((n * 0.7548776662) % 1) * 1000 - 500,
      ((n * 0.5698402909) % 1) * 1000 - 500,
    ]);
    for (const [east, north] of probes) {
      const corner = at(east, north);
      const isDark = polygons.some(
        ({ outer, holes }) => isIn(outer, corner) && !holes.some((hole) => isIn(hole, corner)),
      );
      const point = { longitudeDeg: corner[0], latitudeDeg: corner[1] };
      const shade = isInShadow({
        point,
        aboveGroundM: 0,
        sun,
        date: '2027-07-01',
        obstacles: town,
      });
      if (isDark) dark += 1;
      if (isDark !== shade?.blocked) wrong += 1;
    }
    // Within a centimetre or two of an edge the two may differ: of 3,000 points hardly one.
    expect(wrong).toBeLessThanOrEqual(3);
    // The town ends inside the square of 1 km; what is dark lies in it. Three standard deviations.
    const share = dark / probes.length;
    const spread = Math.sqrt((share * (1 - share)) / probes.length);
    expect(Math.abs(areaM2 / 1e6 - share)).toBeLessThan(3 * spread);
  });

  test('does not depend on the order of its outlines', async () => {
    const [first, second] = [await unionOf(town, sun), await unionOf(town.toReversed(), sun)];
    // Square metres: where corners fall on whole centimetres depends on the order.
    expect(Math.abs(first.areaM2 - second.areaM2)).toBeLessThan(0.001 * first.areaM2);
    const once = first.areaM2;
    const twice = (await unionOf([...town, ...town], sun)).areaM2;
    expect(Math.abs(twice - once)).toBeLessThan(0.001 * once);
  });

  test('is told in rising shares, in more than a handful of steps', async () => {
    const { shares } = await run({ obstacles: town, sun });
    expect(shares.length).toBeGreaterThan(5);
    expect(shares).toEqual(shares.toSorted((first, second) => first - second));
    expect(Math.max(...shares)).toBeLessThanOrEqual(1);
  });

  test('as GeoJSON it has outer rings counter-clockwise and holes clockwise, all closed (RFC 7946, 3.1.6)', async () => {
    const collection = JSON.parse((await unionOf(town, sun)).geoJson) as {
      readonly features: readonly [
        {
          readonly geometry: {
            readonly type: string;
            readonly coordinates: [number, number][][][];
          };
        },
      ];
    };
    const { type, coordinates } = collection.features[0].geometry;
    expect(type).toBe('MultiPolygon');
    for (const rings of coordinates)
      for (const [index, ring] of rings.entries()) {
        expect(ring.at(-1)).toEqual(ring[0]);
        expect(Math.sign(turn(ring))).toBe(index === 0 ? 1 : -1);
      }
  });
});

test('points are answered by the ray to the sun', async () => {
  const [east, west] = [at(5, 15), at(5, -5)].map(([longitudeDeg, latitudeDeg]) => ({
    longitudeDeg,
    latitudeDeg,
  }));
  if (east === undefined || west === undefined) throw new Error('no points');
  const { answer } = await run({ obstacles: [house(0, 0)], points: [east, west] });
  expect(answer.ok && answer.value.points).toEqual([
    { blocked: true, passes: 0 },
    { blocked: false, passes: 1 },
  ]);
});

test('over the antimeridian the union is cut there, and its area is whole', async () => {
  const round = metresRound({ latitudeDeg: -16.8, longitudeDeg: 180 });
  const across = {
    ...plainBuilding,
    outline: [round(-20, 0), round(20, 0), round(20, 40), round(-20, 40)],
    holes: [[round(-10, 10), round(10, 10), round(10, 30), round(-10, 30)]],
  };
  const union = await unionOf([across], { azimuthDeg: 0, apparentAltitudeDeg: 89.99 });
  expect(union.areaM2).toBeCloseTo(1600 - 400, -1);
  expect(union.polygons.length).toBe(2);
  const longitudes = union.polygons.map(({ outer }) => outer.map(([longitude]) => longitude));
  for (const ring of longitudes) {
    expect(Math.max(...ring.map(Math.abs))).toBeLessThanOrEqual(180);
    expect(Math.max(...ring) - Math.min(...ring)).toBeLessThan(0.001);
  }
});

test.each([
  [
    'the sun below the horizon',
    { sun: { azimuthDeg: 0, apparentAltitudeDeg: -1 } },
    'below the horizon',
  ],
  [
    'outlines of two cities',
    { obstacles: [house(0, 0), { ...plainBuilding, outline: square(60_000, 0, 10) }] },
    'more than 50 km',
  ],
])('%s: no answer, with its reason', async (_, input, sentence) => {
  const { answer } = await run(input);
  expect(answer).toEqual({ ok: false, problem: expect.stringContaining(sentence) });
});
