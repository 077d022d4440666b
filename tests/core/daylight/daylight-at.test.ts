import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { daylightAt, type Daylight } from '../../../src/core/daylight/daylight-at.ts';
import { SKY_CONDITIONS, type SkyCondition } from '../../../src/core/daylight/sky-condition.ts';
import { sinDeg } from '../../../src/core/units/angle.ts';

/** Day of year with the sun at its mean distance. */
const MEAN_DAY = 2 + 365 / 4;

const sunAt = (
  altitudeDeg: number,
  apparentAltitudeDeg = altitudeDeg,
): { azimuthDeg: number; trueAltitudeDeg: number; apparentAltitudeDeg: number } => ({
  azimuthDeg: 180,
  trueAltitudeDeg: altitudeDeg,
  apparentAltitudeDeg,
});

const lightAt = (condition: SkyCondition, altitudeDeg: number, elevationM = 0): Daylight =>
  daylightAt({ sun: sunAt(altitudeDeg), condition, dayOfYear: MEAN_DAY, elevationM });

/** Altitudes as the air lifts them, Sæmundsson 1986, faded out by −3° as at sunset. */
const liftedSun = (altitudeDeg: number): ReturnType<typeof sunAt> => {
  const h = Math.max(altitudeDeg, -1);
  const liftDeg = 1.02 / Math.tan(((h + 10.3 / (h + 5.11)) * Math.PI) / 180) / 60;
  return sunAt(
    altitudeDeg,
    altitudeDeg + liftDeg * Math.min(1, Math.max(0, (altitudeDeg + 3) / 2)),
  );
};

describe('daylight at sea level and mean distance', () => {
  // klx. Worked by hand from the published parts: level Explanatory Supplement 1992 (46.297 klx
  // at 30°), split Ineichen and Perez 2002 (788 and 76 W/m² at 30°, turbidity 3) with Littlefair's
  // 144 and 80 lm/W, cloud Kasten and Czeplak 1980, beam in broken cloud RP-21 (0.80 − 0.21).
  test.each([
    ['clear', 5, 16.72, 3.08, 4.54],
    ['clear', 10, 31.58, 5.64, 11.12],
    ['clear', 30, 68.79, 11.9, 46.3],
    ['clear', 60, 99.48, 16.96, 103.12],
    ['broken-cloud', 5, 0.04, 3.39, 3.39],
    ['broken-cloud', 10, 1.17, 8.1, 8.3],
    ['broken-cloud', 30, 21.21, 23.97, 34.57],
    ['broken-cloud', 60, 50.36, 33.39, 77.0],
    ['heavy-overcast', 10, 0, 3.09, 3.09],
    ['heavy-overcast', 30, 0, 12.85, 12.85],
    ['heavy-overcast', 60, 0, 28.62, 28.62],
  ] as const)(
    '%s, sun at %i°: beam %f, sky %f, global %f klx',
    (condition, altitudeDeg, beam, sky, global) => {
      const found = lightAt(condition, altitudeDeg);
      // 1 %, and half the last digit printed.
      expect(Math.abs(found.beamNormalLux / 1000 - beam)).toBeLessThan(0.01 * beam + 0.005);
      expect(Math.abs(found.diffuseHorizontalLux / 1000 / sky - 1)).toBeLessThan(0.01);
      expect(Math.abs(found.globalHorizontalLux / 1000 / global - 1)).toBeLessThan(0.01);
    },
  );

  test('the split at 30° by hand', () => {
    const sky = 144 * 76;
    const beam = 80 * 788 * 0.5;
    const found = lightAt('clear', 30).diffuseHorizontalLux / 46297;
    expect(Math.abs(found / (sky / (sky + beam)) - 1)).toBeLessThan(0.01); // table rounded to 1 W/m²
  });

  test('haze leaves the global light of turbidity 5 over turbidity 3', () => {
    // Ineichen and Perez 2002: exp(−0.0387 · 2 · air mass), air mass 1.9943 at 30°, 5.586 at 10°.
    for (const [altitudeDeg, airMass] of [
      [30, 1.9943],
      [10, 5.586],
      [2, 5.586],
      [-5, 5.586],
    ] as const) {
      const ratio =
        lightAt('haze', altitudeDeg).globalHorizontalLux /
        lightAt('clear', altitudeDeg).globalHorizontalLux;
      expect(ratio).toBeCloseTo(Math.exp(-0.0774 * airMass), 4);
    }
  });

  test('bright overcast is 0.524 × 1.11 of clear, without a beam', () => {
    const found = lightAt('bright-overcast', 30);
    expect(Math.abs(found.globalHorizontalLux / (46297 * 0.524 * 1.11) - 1)).toBeLessThan(0.001);
    expect(found).toMatchObject({ beamNormalLux: 0, clearBeamNormalLux: 0, sunShare: 0 });
  });
});

