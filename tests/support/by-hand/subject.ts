import { cos, cosBetween, sin, type Toward } from './degrees.ts';
import type { SkyThere } from './sky.ts';

export type SubjectThere = {
  readonly plane: number;
  readonly dome: number;
  readonly ground: number;
};

/** Illuminance to EV at ISO 100 on a flat receptor, C 250 (ISO 2720). */
export const evOfPlane = (lux: number): number => Math.log2((lux * 100) / 250);
/** The same under a dome, C 330 (ISO 2720). */
export const evOfDome = (lux: number): number => Math.log2((lux * 100) / 330);

/** Half the sun's disc in degrees, as the share of the disc above the skyline counts it. */
const HALF_DISC = 0.27;
const AZIMUTH_STEP = 1;
const ALTITUDES = 180;

/**
 * Lux on a flat receptor facing the camera, on a dome facing it (half of one plus the cosine), and
 * on level ground; what is not sky has the luminance reflectance × ground ÷ π, the beam as much of
 * the disc as stands above the skyline.
 */
export function subjectThere(
  facing: number,
  reflectance: number,
  skyline: (azimuth: number) => number,
  sky: SkyThere,
  sun: Toward,
  beamNormalLux: number,
): SubjectThere {
  const axis = { azimuth: facing, altitude: 0 };
  const fromSky = { plane: 0, dome: 0, ground: 0 };
  const notSky = { plane: 0, dome: 0 };
  for (let azimuth = AZIMUTH_STEP / 2; azimuth < 360; azimuth += AZIMUTH_STEP) {
    const edge = Math.max(0, skyline(azimuth));
    for (const [low, high, isSky] of [
      [edge, 90, true],
      [-90, edge, false],
    ] as const) {
      const step = (high - low) / ALTITUDES;
      for (let at = 0; at < ALTITUDES; at += 1) {
        const altitude = low + (at + 0.5) * step;
        const piece = cos(altitude) * ((step * AZIMUTH_STEP * Math.PI ** 2) / 180 ** 2);
        const gamma = cosBetween(axis, { azimuth, altitude });
        const cdM2 = isSky ? sky({ azimuth, altitude }) : 1;
        const into = isSky ? fromSky : notSky;
        into.plane += cdM2 * Math.max(0, gamma) * piece;
        into.dome += (cdM2 * (1 + gamma) * piece) / 2;
        if (isSky) fromSky.ground += cdM2 * sin(altitude) * piece;
      }
    }
  }
  const beam = beamNormalLux * discShare(skyline, sun);
  const gammaSun = cosBetween(axis, sun);
  const ground = fromSky.ground + beam * Math.max(0, sin(sun.altitude));
  const reflected = (reflectance * ground) / Math.PI;
  return {
    plane: beam * Math.max(0, gammaSun) + fromSky.plane + reflected * notSky.plane,
    dome: (beam * (1 + gammaSun)) / 2 + fromSky.dome + reflected * notSky.dome,
    ground,
  };
}

/** Share of the sun's disc above the skyline, linear over its width. */
export function discShare(skyline: (azimuth: number) => number, sun: Toward): number {
  const above = sun.altitude - Math.max(0, skyline(sun.azimuth));
  return Math.min(1, Math.max(0, (above + HALF_DISC) / (2 * HALF_DISC)));
}
