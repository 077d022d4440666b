import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { groundVector } from '../../../src/core/place/geodesy.ts';
import type { Obstacle } from '../../../src/core/skyline/obstacle.ts';
import { shadowOutlines } from '../../../src/core/skyline/shadow-outlines.ts';
import { shadowsAt, type Shadows, type ShadowSun } from '../../../src/core/skyline/shadow.ts';
import { largestError } from '../../support/largest-error.ts';
import { metresRound, plainBuilding, plainTrees, plainWall } from '../../support/metres-round.ts';
import { turnsAt } from '../../support/turns-at.ts';

const PLACE = { latitudeDeg: 45.65, longitudeDeg: 13.76 };
const at = metresRound(PLACE);
const SUMMER = '2027-07-01';

const shadowsOf = (obstacles: readonly Obstacle[], sun: ShadowSun, date = SUMMER): Shadows => {
  const shadows = shadowsAt(shadowOutlines(obstacles), { sun, date });
  if (!shadows.ok) throw new Error(shadows.problem.kind);
  return shadows.value;
};

const isDark = (shadows: Shadows, corner: readonly [number, number]): boolean =>
  shadows.groups.some((group) => turnsAt(group, corner) !== 0);

/** Of all corners of a shadow the way from a place to the farthest. */
const farthest = (
  shadows: Shadows,
  from: readonly [number, number],
): ReturnType<typeof groundVector> => {
  const [start, end] = from;
  const ways = shadows.groups.flatMap(({ coordinates }) =>
    Array.from({ length: coordinates.length / 2 }, (_, corner) =>
      groundVector(
        { longitudeDeg: start, latitudeDeg: end },
        {
          longitudeDeg: (((coordinates[2 * corner] ?? NaN) + 540) % 360) - 180,
          latitudeDeg: coordinates[2 * corner + 1] ?? NaN,
        },
      ),
    ),
  );
  return ways.reduce((far, way) => (way.distanceM > far.distanceM ? way : far));
};

describe('a shadow is as long as the height times the cotangent of the sun’s altitude', () => {
  const error = largestError('length of a shadow', '%', {
    quantity: 'shadows on level ground',
    method: 'outlines swept away from the sun',
    comparedWith: 'height times the cotangent of the altitude',
  });
  // Cotangents from a table of tangents; the last four rows are the shadow of a person of 1.8 m,
  // common practice.
  test.each([
    [10, 30, 17.3205],
    [10, 45, 10],
    [10, 60, 5.7735],
    [10, 5, 114.3005],
    [10, 1, 572.8996],
    [1.8, 5, 20.6],
    [1.8, 10, 10.2],
    [1.8, 20, 4.9],
    [1.8, 45, 1.8],
  ])('%d m high, sun at %d°: %d m', (heightM, apparentAltitudeDeg, lengthM) => {
    // A thin wall across the sun's direction; its corner farthest from its foot is its shadow's.
    const wall = { ...plainWall, heightM, outline: [at(0, 0), at(0.001, 0)] };
    const shadows = shadowsOf([wall], { azimuthDeg: 180, apparentAltitudeDeg });
    const { distanceM } = farthest(shadows, at(0, 0));
    // The length of a degree is that at the foot: a 2,000th part off at 600 m; the table is rounded.
    const roundedM = lengthM < 21 ? 0.05 : 0.0001;
    expect(Math.abs(distanceM - lengthM)).toBeLessThan(roundedM + lengthM / 2000);
    error(
      (100 * (distanceM - heightM / Math.tan((apparentAltitudeDeg * Math.PI) / 180))) / lengthM,
    );
  });

  test.each([
    [0, 180],
    [90, 270],
    [135, 315],
    [181, 1],
    [300, 120],
  ])('and with the sun at %d° falls towards %d°', (azimuthDeg, towardsDeg) => {
    for (const latitudeDeg of [-60, 0, 45, 78]) {
      const round = metresRound({ latitudeDeg, longitudeDeg: 20 });
      const pole = {
        ...plainBuilding,
        outline: [round(0, 0), round(0.01, 0), round(0.01, 0.01)],
      };
      const { bearingDeg } = farthest(
        shadowsOf([pole], { azimuthDeg, apparentAltitudeDeg: 30 }),
        round(0, 0),
      );
      // A centimetre of width in 17 m is 0.03°.
      expect(Math.abs(((bearingDeg - towardsDeg + 540) % 360) - 180)).toBeLessThan(0.05);
    }
  });
});

