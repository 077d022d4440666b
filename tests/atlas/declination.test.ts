import { describe, expect, test, vi } from 'vitest';
import { declinationAt, type Declination } from '../../src/atlas/declination.ts';
import type { GeoPoint } from '../../src/core/place/geo-point.ts';
import { wrapDeg180 } from '../../src/core/units/angle.ts';
import { largestError } from '../support/largest-error.ts';

const found = async (point: GeoPoint, date: string): Promise<Declination> => {
  const answer = await declinationAt(point, date);
  if (!answer.ok) throw new Error(answer.problem);
  return answer.value;
};

const at = (latitudeDeg: number, longitudeDeg: number, elevationM = 0): GeoPoint => ({
  latitudeDeg,
  longitudeDeg,
  elevationM,
});

describe('magnetic declination agrees with the test values published with the World Magnetic Model 2025', () => {
  // NOAA NCEI and British Geological Survey, WMM2025 test values (report, table of test values for
  // programmers, and WMM2025_TestValues.txt): degrees to 0.01.
  const published = [
    { date: '2025-01-01', place: at(80, 0), declinationDeg: 1.28 },
    { date: '2025-01-01', place: at(0, 120), declinationDeg: -0.16 },
    { date: '2025-01-01', place: at(-80, 240), declinationDeg: 68.78 },
    { date: '2025-01-01', place: at(80, 0, 100_000), declinationDeg: 0.85 },
    { date: '2025-01-01', place: at(0, 120, 100_000), declinationDeg: -0.15 },
    { date: '2025-01-01', place: at(-80, 240, 100_000), declinationDeg: 68.21 },
    { date: '2027-07-02', place: at(80, 0), declinationDeg: 2.59 },
    { date: '2027-07-02', place: at(0, 120), declinationDeg: -0.24 },
    { date: '2027-07-02', place: at(-80, 240), declinationDeg: 68.49 },
    { date: '2027-07-02', place: at(0, 120, 100_000), declinationDeg: -0.23 },
    { date: '2027-07-02', place: at(-80, 240, 100_000), declinationDeg: 67.93 },
    { date: '2025-01-01', place: at(0, 21, 18_000), declinationDeg: 1.29 },
    { date: '2025-07-02', place: at(-36, -137, 6000), declinationDeg: 20.28 },
  ];
  // The table is rounded to 0.01°, so is the package; noon of the day is half a day from the
  // table's year, in which the fastest of these moves by 0.001°.
  const TOLERANCE_DEG = 0.011;

  const differs = largestError('magnetic declination', '°', {
    quantity: 'magnetic declination',
    method: 'World Magnetic Model 2025',
    comparedWith: 'its published test values, two decimals',
  });

  test.each(published)(
    'on $date at $place.latitudeDeg°, $place.longitudeDeg°, $place.elevationM m up: $declinationDeg°',
    async ({ date, place, declinationDeg }) => {
      const difference = (await found(place, date)).declinationDeg - declinationDeg;
      expect(differs(difference)).toBeLessThanOrEqual(TOLERANCE_DEG);
    },
  );
});

test('a longitude of 240° east and one of 120° west are the same place', async () => {
  const east = await found(at(-45, 240), '2026-06-01');
  const west = await found(at(-45, -120), '2026-06-01');
  expect(west).toEqual(east);
});

test('the spread is the published standard error for eight of ten, wider where the field is flat', async () => {
  // Report's error model: √(0.26² + (5417/H)²) degrees; H 39,677.9 nT (published) at 0°, 120°.
  const { spreadDeg } = await found(at(0, 120), '2025-01-01');
  expect(spreadDeg).toBeCloseTo(1.2816 * Math.hypot(0.26, 5417 / 39_677.9), 3);
  expect((await found(at(65, 20), '2025-01-01')).spreadDeg).toBeGreaterThan(spreadDeg);
});

test('the year it holds for is said, in the middle of the day asked for', async () => {
  expect((await found(at(45.65, 13.76), '2027-07-02')).decimalYear).toBeCloseTo(2027.5, 3);
  expect((await found(at(45.65, 13.76), '2028-12-31')).decimalYear).toBeCloseTo(2028.999, 3);
});

test.each(['2024-12-31', '2030-01-01', '1999-05-14'])(
  'on %s the model does not hold: no answer, with its years',
  async (date) => {
    const warn = vi.spyOn(console, 'warn');
    const answer = await declinationAt(at(45, 13), date);
    expect(answer).toEqual({
      ok: false,
      problem: `World Magnetic Model 2025 covers 2025 to 2029, not ${date.slice(0, 4)}: no declination`,
    });
    expect(warn).not.toHaveBeenCalled();
    warn.mockRestore();
  },
);

test('what is no date is named', async () => {
  expect(await declinationAt(at(45, 13), '2027-02-30')).toEqual({
    ok: false,
    problem: 'found ‘2027-02-30’, expected a date for the magnetic declination',
  });
});

test('near the magnetic poles there is a reason instead of a direction', async () => {
  // The report puts the north dip pole near 86° N 139° E in 2025; horizontal fields under 2,000 nT
  // are its blackout zone, those under 6,000 nT its caution zone.
  const atPole = await declinationAt(at(86, 139), '2025-06-01');
  expect(atPole).toEqual({ ok: false, problem: expect.stringContaining('no direction') });
  const near = await declinationAt(at(80, -96), '2025-06-01');
  expect(near).toEqual({ ok: false, problem: expect.stringContaining('cannot be relied on') });
});

test('it changes by less than half a degree in a year where people photograph', async () => {
  for (const place of [at(45.65, 13.76), at(-33.9, 151.2), at(40.7, -74), at(64.1, -21.9)]) {
    const one = await found(place, '2026-01-01');
    const next = await found(place, '2027-01-01');
    expect(Math.abs(wrapDeg180(next.declinationDeg - one.declinationDeg))).toBeLessThan(0.5);
    expect(next.declinationDeg).not.toBe(one.declinationDeg);
  }
});
