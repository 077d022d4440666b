import { describe, expect, test } from 'vitest';
import { daylightAt } from '../../../src/core/daylight/daylight-at.ts';
import { SKY_CONDITIONS, type SkyCondition } from '../../../src/core/daylight/sky-condition.ts';
import { ev100FromLuminance } from '../../../src/core/exposure/exposure-value.ts';
import { conditionSky } from '../../../src/core/sky/condition-sky.ts';
import { generalSkyRelativeLuminance } from '../../../src/core/sky/general-sky.ts';
import { skyInFrame } from '../../../src/core/sky/sky-in-frame.ts';
import { refractionDeg } from '../../../src/core/sun-moon/refraction.ts';
import type { SunPosition } from '../../../src/core/sun-moon/sun-position.ts';
import { cosDeg, radFromDeg, sinDeg } from '../../../src/core/units/angle.ts';
import type { Direction } from '../../../src/core/units/direction.ts';
import { largestError } from '../../support/largest-error.ts';

/** Where 1 + 0.034 cos(2π(J − 2)/365) is 1. */
const DAY_OF_MEAN_DISTANCE = 93.25;

const sunAt = (trueAltitudeDeg: number): SunPosition => ({
  azimuthDeg: 250,
  trueAltitudeDeg,
  apparentAltitudeDeg: trueAltitudeDeg + refractionDeg(trueAltitudeDeg),
});

const skyAt = (trueAltitudeDeg: number, condition: SkyCondition): ((d: Direction) => number) =>
  conditionSky({
    sun: sunAt(trueAltitudeDeg),
    condition,
    dayOfYear: DAY_OF_MEAN_DISTANCE,
    elevationM: 0,
  });

/** Plain midpoint sum over a fine grid. */
const horizontalLux = (sky: (d: Direction) => number): number => {
  const stepDeg = 0.5;
  let sum = 0;
  for (let altitudeDeg = stepDeg / 2; altitudeDeg < 90; altitudeDeg += stepDeg) {
    for (let azimuthDeg = stepDeg / 2; azimuthDeg < 360; azimuthDeg += stepDeg) {
      sum += sky({ azimuthDeg, altitudeDeg }) * sinDeg(altitudeDeg) * cosDeg(altitudeDeg);
    }
  }
  return sum * radFromDeg(stepDeg) ** 2;
};

describe('the whole sky lights level ground with the diffuse illuminance of the condition, within 0.2 %', () => {
  const record = largestError('light of the whole sky, fine sum', '%', {
    quantity: 'light of the whole sky',
    method: 'each condition’s sky scaled to its diffuse light',
    comparedWith: 'a plain sum over half degrees, sun −15° to 89°, five conditions',
  });
  test.each(SKY_CONDITIONS)('%s', (condition) => {
    const errors = [-15, -6, -3, -2, -1, 0, 1, 2, 3, 3.9, 5, 8, 12, 20, 33, 45, 60, 75, 89].map(
      (altitudeDeg) => {
        const { diffuseHorizontalLux } = daylightAt({
          sun: sunAt(altitudeDeg),
          condition,
          dayOfYear: DAY_OF_MEAN_DISTANCE,
          elevationM: 0,
        });
        return Math.abs(horizontalLux(skyAt(altitudeDeg, condition)) / diffuseHorizontalLux - 1);
      },
    );
    errors.forEach((error) => expect(record(100 * error)).toBeLessThan(0.2));
  });
});

describe('clear sky around sunset, EV at ISO 100, as the published formulas give it by an independent script', () => {
  // ISO 15469 type 12 and Schaefer 1998 blended, level of the Explanatory Supplement, split of
  // Ineichen & Perez 2002; printed to 0.01.
  const toleranceStops = 0.05;
  const record = largestError('clear sky around sunset, independent script', 'stop', {
    quantity: 'clear sky around sunset',
    method: 'standard sky into twilight sky, sun 4° to −4°',
    comparedWith: 'the published formulas by an independent script, four directions',
  });
  test.each([
    { sun: 4, toward: 16.21, across: 13.1, away: 13.51, zenith: 11.51 },
    { sun: 2, toward: 15.21, across: 12.62, away: 12.83, zenith: 10.8 },
    { sun: 0, toward: 14.7, across: 11.71, away: 11.47, zenith: 9.4 },
    { sun: -2, toward: 12.85, across: 9.95, away: 9.23, zenith: 7.14 },
    { sun: -4, toward: 10.11, across: 7.42, away: 6.48, zenith: 4.36 },
  ])('sun at $sun°', ({ sun, toward, across, away, zenith }) => {
    const sky = skyAt(sun, 'clear');
    const evAt = (fromSunDeg: number, altitudeDeg: number): number =>
      ev100FromLuminance(sky({ azimuthDeg: 250 + fromSunDeg, altitudeDeg }));
    const errors = [
      evAt(0, 10) - toward,
      evAt(90, 10) - across,
      evAt(180, 10) - away,
      evAt(0, 90) - zenith,
    ];
    errors.forEach((error) => expect(record(error)).toBeLessThan(toleranceStops));
  });
});

