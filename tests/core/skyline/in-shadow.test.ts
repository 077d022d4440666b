import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { isInShadow, type PointShade } from '../../../src/core/skyline/in-shadow.ts';
import type { Obstacle } from '../../../src/core/skyline/obstacle.ts';
import { shadowOutlines } from '../../../src/core/skyline/shadow-outlines.ts';
import { shadowsAt, type ShadowSun } from '../../../src/core/skyline/shadow.ts';
import { metresRound, plainBuilding, plainTrees, plainWall } from '../../support/metres-round.ts';
import { turnsAt } from '../../support/turns-at.ts';

const PLACE = { latitudeDeg: 45.65, longitudeDeg: 13.76, elevationM: 3 };
const at = metresRound(PLACE);
const date = '2027-07-01';

const shadeAt = (
  [east, north]: readonly [number, number],
  sun: ShadowSun,
  obstacles: readonly Obstacle[],
  aboveGroundM = 0,
): PointShade | null => {
  const [longitudeDeg, latitudeDeg] = at(east, north);
  const point = { longitudeDeg, latitudeDeg, elevationM: 3 };
  return isInShadow({ point, aboveGroundM, sun, date, obstacles });
};

describe('behind a wall 10 m high, sun square to it at 30°', () => {
  const wall = { ...plainWall, outline: [at(-50, 0), at(50, 0)] };
  const sun = { azimuthDeg: 180, apparentAltitudeDeg: 30 };

  test.each([
    [17.3, true],
    [17.4, false],
    [0.1, true],
    [-0.1, false],
  ])('%d m behind it the ground is in shadow: %s (10 m · cot 30° = 17.32 m)', (north, blocked) => {
    expect(shadeAt([0, north], sun, [wall])?.blocked).toBe(blocked);
  });

  test('a face at 1.6 m is in the sun 2.77 m nearer than the ground', () => {
    expect(shadeAt([0, 14.5], sun, [wall], 1.6)?.blocked).toBe(true);
    expect(shadeAt([0, 14.6], sun, [wall], 1.6)?.blocked).toBe(false);
  });

  test('on a terrace 5 m above the point the wall reaches 5 m · cot 30° = 8.66 m farther', () => {
    const raised = { ...wall, footElevationM: 8 };
    expect(shadeAt([0, 25.9], sun, [raised])?.blocked).toBe(true);
    expect(shadeAt([0, 26.1], sun, [raised])?.blocked).toBe(false);
  });

  test('with the sun below the horizon there is no answer', () => {
    expect(shadeAt([0, 5], { azimuthDeg: 180, apparentAltitudeDeg: -0.1 }, [wall])).toBeNull();
  });
});

describe('trees', () => {
  const row = { ...plainTrees, closed: false, passesInLeaf: 0.2, passesBare: 0.6 };
  const trees = { ...row, outline: [at(-50, 0), at(50, 0)] };
  const sun = { azimuthDeg: 180, apparentAltitudeDeg: 45 };

  test('under a crown that begins at 4 m the sun comes in; behind it a fifth comes through', () => {
    expect(shadeAt([0, 3.9], sun, [trees])).toEqual({ blocked: false, passes: 1 });
    expect(shadeAt([0, 4.1], sun, [trees])).toEqual({ blocked: true, passes: 0.2 });
    expect(shadeAt([0, 9.9], sun, [trees])).toEqual({ blocked: true, passes: 0.2 });
  });

  test('two rows are no darker than the denser, as they are drawn', () => {
    const thinner = { ...row, passesInLeaf: 0.6, outline: [at(-50, 1), at(50, 1)] };
    expect(shadeAt([0, 7], sun, [thinner])).toEqual({ blocked: false, passes: 0.6 });
    expect(shadeAt([0, 7], sun, [thinner, trees])).toEqual({ blocked: true, passes: 0.2 });
  });
});

describe('in a courtyard 30 m wide with walls of 10 m', () => {
  const block = {
    ...plainBuilding,
    outline: [at(-10, -10), at(40, -10), at(40, 40), at(-10, 40)],
    holes: [[at(0, 0), at(30, 0), at(30, 30), at(0, 30)]],
  };
  const sun = { azimuthDeg: 180, apparentAltitudeDeg: 45 };

  test('the sun comes in 10 m from the south wall, and the house itself is dark', () => {
    expect(shadeAt([15, 9.9], sun, [block])?.blocked).toBe(true);
    expect(shadeAt([15, 10.1], sun, [block])?.blocked).toBe(false);
    expect(shadeAt([15, 35], sun, [block])?.blocked).toBe(true);
  });

  test('a ray that passes over the yard still meets the far wing', () => {
    expect(shadeAt([15, -11], { azimuthDeg: 0, apparentAltitudeDeg: 80 }, [block])?.blocked).toBe(
      true,
    );
    expect(shadeAt([15, -60], { azimuthDeg: 0, apparentAltitudeDeg: 11 }, [block])?.blocked).toBe(
      true,
    );
    expect(shadeAt([15, -60], { azimuthDeg: 0, apparentAltitudeDeg: 11.5 }, [block])?.blocked).toBe(
      false,
    );
  });
});