describe('broken cloud is two states', () => {
  test('the sun is either the clear sun or away, and its share of the minutes is RP-21’s', () => {
    // exp(−(0.80 − 0.21) m) with Kasten and Young's air masses.
    for (const [altitudeDeg, airMass] of [
      [10, 5.586],
      [30, 1.9943],
      [60, 1.154],
    ] as const) {
      const found = lightAt('broken-cloud', altitudeDeg);
      expect(found.clearBeamNormalLux).toBe(lightAt('clear', altitudeDeg).beamNormalLux);
      expect(found.sunShare).toBeCloseTo(Math.exp(-0.59 * airMass), 4);
      expect(found.beamNormalLux).toBeCloseTo(found.clearBeamNormalLux * found.sunShare, 6);
    }
  });
  test('a clear sky has its sun all the time, none of them after sunset', () => {
    expect(lightAt('clear', 20).sunShare).toBe(1);
    expect(SKY_CONDITIONS.map((condition) => lightAt(condition, -2).sunShare)).toEqual([
      0, 0, 0, 0, 0,
    ]);
    expect(lightAt('clear', -2).beamNormalLux).toBe(0);
  });
});

describe('low sun', () => {
  test('under 2.5° the beam falls as the air between takes it', () => {
    // Ineichen and Perez 2002, turbidity 3: exp(−0.18 m), its power 0.75 (our own choice), with
    // Kasten and Young's air masses.
    const at2 = lightAt('clear', 2).beamNormalLux;
    for (const [altitudeDeg, airMass] of [
      [1, 26.3106],
      [0, 37.9196],
    ] as const) {
      const fall = lightAt('clear', altitudeDeg).beamNormalLux / at2;
      expect(Math.abs(fall / Math.exp(-0.135 * (airMass - 19.4332)) - 1)).toBeLessThan(0.001);
    }
  });
  test('half a setting sun lights a face less than the sky does', () => {
    // A vertical half of a uniform sky is worth half its horizontal light: 0.5 · 759 lx.
    const beam = lightAt('clear', 0).beamNormalLux;
    expect(beam).toBeGreaterThan(0);
    expect(beam / 2).toBeLessThan(0.5 * 759);
  });
  test('the beam never rises as the sun sinks', () => {
    for (const condition of SKY_CONDITIONS) {
      for (let altitudeDeg = 60; altitudeDeg > -1; altitudeDeg -= 0.05) {
        const beam = (h: number): number =>
          daylightAt({ sun: liftedSun(h), condition, dayOfYear: 80, elevationM: 0 }).beamNormalLux;
        expect(beam(altitudeDeg - 0.05)).toBeLessThanOrEqual(beam(altitudeDeg));
      }
    }
  });
});

// Ineichen and Perez 2002 written out again here, turbidity 3, with Kasten and Young's air mass
// at the altitude and 79495 Pa at 2000 m (standard atmosphere).
const irradiance = (
  heightM: number,
  relativeMass: number,
  sine: number,
): { ghi: number; share: number } => {
  const mass = heightM === 0 ? relativeMass : (relativeMass * 79495) / 101325;
  const [fh1, fh2] = [Math.exp(-heightM / 8000), Math.exp(-heightM / 1250)];
  const ghi =
    (5.09e-5 * heightM + 0.868) *
    1364 *
    sine *
    Math.exp(-(3.92e-5 * heightM + 0.0387) * mass * (fh1 + 2 * fh2));
  const dni = 1364 * (0.664 + 0.163 / fh1) * Math.exp(-0.18 * mass);
  const lmPerW = 80; // direct sun at 30°, Littlefair 1988
  const dhi = ghi - dni * sine;
  return { ghi, share: (144 * dhi) / (144 * dhi + lmPerW * dni * sine) };
};
const skyShare = ({ diffuseHorizontalLux, globalHorizontalLux }: Daylight): number =>
  diffuseHorizontalLux / globalHorizontalLux;

