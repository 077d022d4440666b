import { describe, expect, test } from 'vitest';

import { airMass, clearGlobal, clearSkyWatts } from './by-hand/daylight.ts';
import { pointOf, towardOf } from './by-hand/frame.ts';
import {
  allAtFullThere,
  ceilingsThere,
  landingThere,
  settingsEv,
  type AskedThere,
  type LightThere,
} from './by-hand/recipe.ts';
import { standardShape, twilightShape } from './by-hand/sky.ts';
import { evOfPlane, subjectThere } from './by-hand/subject.ts';
import { refraction, sunThere } from './by-hand/sun.ts';

describe('the formulas of the hand computation give the values in print', () => {
  test('sun of the worked example of Reda & Andreas 2004, table A5.1', () => {
    const sun = sunThere(Date.UTC(2003, 9, 17, 19, 30, 30), 39.742476, -105.1786, 1830.14);
    // UT1 lies 0.36 s from UTC: 0.005°.
    expect(Math.abs(sun.azimuth - 194.340241)).toBeLessThan(0.005);
    expect(Math.abs(sun.trueAltitude - 39.872046)).toBeLessThan(0.005);
  });

  test.each([
    { h: 0, minutes: 28.9819 },
    { h: 5, minutes: 9.6741 },
    { h: 45, minutes: 1.0127 },
  ])('refraction of Sæmundsson 1986 at true $h°', ({ h, minutes }) => {
    // Printed at 1010 hPa and 10 °C.
    const factor = (1013 / 1010) * (283 / 288);
    expect(refraction(h) * 60).toBeCloseTo(minutes * factor, 3);
  });

  test.each([
    { h: 1, mass: 26.3106 },
    { h: 10, mass: 5.586 },
    { h: 60, mass: 1.154 },
  ])('air mass of Kasten & Young 1989 at $h°', ({ h, mass }) => {
    expect(airMass(h)).toBeCloseTo(mass, 3);
  });

  test.each([
    { h: -12, lux: 8.056e-3 },
    { h: -3, lux: 79.07 },
    { h: 0, lux: 758.6 },
    { h: 20, lux: 27376 },
    { h: 60, lux: 103118 },
  ])('illuminance of the Explanatory Supplement 1992 at $h°', ({ h, lux }) => {
    expect(clearGlobal(h) / lux).toBeCloseTo(1, 3);
  });

  test('clear sky of Ineichen & Perez 2002 as public test values give it', () => {
    // Zenith angle 40°, air mass 5.5; 10°, air mass 1 at 2000 m.
    const low = clearSkyWatts(50, 0, 5.5);
    expect([low.ghi, low.dni, low.dhi].map((watts) => Math.round(watts * 100) / 100)).toEqual([
      478.93, 419.15, 157.84,
    ]);
    expect(clearSkyWatts(80, 2000, 1).dhi).toBeCloseTo(154.4049, 2);
  });

  test.each([
    { type: 'clear' as const, z60: 13.479, z45: 0.8965 },
    { type: 'broken-cloud' as const, z60: 4.6237, z45: 0.7253 },
  ])('standard sky ISO 15469 of $type, sun at 30°', ({ type, z60, z45 }) => {
    const sun = { azimuth: 0, altitude: 30 };
    const zenith = standardShape(type, sun, { azimuth: 0, altitude: 90 });
    expect(standardShape(type, sun, sun) / zenith).toBeCloseTo(z60, 3);
    expect(standardShape(type, sun, { azimuth: 180, altitude: 45 }) / zenith).toBeCloseTo(z45, 3);
  });

  test.each([
    { h: 2, zenith: 798, across: 6280, away: 3350 },
    { h: -4, zenith: 2.98, across: 24.7, away: 12.9 },
  ])('twilight of Schaefer 1998 with the sun at $h°, ratios to the zenith', (row) => {
    const sun = { azimuth: 0, altitude: row.h };
    const at = (azimuth: number, altitude: number): number =>
      twilightShape(sun, row.h, { azimuth, altitude });
    // Printed to three digits.
    expect(at(90, 10) / at(0, 90) / (row.across / row.zenith)).toBeCloseTo(1, 1);
    expect(at(180, 10) / at(0, 90) / (row.away / row.zenith)).toBeCloseTo(1, 1);
  });

  test('f/16 at 1/125 is EV 14.97, ND 2 stops makes it 16.97, 2560 lx read EV 10 (ISO 2720, C 250)', () => {
    const set = { shutter: 1 / 125, fNumber: 16, iso: 100, filterStops: 0, powers: [] };
    expect(settingsEv(set)).toBeCloseTo(14.9658, 4);
    expect(settingsEv({ ...set, filterStops: 2 })).toBeCloseTo(16.9658, 4);
    expect(evOfPlane(2560)).toBeCloseTo(10, 9);
  });

  test('a uniform sky over a flat skyline gives πL/2 on the plane, πL on dome and ground', () => {
    const there = subjectThere(
      40,
      0,
      () => 0,
      () => 1,
      { azimuth: 0, altitude: -9 },
      0,
    );
    expect(there.plane / (Math.PI / 2)).toBeCloseTo(1, 3);
    expect(there.dome / Math.PI).toBeCloseTo(1, 3);
    expect(there.ground / Math.PI).toBeCloseTo(1, 3);
  });

  test('a point of the picture and its direction are one another', () => {
    const camera = { bearing: 300, tilt: 6, focal: 35, width: 36, height: 24 };
    for (const point of [
      { right: 0.5, up: 0.5 },
      { right: -0.3, up: -0.45 },
    ]) {
      const back = pointOf(camera, towardOf(camera, point));
      expect(back?.right).toBeCloseTo(point.right, 9);
      expect(back?.up).toBeCloseTo(point.up, 9);
    }
    // The edge of a 36 mm picture at 35 mm lies atan(18/35) from its middle.
    const level = { ...camera, tilt: 0 };
    const edge = { right: 0.5, up: 0 };
    expect(towardOf(level, edge).azimuth - 300).toBeCloseTo(27.216, 3);
  });
});