describe('what lies in the shadow', () => {
  // Sun in the south at 45°: shadows fall north, as long as things are high.
  const sun = { azimuthDeg: 180, apparentAltitudeDeg: 45 };
  const square = [at(0, 0), at(10, 0), at(10, 10), at(0, 10)];

  test('a house of 10 m on a square of 10 m darkens its footprint and ten metres north of it', () => {
    const shadows = shadowsOf([{ ...plainBuilding, outline: square }], sun);
    expect(isDark(shadows, at(5, 5))).toBe(true);
    expect(isDark(shadows, at(5, 19.9))).toBe(true);
    expect(isDark(shadows, at(5, 20.1))).toBe(false);
    expect(isDark(shadows, at(5, -0.1))).toBe(false);
    expect(isDark(shadows, at(-0.1, 15))).toBe(false);
  });

  test('a courtyard 30 m deep is lit but for the ten metres behind its south wall', () => {
    const block = {
      ...plainBuilding,
      outline: [at(-10, -10), at(40, -10), at(40, 40), at(-10, 40)],
      holes: [[at(0, 0), at(30, 0), at(30, 30), at(0, 30)]],
    };
    const shadows = shadowsOf([block], sun);
    expect(isDark(shadows, at(15, 5))).toBe(true);
    expect(isDark(shadows, at(15, 9.9))).toBe(true);
    expect(isDark(shadows, at(15, 10.1))).toBe(false);
    expect(isDark(shadows, at(15, 29))).toBe(false);
    expect(isDark(shadows, at(15, 35))).toBe(true);
    expect(isDark(shadows, at(15, 49.9))).toBe(true);
  });

  test('a lit courtyard that another house overshadows is dark', () => {
    const block = {
      ...plainBuilding,
      outline: [at(-10, -10), at(40, -10), at(40, 40), at(-10, 40)],
      holes: [[at(0, 0), at(30, 0), at(30, 30), at(0, 30)]],
    };
    const tower = {
      ...plainBuilding,
      heightM: 60,
      outline: [at(10, -30), at(20, -30), at(20, -20), at(10, -20)],
    };
    const shadows = shadowsOf([block, tower], sun);
    expect(isDark(shadows, at(15, 25))).toBe(true);
    expect(isDark(shadows, at(5, 25))).toBe(false);
  });

  test('a wall throws a strip and darkens nothing on its sunny side; seen end on it throws none', () => {
    const wall = { ...plainWall, outline: [at(0, 0), at(10, 0)] };
    const shadows = shadowsOf([wall], sun);
    expect(isDark(shadows, at(5, 9.9))).toBe(true);
    expect(isDark(shadows, at(5, -0.1))).toBe(false);
    expect(
      shadowsOf([{ ...wall, outline: [at(0, 0), at(0, 10)] }], sun).groups.flatMap(
        ({ ringEnds }) => [...ringEnds],
      ).length,
    ).toBeLessThanOrEqual(1);
  });

  test('a garden wall round a lawn leaves the middle of the lawn in the sun', () => {
    const outline = [at(0, 0), at(40, 0), at(40, 40), at(0, 40)];
    const shadows = shadowsOf([{ ...plainWall, closed: true, heightM: 2, outline }], sun);
    expect(isDark(shadows, at(20, 1))).toBe(true);
    expect(isDark(shadows, at(20, 20))).toBe(false);
    expect(isDark(shadows, at(20, 41))).toBe(true);
  });

  test('the shadow of a crown from 4 m to 10 m lies from 4 m to 10 m behind, clear of its foot', () => {
    const row = { ...plainTrees, closed: false, outline: [at(0, 0), at(10, 0)] };
    const shadows = shadowsOf([row], sun);
    expect(isDark(shadows, at(5, 3.9))).toBe(false);
    expect(isDark(shadows, at(5, 4.1))).toBe(true);
    expect(isDark(shadows, at(5, 9.9))).toBe(true);
    expect(isDark(shadows, at(5, 10.1))).toBe(false);
  });

  test('trees have groups of their own by what they let through, the darkest first', () => {
    const row = { ...plainTrees, closed: false, passesInLeaf: 0.2, passesBare: 0.6 };
    const obstacles = [
      { ...row, outline: [at(0, 0), at(10, 0)] },
      { ...plainBuilding, outline: square },
      { ...row, passesInLeaf: 1, outline: [at(50, 0), at(60, 0)] },
    ];
    const passes = (date: string): readonly number[] =>
      shadowsOf(obstacles, sun, date).groups.map((group) => group.passes);
    expect(passes(SUMMER)).toEqual([0, 0.2]);
    expect(passes('2027-01-15')).toEqual([0, 0.6]);
  });

  test('an outline that crosses itself is dark in both loops, and cancels no other shadow', () => {
    const bowTie = { ...plainBuilding, outline: [at(0, 0), at(10, 10), at(10, 0), at(0, 10)] };
    const house = { ...plainBuilding, outline: [at(-5, -5), at(15, -5), at(15, 5), at(-5, 5)] };
    const corners = [at(1, 5), at(9, 5), at(2, 4.9), at(8, 4.9)];
    for (const obstacles of [[bowTie], [bowTie, house], [house, bowTie]])
      for (const corner of corners) expect(isDark(shadowsOf(obstacles, sun), corner)).toBe(true);
  });

  test('a hole that crosses its outline is filled and counted', () => {
    const outlines = shadowOutlines([
      { ...plainBuilding, outline: square, holes: [[at(5, 5), at(15, 5), at(5, 8)]] },
    ]);
    expect(outlines.filledHoleCount).toBe(1);
  });
});

