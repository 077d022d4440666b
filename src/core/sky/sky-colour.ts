import type { Chromaticity } from '../colour/chromaticity.ts';
import { chromaticityOf, xyzOf } from '../colour/chromaticity.ts';
import { whiteOfKelvin } from '../colour/daylight-locus.ts';
import type { SkyCondition } from '../daylight/sky-condition.ts';
import { cosDeg, radFromDeg } from '../units/angle.ts';
import { angleBetweenDeg, type Direction } from '../units/direction.ts';
import { DISTRIBUTION, ZENITH } from './sky-colour.data.ts';

/** Below this the model ends; a sun lower than it keeps the colours of this altitude. [preetham1999] */
export const LOWEST_COLOURED_SUN_DEG = 0.5;
/** Directions nearer the horizon than this are taken at it. */
const LOWEST_DIRECTION_DEG = 0.5;

/** Overcast daylight, 5900 to 7500 K in published tables. [lightingPractice] */
const CLOUD_KELVIN = 6500;

/** Turbidity of the colours, and the share of the light that comes from cloud; both our choice. [lightingPractice] */
const COLOURED_BY: Readonly<Record<SkyCondition, { turbidity: number; cloudShare: number }>> = {
  clear: { turbidity: 3, cloudShare: 0 },
  haze: { turbidity: 6, cloudShare: 0 },
  'broken-cloud': { turbidity: 3, cloudShare: 0.5 },
  'bright-overcast': { turbidity: 3, cloudShare: 1 },
  'heavy-overcast': { turbidity: 3, cloudShare: 1 },
};

/** Chromaticity of the sky by direction; the model's luminance is not used. [preetham1999] */
export function skyColour(
  condition: SkyCondition,
  sun: { readonly azimuthDeg: number; readonly apparentAltitudeDeg: number },
): (direction: Direction) => Chromaticity {
  const { turbidity, cloudShare } = COLOURED_BY[condition];
  const cloud = whiteOfKelvin(CLOUD_KELVIN);
  if (cloudShare === 1) return () => cloud;
  const clear = clearSkyColour(turbidity, sun);
  if (cloudShare === 0) return clear;
  return (direction) => mixed(clear(direction), cloud, cloudShare);
}

/** The cloudless sky's chromaticity, turbidity 2 to 10. [preetham1999] */
export function clearSkyColour(
  turbidity: number,
  sun: { readonly azimuthDeg: number; readonly apparentAltitudeDeg: number },
): (direction: Direction) => Chromaticity {
  const sunAt: Direction = {
    azimuthDeg: sun.azimuthDeg,
    altitudeDeg: Math.max(LOWEST_COLOURED_SUN_DEG, sun.apparentAltitudeDeg),
  };
  const sunZenithDeg = 90 - sunAt.altitudeDeg;
  const of = (axis: 'x' | 'y'): ((zenithDeg: number, fromSunDeg: number) => number) => {
    const shape = distribution(axis, turbidity);
    const scale = zenithValue(axis, turbidity, sunZenithDeg) / shape(0, sunZenithDeg);
    return (zenithDeg, fromSunDeg) => scale * shape(zenithDeg, fromSunDeg);
  };
  const [x, y] = [of('x'), of('y')];
  return (direction) => {
    const held = {
      azimuthDeg: direction.azimuthDeg,
      altitudeDeg: Math.max(LOWEST_DIRECTION_DEG, direction.altitudeDeg),
    };
    const zenithDeg = 90 - held.altitudeDeg;
    const fromSunDeg = angleBetweenDeg(held, sunAt);
    return { x: x(zenithDeg, fromSunDeg), y: y(zenithDeg, fromSunDeg) };
  };
}

/** (1 + A e^(B/cos θ))(1 + C e^(Dγ) + E cos² γ), γ in radians. [preetham1999] */
function distribution(
  axis: 'x' | 'y',
  turbidity: number,
): (zenithDeg: number, fromSunDeg: number) => number {
  const [a, b, c, d, e] = DISTRIBUTION[axis].map(
    ([slope, offset]) => slope * turbidity + offset,
  ) as [number, number, number, number, number];
  return (zenithDeg, fromSunDeg) =>
    (1 + a * Math.exp(b / cosDeg(zenithDeg))) *
    (1 + c * Math.exp(d * radFromDeg(fromSunDeg)) + e * cosDeg(fromSunDeg) ** 2);
}

function zenithValue(axis: 'x' | 'y', turbidity: number, sunZenithDeg: number): number {
  const z = radFromDeg(sunZenithDeg);
  const powers = [turbidity ** 2, turbidity, 1];
  return ZENITH[axis].reduce(
    (sum, [cubed, squared, plain, constant], row) =>
      sum + (powers[row] ?? NaN) * (cubed * z ** 3 + squared * z ** 2 + plain * z + constant),
    0,
  );
}

/** Two lights of one luminance share, added as light. */
const mixed = (one: Chromaticity, other: Chromaticity, otherShare: number): Chromaticity => {
  const [first, second] = [xyzOf(one, 1 - otherShare), xyzOf(other, otherShare)];
  return chromaticityOf([first[0] + second[0], first[1] + second[1], first[2] + second[2]]);
};