describe('height above the sea', () => {
  const sea = irradiance(0, 1.9943, 0.5);
  const high = irradiance(2000, 1.9943, 0.5);

  test('at 2000 m and sun 30° the light gains as Ineichen and Perez say', () => {
    const gain =
      lightAt('clear', 30, 2000).globalHorizontalLux / lightAt('clear', 30).globalHorizontalLux;
    expect(Math.abs(gain / (high.ghi / sea.ghi) - 1)).toBeLessThan(0.001);
  });
  test('and so does the share of the sky in it', () => {
    const change = skyShare(lightAt('clear', 30, 2000)) / skyShare(lightAt('clear', 30));
    expect(Math.abs(change / (high.share / sea.share) - 1)).toBeLessThan(0.001);
  });
  test('below the sea the light is that at the sea', () => {
    expect(lightAt('haze', 25, -400)).toEqual(lightAt('haze', 25, 0));
  });
});

describe('moonlight', () => {
  const moon = { trueAltitudeDeg: 60, phaseAngleDeg: 0, horizontalParallaxDeg: 0.951 };
  const night = (condition: SkyCondition, sunDeg: number): Daylight =>
    daylightAt({ sun: sunAt(sunDeg), condition, dayOfYear: MEAN_DAY, elevationM: 0, moon });

  test('a full moon at 60° adds 0.216 lx to a clear night', () => {
    // Explanatory Supplement 1992, ch. 9.
    const gain =
      night('clear', -20).globalHorizontalLux - lightAt('clear', -20).globalHorizontalLux;
    expect(Math.abs(gain - 0.216)).toBeLessThan(0.001);
    expect(night('clear', -20).moonHorizontalLux).toBeCloseTo(gain, 9);
  });
  test('heavy cloud takes the same share of it as of daylight', () => {
    const share =
      night('heavy-overcast', -20).moonHorizontalLux / night('clear', -20).moonHorizontalLux;
    expect(share).toBeCloseTo(0.25 * 1.11, 6);
  });
  test('it counts only with the sun below −6°', () => {
    expect(night('clear', -5.9)).toEqual(lightAt('clear', -5.9));
  });
});

describe('laws', () => {
  const anyCondition = fc.constantFrom(...SKY_CONDITIONS);
  const anyHeight = fc.double({ min: -400, max: 5000, noNaN: true });
  const anyDay = fc.integer({ min: 1, max: 366 });

  test('global and sky light never rise as the sun sinks, nor fall by a quarter stop in 0.1°', () => {
    fc.assert(
      fc.property(
        anyCondition,
        anyHeight,
        anyDay,
        fc.double({ min: -20, max: 89.9, noNaN: true }),
        (condition, elevationM, dayOfYear, altitudeDeg) => {
          const place = { condition, elevationM, dayOfYear };
          const before = daylightAt({ ...place, sun: liftedSun(altitudeDeg) });
          const after = daylightAt({ ...place, sun: liftedSun(altitudeDeg - 0.1) });
          for (const key of ['globalHorizontalLux', 'diffuseHorizontalLux'] as const) {
            const fallStops = Math.log2(before[key] / after[key]);
            expect(fallStops).toBeGreaterThanOrEqual(-1e-12);
            expect(fallStops).toBeLessThan(0.25);
          }
        },
      ),
      {
        numRuns: 5000,
        examples: [
          ['clear', 1100, 80, 2.55],
          ['clear', 1100, 80, 1.6],
        ],
      },
    );
  });

  test('global light is sky light plus the beam on level ground', () => {
    fc.assert(
      fc.property(
        anyCondition,
        anyHeight,
        fc.double({ min: 0, max: 90, noNaN: true }),
        (condition, elevationM, altitudeDeg) => {
          const found = lightAt(condition, altitudeDeg, elevationM);
          const sum = found.diffuseHorizontalLux + found.beamNormalLux * sinDeg(altitudeDeg);
          expect(Math.abs(sum / found.globalHorizontalLux - 1)).toBeLessThan(1e-9);
          expect(found.beamNormalLux).toBeGreaterThanOrEqual(0);
          expect(found.diffuseHorizontalLux).toBeGreaterThan(0);
        },
      ),
      { numRuns: 1000 },
    );
  });
});
