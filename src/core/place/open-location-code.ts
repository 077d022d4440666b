import { wrapDeg180 } from '../units/angle.ts';
import { fail, ok, type Result } from '../units/result.ts';
import type { CoordinatesProblem } from './coordinates-text.ts';
import type { GeoPoint } from './geo-point.ts';

/** The rectangle that a code names: its middle and its sides. */
export type CodeArea = {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly heightDeg: number;
  readonly widthDeg: number;
};

const DIGITS = '23456789CFGHJMPQRVWX';
const DIGIT = `[${DIGITS}]`;
const FULL = new RegExp(
  `^[2-9C][2-9CFGHJMPQRV](?:${DIGIT}{6}\\+(?:${DIGIT}{2,})?|${DIGIT}{4}00\\+|${DIGIT}{2}0000\\+|000000\\+)$`,
);
const SHORT = new RegExp(`^(?:(?:${DIGIT}{2}){1,3}\\+(?:${DIGIT}{2,})?|\\+${DIGIT}{2,})$`);

/** Codes count in whole steps of the smallest area, 15 digits, so that nothing is lost to rounding. */
const LATITUDE_STEPS_PER_DEG = 25_000_000;
const LONGITUDE_STEPS_PER_DEG = 8_192_000;
const PAIR_DIGITS = 10;
const MOST_DIGITS = 15;
const FULL_PLACES = 8;

/** Whether a text is made as a code is, full or short; letters of either case. [openLocationCode] */
export const isOpenLocationCode = (text: string): boolean =>
  FULL.test(text.toUpperCase()) || isShortCode(text);

export const isShortCode = (text: string): boolean => SHORT.test(text.toUpperCase());

/**
 * The area of a code. A short one, which leaves its first two to eight digits out, is the nearest
 * of its kind to a place nearby. [openLocationCode]
 */
export function openLocationCodeArea(
  text: string,
  near: GeoPoint | null,
): Result<CodeArea, CoordinatesProblem> {
  const code = text.trim().toUpperCase();
  if (FULL.test(code)) return ok(areaOf(code));
  if (!SHORT.test(code))
    return fail({
      found: `“${text.trim().slice(0, 40)}”`,
      expected: 'an open location code such as 8FVC9G8F+6X',
    });
  return near === null
    ? fail({
        found: `the short code ${code}`,
        expected: 'the full code, or a place nearby to complete it',
      })
    : ok(nearestArea(code, near));
}

function areaOf(code: string): CodeArea {
  const digits = code.replace(/[+0]/g, '').slice(0, MOST_DIGITS);
  let southSteps = -90 * LATITUDE_STEPS_PER_DEG;
  let westSteps = -180 * LONGITUDE_STEPS_PER_DEG;
  let heightSteps = 400 * LATITUDE_STEPS_PER_DEG;
  let widthSteps = 400 * LONGITUDE_STEPS_PER_DEG;
  for (let at = 0; at < digits.length;) {
    const value = DIGITS.indexOf(digits.charAt(at));
    if (at < PAIR_DIGITS) {
      heightSteps /= 20;
      widthSteps /= 20;
      southSteps += value * heightSteps;
      westSteps += DIGITS.indexOf(digits.charAt(at + 1)) * widthSteps;
      at += 2;
    } else {
      heightSteps /= 5;
      widthSteps /= 4;
      southSteps += Math.floor(value / 4) * heightSteps;
      westSteps += (value % 4) * widthSteps;
      at += 1;
    }
  }
  return {
    latitudeDeg: (southSteps + heightSteps / 2) / LATITUDE_STEPS_PER_DEG,
    longitudeDeg: (westSteps + widthSteps / 2) / LONGITUDE_STEPS_PER_DEG,
    heightDeg: heightSteps / LATITUDE_STEPS_PER_DEG,
    widthDeg: widthSteps / LONGITUDE_STEPS_PER_DEG,
  };
}

function nearestArea(shortCode: string, near: GeoPoint): CodeArea {
  const missing = FULL_PLACES - shortCode.indexOf('+');
  const cellDeg = 20 ** (2 - missing / 2);
  const area = areaOf(firstDigits(near, missing) + shortCode);
  const northDeg = near.latitudeDeg - area.latitudeDeg;
  const shifted =
    Math.abs(northDeg) > cellDeg / 2
      ? area.latitudeDeg + Math.sign(northDeg) * cellDeg
      : area.latitudeDeg;
  const eastDeg = wrapDeg180(near.longitudeDeg - area.longitudeDeg);
  return {
    ...area,
    latitudeDeg: Math.abs(shifted) <= 90 ? shifted : area.latitudeDeg,
    longitudeDeg:
      Math.abs(eastDeg) > cellDeg / 2
        ? wrapDeg180(area.longitudeDeg + Math.sign(eastDeg) * cellDeg)
        : area.longitudeDeg,
  };
}

/** The first 2 to 8 digits of the code round a place. */
function firstDigits({ latitudeDeg, longitudeDeg }: GeoPoint, count: number): string {
  const north = Math.min(latitudeDeg + 90, 180 - 1 / LATITUDE_STEPS_PER_DEG);
  const east = (wrapDeg180(longitudeDeg) + 180) % 360;
  return Array.from({ length: count / 2 }, (_, pair) => {
    const cellDeg = 20 ** (1 - pair);
    return [north, east].map((angleDeg) => DIGITS.charAt(Math.floor(angleDeg / cellDeg) % 20));
  })
    .flat()
    .join('');
}
