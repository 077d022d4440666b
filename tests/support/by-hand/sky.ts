import { arccos, cos, cosBetween, sin, type Toward } from './degrees.ts';
import type { HandCondition } from './daylight.ts';
import type { SunThere } from './sun.ts';

/** Luminance, cd/m², of a direction above the horizon. */
export type SkyThere = (toward: Toward) => number;

/** Rows of the CIE Standard General Sky (ISO 15469:2004): a, b, c, d, e. */
const TYPES: Readonly<Record<HandCondition, readonly [number, number, number, number, number]>> = {
  clear: [-1, -0.32, 10, -3, 0.45],
  'broken-cloud': [0, -1, 5, -2.5, 0.3],
};

/** The standard sky's shape, gradation times indicatrix. [ISO 15469:2004] */
export function standardShape(condition: HandCondition, sun: Toward, toward: Toward): number {
  const [a, b, c, d, e] = TYPES[condition];
  const chi = (arccos(cosBetween(sun, toward)) * Math.PI) / 180;
  const gradation = 1 + a * Math.exp(b / sin(toward.altitude));
  const indicatrix =
    1 + c * (Math.exp(d * chi) - Math.exp((d * Math.PI) / 2)) + e * Math.cos(chi) ** 2;
  return gradation * indicatrix;
}

/** Extinction per air mass, and magnitudes of the sun and of the full moon's zero point. */
const EXTINCTION = 0.25;
const SUN_OVER_ZERO = -26.74 + 11.05;

/**
 * The twilight shape of B. E. Schaefer, 'To the visual limits', Sky & Telescope 95(5) (1998) 57:
 * of its twilight and its daylight the smaller; the level goes by the true altitude, the angle from
 * the sun is held at 10° or more in the twilight.
 */
export function twilightShape(sun: Toward, trueAltitude: number, toward: Toward): number {
  const zenithAngle = 90 - toward.altitude;
  const mass = 1 / (cos(zenithAngle) + 0.025 * Math.exp(-11 * cos(zenithAngle)));
  const gathered = 1 - 10 ** (-0.4 * EXTINCTION * mass);
  const fromSun = arccos(cosBetween(sun, toward));
  const twilight =
    10 ** (-0.4 * (SUN_OVER_ZERO + 32.5 - trueAltitude - zenithAngle / (360 * EXTINCTION))) *
    (100 / Math.max(10, fromSun));
  const sunMass =
    sun.altitude > 0 ? 1 / (sin(sun.altitude) + 0.025 * Math.exp(-11 * sin(sun.altitude))) : 40;
  const passed = 10 ** (-0.4 * EXTINCTION * sunMass);
  const scattered =
    6.2e7 / fromSun ** 2 + 10 ** (6.15 - fromSun / 40) + 10 ** 5.36 * (1.06 + cos(fromSun) ** 2);
  const day =
    10 ** (-0.4 * (SUN_OVER_ZERO + 43.27)) * (scattered * passed + 440_000 * (1 - passed));
  return gathered * Math.min(twilight, day);
}

/** From the twilight shape at true −4° to the standard sky at +4°, a geometric mean between. */
function shape(condition: HandCondition, there: SunThere): (toward: Toward) => number {
  const sun = { azimuth: there.azimuth, altitude: there.apparentAltitude };
  const x = Math.min(1, Math.max(0, (there.trueAltitude + 4) / 8));
  const weight = x * x * (3 - 2 * x);
  return (toward) =>
    (weight === 0 ? 1 : standardShape(condition, sun, toward) ** weight) *
    (weight === 1 ? 1 : twilightShape(sun, there.trueAltitude, toward) ** (1 - weight));
}

/** The shape scaled so that its horizontal integral is the diffuse illuminance. */
export function skyThere(condition: HandCondition, sun: SunThere, diffuseLux: number): SkyThere {
  const relative = shape(condition, sun);
  const step = 0.5;
  let horizontal = 0;
  for (let altitude = step / 2; altitude < 90; altitude += step)
    for (let azimuth = step / 2; azimuth < 360; azimuth += step)
      horizontal += relative({ azimuth, altitude }) * sin(altitude) * cos(altitude);
  const scale = diffuseLux / (horizontal * ((step * Math.PI) / 180) ** 2);
  return (toward) => scale * relative(toward);
}