describe('shadows over shadows', () => {
  const sun = fc.record({
    azimuthDeg: fc.integer({ min: 0, max: 359 }),
    apparentAltitudeDeg: fc.integer({ min: 2, max: 89 }),
  });
  const metre = fc.integer({ min: -60, max: 60 });
  const obstacle: fc.Arbitrary<Obstacle> = fc
    .record({
      corners: fc.array(fc.tuple(metre, metre), { minLength: 3, maxLength: 7 }),
      heightM: fc.integer({ min: 1, max: 30 }),
      crownBaseM: fc.integer({ min: 0, max: 5 }),
      form: fc.constantFrom(plainBuilding, plainWall, { ...plainWall, closed: true }),
    })
    .map(({ corners, form, ...heights }) => ({
      ...form,
      ...heights,
      outline: corners.map(([east, north]) => at(east, north)),
    }));
  const probes = Array.from({ length: 60 }, (_, n) =>
    at(((n * 37) % 120) - 59.37, ((n * 53) % 120) - 59.71),
  );

  test('turn round no point less than zero times: nothing is taken away from another shadow', () => {
    fc.assert(
      fc.property(fc.array(obstacle, { minLength: 1, maxLength: 4 }), sun, (obstacles, where) => {
        for (const group of shadowsOf(obstacles, where).groups)
          for (const probe of probes) expect(turnsAt(group, probe)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  test('of the same outlines twice over cover what those of one do', () => {
    fc.assert(
      fc.property(fc.array(obstacle, { minLength: 1, maxLength: 3 }), sun, (obstacles, where) => {
        const once = shadowsOf(obstacles, where);
        const twice = shadowsOf([...obstacles, ...obstacles], where);
        for (const probe of probes) expect(isDark(twice, probe)).toBe(isDark(once, probe));
      }),
    );
  });

  test('move with their outlines', () => {
    fc.assert(
      fc.property(obstacle, sun, fc.tuple(metre, metre), (one, where, [east, north]) => {
        const [toLongitude, toLatitude] = [east * 1e-6, north * 1e-6];
        const moved = {
          ...one,
          outline: one.outline.map(
            ([longitude, latitude]) => [longitude + toLongitude, latitude + toLatitude] as const,
          ),
        };
        const [first, second] = [one, moved].map((each) => shadowsOf([each], where).groups[0]);
        expect(second?.ringEnds).toEqual(first?.ringEnds);
        for (const [index, value] of (first?.coordinates ?? []).entries()) {
          const shift = (second?.coordinates[index] ?? NaN) - value;
          // Sixty microdegrees north a degree of longitude is a millionth shorter.
          expect(shift).toBeCloseTo(index % 2 === 0 ? toLongitude : toLatitude, 7);
        }
      }),
    );
  });
});

describe('where there is no shadow, or not a whole one', () => {
  const house = { ...plainBuilding, outline: [at(0, 0), at(10, 0), at(10, 10)] };

  test.each([0, -0.3, -30, NaN])('a sun at %d° throws none', (apparentAltitudeDeg) => {
    const shadows = shadowsAt(shadowOutlines([house]), {
      sun: { azimuthDeg: 90, apparentAltitudeDeg },
      date: SUMMER,
    });
    expect(shadows).toEqual({ ok: false, problem: { kind: 'sun-down' } });
  });

  test('below 1° shadows stay 57 times the height long, and it is said', () => {
    const low = shadowsOf([house], { azimuthDeg: 90, apparentAltitudeDeg: 0.2 });
    expect(low.isCutShort).toBe(true);
    // Cotangent of 1°, table of tangents.
    expect(low.lengthPerHeight).toBeCloseTo(57.29, 2);
    expect(shadowsOf([house], { azimuthDeg: 90, apparentAltitudeDeg: 1 }).isCutShort).toBe(false);
  });

  test('with the sun overhead a house darkens its footprint alone', () => {
    const { groups } = shadowsOf([house], { azimuthDeg: 90, apparentAltitudeDeg: 90 });
    expect(isDark({ groups, lengthPerHeight: 0, isCutShort: false }, at(8, 2))).toBe(true);
    expect(isDark({ groups, lengthPerHeight: 0, isCutShort: false }, at(-0.01, 0))).toBe(false);
  });

  test('outlines within a degree of a pole, or of one corner, are left out and counted', () => {
    const round = metresRound({ latitudeDeg: 89.5, longitudeDeg: 0 });
    const polar = { ...plainBuilding, outline: [round(0, 0), round(9, 0), round(9, 9)] };
    const point = { ...plainWall, outline: [at(0, 0), at(0, 0)] };
    expect(shadowOutlines([polar, point, house]).leftOutCount).toBe(2);
    expect(shadowOutlines([polar, point, house]).outlines).toHaveLength(1);
  });

  test('over the antimeridian an outline and its shadow hold together', () => {
    const round = metresRound({ latitudeDeg: -16.8, longitudeDeg: 180 });
    const across = {
      ...plainBuilding,
      outline: [round(-20, 0), round(20, 0), round(20, 20), round(-20, 20)],
    };
    const [group] = shadowsOf([across], { azimuthDeg: 180, apparentAltitudeDeg: 45 }).groups;
    const longitudes = (group?.coordinates ?? new Float64Array()).filter(
      (_, index) => index % 2 === 0,
    );
    expect(Math.max(...longitudes) - Math.min(...longitudes)).toBeLessThan(0.001);
  });
});