describe('the ceiling of a key with a fill one stop under it, at a sync of 1/128', () => {
  /** f-number squared 64: GN 16 at 2 m, 64 × 128 = 2^13 a second. */
  const key: LightThere = {
    role: 'key',
    stops: 0,
    guideNumber: 16,
    lossStops: 0,
    distance: 2,
    radius: 0,
  };
  const asked = (fillLossStops: number, ambient: number): AskedThere => ({
    lights: [key, { ...key, role: 'fill', stops: -1, lossStops: fillLossStops }],
    ambient,
    reference: 11,
    holdStops: 2,
    syncShutter: 1 / 128,
  });
  const ceilings = (fillLossStops: number, ambient: number): readonly number[] =>
    ceilingsThere(asked(fillLossStops, ambient)).map(({ ceiling }) => ceiling);
  const keySum = (fillLossStops: number, ambient: number): number =>
    (allAtFullThere(asked(fillLossStops, ambient))[0]?.reach ?? NaN) + 2;

  // At level L the fill's side is to be L/2; where the fill can make it, key + L/2 = L, L = 2^14.
  test.each([
    ['a fill as strong as the key is just at its own limit there: the plain sum', 0, -Infinity, 14],
    ['a fill a stop stronger is turned down a stop: 2^14 still', -1, -Infinity, 14],
    ['half of the fill’s side from the ambient, half from the fill', 0, 12, 14],
    ['a fill two stops weaker is at full power: 2^13 + 2^11', 2, -Infinity, Math.log2(10240)],
    ['an ambient brighter than the fill’s side: 2^13 + 2^14, no fill', 0, 14, Math.log2(24576)],
  ] as const)('%s', (_, fillLossStops, ambient, ceiling) => {
    expect(ceilings(fillLossStops, ambient)[0]).toBeCloseTo(ceiling, 9);
  });

  test('the plain sum is the same at the fill’s limit and below it, and too much above it', () => {
    expect(keySum(0, -Infinity)).toBeCloseTo(14, 9);
    expect(keySum(2, -Infinity)).toBeCloseTo(Math.log2(10240), 9);
    // 2^13 + 2^14.
    expect(keySum(-1, -Infinity)).toBeCloseTo(Math.log2(24576), 9);
  });

  test('a fill by itself gets to (fill + ambient) × 2, and reach and what is in hand follow', () => {
    expect(ceilings(0, -Infinity)[1]).toBeCloseTo(14, 9);
    expect(ceilings(2, 11)[1]).toBeCloseTo(13, 9);
    const [first] = ceilingsThere(asked(-1, -Infinity));
    expect(first?.reach).toBeCloseTo(12, 9);
    expect(first?.inHand).toBeCloseTo(1, 9);
  });

  test('at the ceiling both land on their stops, key at full, the stronger fill a stop down', () => {
    // f/11.3 (128 = 2^7 squared) at 1/128 is EV 14.
    const set = { shutter: 1 / 128, fNumber: Math.sqrt(128), iso: 100, filterStops: 0 };
    const { faces } = landingThere(asked(-1, -Infinity), { ...set, powers: [0, -1] });
    expect(faces[0]).toBeCloseTo(0, 9);
    expect(faces[1]).toBeCloseTo(-1, 9);
    // The plain sum's EV, 14.585: with all at full power the key lands, the fill 0.415 over.
    const over = landingThere(asked(-1, -Infinity), {
      ...set,
      fNumber: Math.sqrt(192),
      powers: [0, 0],
    }).faces;
    expect(over[0]).toBeCloseTo(0, 9);
    expect(over[1]).toBeCloseTo(Math.log2(2 / 3), 9);
  });
});
