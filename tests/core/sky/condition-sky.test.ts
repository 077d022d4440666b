import { describe, expect, test } from 'vitest';
import { daylightAt } from '../../../src/core/daylight/daylight-at.ts';
import { SKY_CONDITIONS, type SkyCondition } from '../../../src/core/daylight/sky-condition.ts';
import { ev100FromLuminance } from '../../../src/core/exposure/exposure-value.ts';
import { conditionSky } from '../../../src/core/sky/condition-sky.ts';
import { refractionDeg } from '../../../src/core/sun-moon/refraction.ts';
import type { SunPosition } from '../../../src/core/sun-moon/sun-position.ts';
import { cosDeg, radFromDeg, sinDeg } from '../../../src/core/units/angle.ts';
import type { Direction } from '../../../src/core/units/direction.ts';

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
  test.each(SKY_CONDITIONS)('%s', (condition) => {
    let worst = 0;
    for (const altitudeDeg of [-15, -6, -4, -3, -2, -1, 0, 1, 2, 3, 3.9, 4, 6, 8, 12, 20, 33, 45, 60, 75, 89]) {
      const daylight = daylightAt({
        sun: sunAt(altitudeDeg),
        condition,
        dayOfYear: DAY_OF_MEAN_DISTANCE,
        elevationM: 0,
      });
      const error = horizontalLux(skyAt(altitudeDeg, condition)) / daylight.diffuseHorizontalLux - 1;
      if (Math.abs(error) > Math.abs(worst)) console.log(condition, altitudeDeg, error);
      worst = Math.abs(error) > Math.abs(worst) ? error : worst;
    }
    console.log(`${condition}: largest error ${(100 * worst).toFixed(3)} %`);
    expect(Math.abs(worst)).toBeLessThan(0.002);
  });
});

describe('clear sky around sunset, EV at ISO 100, computed from the quoted formulas by hand of others', () => {
  test.each([
    { sun: 4, toward: 16.21, across: 13.1, away: 13.51, zenith: 11.51 },
    { sun: 2, toward: 15.21, across: 12.62, away: 12.83, zenith: 10.8 },
    { sun: 0, toward: 14.7, across: 11.71, away: 11.47, zenith: 9.4 },
    { sun: -2, toward: 12.85, across: 9.95, away: 9.23, zenith: 7.14 },
    { sun: -4, toward: 10.11, across: 7.42, away: 6.48, zenith: 4.36 },
  ])('sun at $sun°', ({ sun, toward, across, away, zenith }) => {
    const sky = skyAt(sun, 'clear');
    const evAt = (azimuthFromSunDeg: number, altitudeDeg = 10): number =>
      ev100FromLuminance(sky({ azimuthDeg: 250 + azimuthFromSunDeg, altitudeDeg }));
    console.log(sun, evAt(0)-toward, evAt(90)-across, evAt(180)-away, evAt(0,90)-zenith);
    expect(Math.abs(evAt(0) - toward)).toBeLessThan(0.05);
    expect(Math.abs(evAt(90) - across)).toBeLessThan(0.05);
    expect(Math.abs(evAt(180) - away)).toBeLessThan(0.05);
    expect(Math.abs(evAt(0, 90) - zenith)).toBeLessThan(0.05);
  });
});