describe('while the sun sinks from +8° to −12° no framed mean rises by more than 0.03 stop per quarter degree', () => {
  test.each(SKY_CONDITIONS)('%s', (condition) => {
    let steepest = -Infinity;
    for (const fromSunDeg of [0, 15, 60, 180]) {
      const framing = {
        bearingDeg: 250 + fromSunDeg,
        tiltDeg: 8,
        focalLengthMm: 50,
        sensorWidthMm: 36,
        sensorHeightMm: 24,
      };
      let before = Infinity;
      for (let altitudeDeg = 8; altitudeDeg >= -12; altitudeDeg -= 0.25) {
        const sky = skyAt(altitudeDeg, condition);
        const meanEv = skyInFrame({ sky, framing, skyline: [] })?.meanEv ?? NaN;
        steepest = Math.max(steepest, meanEv - before);
        before = meanEv;
      }
    }
    console.log(`${condition}: steepest rise ${steepest.toFixed(4)} stop`);
    expect(steepest).toBeLessThan(0.03);
  });
});

describe('an overcast keeps its standard sky through twilight, the sun held at the horizon', () => {
  test.each([
    ['bright-overcast', 4],
    ['heavy-overcast', 3],
  ] as const)('%s is type %i', (condition, type) => {
    const sky = skyAt(-9, condition);
    const atHorizon = { azimuthDeg: 250, trueAltitudeDeg: 0, apparentAltitudeDeg: 0 };
    for (const direction of [
      { azimuthDeg: 250, altitudeDeg: 12 },
      { azimuthDeg: 340, altitudeDeg: 4 },
      { azimuthDeg: 70, altitudeDeg: 50 },
    ]) {
      const ratio = sky(direction) / sky({ azimuthDeg: 0, altitudeDeg: 90 });
      const standard = generalSkyRelativeLuminance(type, atHorizon, direction);
      expect(ratio / standard).toBeCloseTo(1, 3);
    }
  });
});

test('from +4° up a clear sky is type 12, haze type 11, broken cloud type 7', () => {
  for (const [condition, type] of [
    ['clear', 12],
    ['haze', 11],
    ['broken-cloud', 7],
  ] as const) {
    const sky = skyAt(25, condition);
    const direction = { azimuthDeg: 290, altitudeDeg: 12 };
    const ratio = sky(direction) / sky({ azimuthDeg: 0, altitudeDeg: 90 });
    expect(ratio / generalSkyRelativeLuminance(type, sunAt(25), direction)).toBeCloseTo(1, 3);
  }
});

test('moonlight adds the same luminance everywhere, its own illuminance over π', () => {
  const input = {
    sun: sunAt(-14),
    condition: 'clear',
    dayOfYear: DAY_OF_MEAN_DISTANCE,
    elevationM: 0,
  } as const;
  const moon = { trueAltitudeDeg: 50, phaseAngleDeg: 20, horizontalParallaxDeg: 0.95 };
  const dark = conditionSky(input);
  const moonlit = conditionSky({ ...input, moon });
  const moonLux = daylightAt({ ...input, moon }).moonHorizontalLux;
  expect(moonLux).toBeGreaterThan(0.05);
  for (const direction of [
    { azimuthDeg: 250, altitudeDeg: 5 },
    { azimuthDeg: 100, altitudeDeg: 80 },
  ]) {
    expect((moonlit(direction) - dark(direction)) / (moonLux / Math.PI)).toBeCloseTo(1, 9);
  }
});

test('there is no sky below the level', () => {
  expect(skyAt(20, 'clear')({ azimuthDeg: 0, altitudeDeg: -0.1 })).toBeNaN();
});