test('at the antimeridian the house on the other side of it throws its shadow', () => {
  const round = metresRound({ latitudeDeg: -16.8, longitudeDeg: 179.9999 });
  const house = {
    ...plainBuilding,
    outline: [round(12, -5), round(20, -5), round(20, 5), round(12, 5)],
  };
  const shade = isInShadow({
    point: { latitudeDeg: -16.8, longitudeDeg: 179.9999 },
    aboveGroundM: 0,
    sun: { azimuthDeg: 90, apparentAltitudeDeg: 30 },
    date,
    obstacles: [house],
  });
  expect(house.outline[0]?.[0]).toBeLessThan(0);
  expect(shade?.blocked).toBe(true);
});

test('at the pole a wall across the sun’s direction does the same', () => {
  const place = { latitudeDeg: 90, longitudeDeg: 0 };
  const round = metresRound(place);
  const shaded = (metres: number): boolean | undefined =>
    isInShadow({
      point: place,
      aboveGroundM: 0,
      sun: { azimuthDeg: 90, apparentAltitudeDeg: 20 },
      date,
      obstacles: [{ ...plainWall, outline: [round(metres, -9), round(metres, 9)] }],
    })?.blocked;
  // 10 m · cot 20° = 27.47 m.
  expect(shaded(27.4)).toBe(true);
  expect(shaded(27.6)).toBe(false);
});

describe('the ray, the drawn shadow and a march towards the sun agree', () => {
  type Block = {
    readonly corners: readonly (readonly [number, number])[];
    readonly heightM: number;
    readonly crownBaseM: number;
  };
  const metre = fc.integer({ min: -30, max: 30 });
  // Corners round a middle, so that outlines do not cross themselves.
  const block: fc.Arbitrary<Block> = fc.record({
    corners: fc
      .tuple(
        metre,
        metre,
        fc.array(fc.integer({ min: 4, max: 15 }), { minLength: 3, maxLength: 8 }),
      )
      .map(([east, north, reaches]) =>
        reaches.map((reach, n): readonly [number, number] => {
          const angle = (2 * Math.PI * n) / reaches.length;
          return [east + reach * Math.cos(angle), north + reach * Math.sin(angle)];
        }),
      ),
    heightM: fc.integer({ min: 4, max: 20 }),
    crownBaseM: fc.constantFrom(0, 0, 3),
  });
  const sun = fc.record({
    azimuthDeg: fc.integer({ min: 0, max: 359 }),
    apparentAltitudeDeg: fc.integer({ min: 8, max: 80 }),
  });

  const isOver = (corners: Block['corners'], [x, y]: readonly [number, number]): boolean => {
    let inside = false;
    for (const [index, [toX, toY]] of corners.entries()) {
      const [fromX, fromY] = corners.at(index - 1) ?? [NaN, NaN];
      if (fromY > y !== toY > y && x < fromX + ((y - fromY) / (toY - fromY)) * (toX - fromX))
        inside = !inside;
    }
    return inside;
  };

  /** Steps of 5 cm over the ground towards the sun until the ray is above everything. */
  const isDarkByMarch = (
    [east, north]: readonly [number, number],
    where: ShadowSun,
    blocks: readonly Block[],
  ): boolean => {
    const azimuth = (where.azimuthDeg * Math.PI) / 180;
    const rise = Math.tan((where.apparentAltitudeDeg * Math.PI) / 180);
    for (let away = 0; away * rise < 20; away += 0.05) {
      const over = [east + away * Math.sin(azimuth), north + away * Math.cos(azimuth)] as const;
      const up = away * rise;
      if (
        blocks.some(
          ({ corners, heightM, crownBaseM }) =>
            up < heightM && up >= Math.min(crownBaseM, heightM) && isOver(corners, over),
        )
      )
        return true;
    }
    return false;
  };

  test('wherever a hand’s breadth to the side makes no difference', () => {
    let asked = 0;
    fc.assert(
      fc.property(
        fc.array(block, { minLength: 1, maxLength: 4 }),
        sun,
        fc.tuple(metre, metre),
        (blocks, where, [east, north]) => {
          const round = [
            [0, 0],
            [0.25, 0],
            [-0.25, 0],
            [0, 0.25],
            [0, -0.25],
          ].map(([x = 0, y = 0]) => isDarkByMarch([east + x, north + y], where, blocks));
          fc.pre(round.every((dark) => dark === round[0]));
          asked += 1;
          const obstacles = blocks.map(({ corners, ...heights }) => ({
            ...plainBuilding,
            ...heights,
            outline: corners.map(([x, y]) => at(x, y)),
          }));
          expect(shadeAt([east, north], where, obstacles)?.blocked).toBe(round[0]);
          const drawn = shadowsAt(shadowOutlines(obstacles), { sun: where, date });
          const isDrawn =
            drawn.ok && drawn.value.groups.some((group) => turnsAt(group, at(east, north)) !== 0);
          expect(isDrawn).toBe(round[0]);
        },
      ),
      { numRuns: 400 },
    );
    expect(asked).toBeGreaterThan(300);
  });
});
