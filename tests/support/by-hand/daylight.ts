import { sin } from './degrees.ts';
import type { SunThere } from './sun.ts';

export type DaylightThere = {
  /** Lux; the mean over minutes where clouds pass before the sun. */
  readonly beamNormal: number;
  readonly diffuse: number;
  readonly global: number;
  /** Lux of the beam while the sun is out between the clouds. */
  readonly beamSunOut: number;
  /** Share of minutes with the sun out. */
  readonly sunShare: number;
  /** ± stops of the global. */
  readonly spread: number;
};

/** The conditions that the hand computation covers. */
export type HandCondition = 'clear' | 'broken-cloud';

/**
 * Explanatory Supplement to the Astronomical Almanac (1992), p. 490-493: log10 lux, cubic in the
 * sun's true altitude over 90.
 */
const CUBICS: readonly (readonly [
  from: number,
  ...l: readonly [number, number, number, number],
])[] = [
  [20, 3.74, 3.97, -4.07, 1.47],
  [5, 3.05, 13.28, -45.98, 64.33],
  [-0.8, 2.88, 22.26, -207.64, 1034.3],
  [-5, 2.88, 21.81, -258.11, -858.36],
  [-12, 2.7, 12.17, -431.69, -1899.83],
  [-18, 13.84, 262.72, 1447.42, 2797.93],
];

export function clearGlobal(trueAltitude: number): number {
  const held = Math.max(trueAltitude, -18);
  for (const [from, l0, l1, l2, l3] of CUBICS) {
    if (held < from) continue;
    const x = held / 90;
    return 10 ** (l0 + l1 * x + l2 * x ** 2 + l3 * x ** 3);
  }
  throw new Error('no row of the cubic reaches so low');
}

/** The sun's distance over the year, IES RP-21 (1984). */
const dayFactor = (dayOfYear: number): number =>
  1 + 0.034 * Math.cos((2 * Math.PI * (dayOfYear - 2)) / 365);

/** Kasten & Young, Applied Optics 28 (1989) 4735; apparent altitude. */
export const airMass = (altitude: number): number =>
  1 / (sin(altitude) + 0.50572 * (altitude + 6.07995) ** -1.6364);

/** Pressure of the standard atmosphere at a height, hPa, over that at sea level. */
const pressureRatio = (heightM: number): number =>
  ((44331.514 - heightM) / 11880.516) ** (1 / 0.1902632) / 1013.25;

/** Clear sky of Ineichen & Perez, Solar Energy 73 (2002) 151, Linke turbidity 3; W/m². */
export function clearSkyWatts(
  altitude: number,
  heightM: number,
  mass: number = airMass(altitude) * pressureRatio(heightM),
): { ghi: number; dni: number; dhi: number } {
  const turbidity = 3;
  const outside = 1364;
  const fh1 = Math.exp(-heightM / 8000);
  const fh2 = Math.exp(-heightM / 1250);
  const cg1 = 5.09e-5 * heightM + 0.868;
  const cg2 = 3.92e-5 * heightM + 0.0387;
  const ghi = cg1 * outside * sin(altitude) * Math.exp(-cg2 * mass * (fh1 + fh2 * (turbidity - 1)));
  const dni = Math.min(
    outside * (0.664 + 0.163 / fh1) * Math.exp(-0.09 * mass * (turbidity - 1)),
    (ghi * (1 - (0.1 - 0.2 * Math.exp(-turbidity)) / (0.1 + 0.882 / fh1))) / sin(altitude),
  );
  return { ghi, dni, dhi: ghi - dni * sin(altitude) };
}

/** Littlefair, Lighting Research & Technology 20 (1988) 177: lumens per watt, sky 144, sun 70 to 95. */
function diffuseShareAt(altitude: number, heightM: number): number {
  const { dni, dhi } = clearSkyWatts(altitude, heightM);
  const sunEfficacy = 70 + (25 * (Math.min(60, Math.max(10, altitude)) - 10)) / 50;
  const sky = 144 * dhi;
  return sky / (sky + sunEfficacy * dni * sin(altitude));
}

/** 6 oktas of Kasten & Czeplak 1980, times the efficacy of light under broken cloud over clear. */
const BROKEN_GLOBAL = 0.718 * 1.04;

export function daylightThere(
  sun: SunThere,
  condition: HandCondition,
  dayOfYear: number,
  heightM: number,
): DaylightThere {
  const { trueAltitude, apparentAltitude: h } = sun;
  const up = h > 0;
  const high = Math.max(h, 10);
  const atHeight = (of: (altitude: number, metres: number) => number): number =>
    of(high, heightM) / of(high, 0);
  const level =
    clearGlobal(trueAltitude) *
    dayFactor(dayOfYear) *
    atHeight((altitude, metres) => clearSkyWatts(altitude, metres).ghi);
  const share = up ? Math.min(1, diffuseShareAt(h, 0) * atHeight(diffuseShareAt)) : 1;
  const clearBeam = up ? (level * (1 - share)) / sin(h) : 0;
  const scatter = condition === 'clear' ? (h < 10 ? 0.5 : 0.3) : 1;
  const spread = trueAltitude < -2 ? Math.max(0.7, scatter) : scatter;
  if (condition === 'clear')
    return {
      beamNormal: clearBeam,
      diffuse: level * share,
      global: level,
      beamSunOut: clearBeam,
      sunShare: up ? 1 : 0,
      spread,
    };
  const sunShare = up ? Math.exp(-0.59 * airMass(h)) : 0;
  const beamNormal = clearBeam * sunShare;
  const global = level * BROKEN_GLOBAL;
  const diffuse = global - (up ? beamNormal * sin(h) : 0);
  return { beamNormal, diffuse, global, beamSunOut: clearBeam, sunShare, spread };
}
