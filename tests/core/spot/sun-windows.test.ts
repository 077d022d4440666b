import { Body, Equator, Horizon, MakeTime, Observer } from 'astronomy-engine';
import { describe, expect, test } from 'vitest';
import type { Framing } from '../../../src/core/sky/framing.ts';
import { sunWindows } from '../../../src/core/spot/sun-windows.ts';

const DAY_MS = 86_400_000;
/** The sun moves 0.0042° a second: the two libraries' 0.02° of place, and 0.5′ of refraction. */
const TOLERANCE_MS = 10_000;

type Sky = { azimuthDeg: number; altitudeDeg: number };

/** Another library's sun, lifted by Sæmundsson 1986 at 1013 hPa and 15 °C. */
const otherSun = (instantMs: number, latitudeDeg: number, longitudeDeg: number): Sky => {
  const observer = new Observer(latitudeDeg, longitudeDeg, 0);
  const time = MakeTime(new Date(instantMs));
  const { ra, dec } = Equator(Body.Sun, time, observer, true, true);
  const { azimuth, altitude } = Horizon(time, observer, ra, dec);
  const h = Math.max(altitude, -1);
  const lift =
    ((1.02 / Math.tan(((h + 10.3 / (h + 5.11)) * Math.PI) / 180) / 60) * (1013 / 1010) * 283) / 288;
  return { azimuthDeg: azimuth, altitudeDeg: altitude + lift };
};

/** Every change of a condition, second by second round each change seen in minute steps. */
const changes = (fromMs: number, toMs: number, holds: (instantMs: number) => boolean): number[] => {
  const found: number[] = [];
  for (let minute = fromMs; minute < toMs; minute += 60_000) {
    if (holds(minute) === holds(minute + 60_000)) continue;
    let second = minute;
    while (holds(second) === holds(minute)) second += 1000;
    found.push(second);
  }
  return found;
};

const fov = (mm: number, focal: number): number => Math.atan(mm / 2 / focal);
const rad = (deg: number): number => (deg * Math.PI) / 180;
/** Level camera only: the tangents of turn and rise, against the half fields. */
const inLevelPicture = (sun: Sky, framing: Framing): boolean => {
  const turn = rad(sun.azimuthDeg - framing.bearingDeg);
  if (Math.cos(turn) <= 0) return false;
  return (
    Math.abs(Math.tan(turn)) <= Math.tan(fov(framing.sensorWidthMm, framing.focalLengthMm)) &&
    Math.abs(Math.tan(rad(sun.altitudeDeg)) / Math.cos(turn)) <=
      Math.tan(fov(framing.sensorHeightMm, framing.focalLengthMm))
  );
};

const west: Framing = {
  bearingDeg: 285,
  tiltDeg: 0,
  focalLengthMm: 35,
  sensorWidthMm: 36,
  sensorHeightMm: 24,
};

/** A block of 40° from 85° to 95° in the morning, a ridge of 3° in the west. */
const block = [
  { azimuthDeg: 84.9, altitudeDeg: 0 },
  { azimuthDeg: 85, altitudeDeg: 40 },
  { azimuthDeg: 95, altitudeDeg: 40 },
  { azimuthDeg: 95.1, altitudeDeg: 0 },
  { azimuthDeg: 250, altitudeDeg: 0 },
  { azimuthDeg: 270, altitudeDeg: 3 },
  { azimuthDeg: 330, altitudeDeg: 3 },
  { azimuthDeg: 340, altitudeDeg: 0 },
];
const blockDeg = (azimuthDeg: number): number => {
  for (const [index, from] of block.entries()) {
    const to = block[index + 1];
    if (to === undefined || azimuthDeg < from.azimuthDeg || azimuthDeg > to.azimuthDeg) continue;
    const share = (azimuthDeg - from.azimuthDeg) / (to.azimuthDeg - from.azimuthDeg);
    return from.altitudeDeg + share * (to.altitudeDeg - from.altitudeDeg);
  }
  return 0;
};

const above = (sun: Sky): boolean => sun.altitudeDeg >= blockDeg(sun.azimuthDeg);

describe('against another library’s sun, in Lisbon on the first of May', () => {
  const place = { latitudeDeg: 38.7, longitudeDeg: -9.14 };
  const fromMs = Date.UTC(2025, 4, 1);
  const toMs = fromMs + DAY_MS;
  const sunAt = (instantMs: number): Sky =>
    otherSun(instantMs, place.latitudeDeg, place.longitudeDeg);
  const found = sunWindows({ fromMs, toMs, place, framing: west, skyline: block });
  const flat = (spans: typeof found.directSun): number[] =>
    spans.flatMap(({ fromMs: first, toMs: last }) => [first, last]);

  test('direct sun comes, goes behind the block, comes back and ends at the ridge', () => {
    const expected = changes(fromMs, toMs, (instantMs) => above(sunAt(instantMs)));
    expect(expected).toHaveLength(4);
    const errors = flat(found.directSun).map((ms, index) =>
      Math.abs(ms - (expected[index] ?? NaN)),
    );
    console.log('direct sun, largest difference', Math.max(...errors) / 1000, 's');
    expect(flat(found.directSun)).toHaveLength(4);
    expect(Math.max(...errors)).toBeLessThan(TOLERANCE_MS);
  });

  test('the sun enters the picture at its top and leaves it at the ridge', () => {
    const expected = changes(fromMs, toMs, (instantMs) => {
      const sun = sunAt(instantMs);
      return above(sun) && inLevelPicture(sun, west);
    });
    expect(expected).toHaveLength(2);
    const errors = flat(found.sunInFrame).map((ms, index) =>
      Math.abs(ms - (expected[index] ?? NaN)),
    );
    console.log('sun in frame, largest difference', Math.max(...errors) / 1000, 's');
    expect(flat(found.sunInFrame)).toHaveLength(2);
    expect(Math.max(...errors)).toBeLessThan(TOLERANCE_MS);
  });
});

describe('days without an edge', () => {
  const framing = { ...west, bearingDeg: 0 };
  test('midsummer at 70° north has sun all day, once in a picture to the north', () => {
    const fromMs = Date.UTC(2025, 5, 21, 12);
    const range = { fromMs, toMs: fromMs + DAY_MS };
    const found = sunWindows({
      ...range,
      place: { latitudeDeg: 70, longitudeDeg: 20 },
      framing,
      skyline: [],
    });
    expect(found.directSun).toEqual([range]);
    expect(found.sunInFrame).toHaveLength(1);
  });
  test('midwinter there has none', () => {
    const fromMs = Date.UTC(2025, 11, 21);
    expect(
      sunWindows({
        fromMs,
        toMs: fromMs + DAY_MS,
        place: { latitudeDeg: 70, longitudeDeg: 20 },
        framing,
        skyline: [],
      }),
    ).toEqual({ directSun: [], sunInFrame: [] });
  });
  test('a picture away from the sun never has it in', () => {
    const fromMs = Date.UTC(2025, 11, 1);
    const found = sunWindows({
      fromMs,
      toMs: fromMs + DAY_MS,
      place: { latitudeDeg: 50, longitudeDeg: 0 },
      framing,
      skyline: [],
    });
    expect(found.sunInFrame).toEqual([]);
    expect(found.directSun).toHaveLength(1);
  });
});
