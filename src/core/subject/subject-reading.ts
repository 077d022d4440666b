import { discShareAbove } from '../skyline/skyline.ts';
import type { SunPosition } from '../sun-moon/sun-position.ts';
import { cosDeg, radFromDeg, sinDeg } from '../units/angle.ts';
import type { SubjectSamples } from './subject-samples.ts';

/** Light by the sky alone, nothing reflected. */
export type Skylight = {
  readonly groundLux: number;
  readonly planeLux: number;
  readonly domeLux: number;
};

export type SubjectIlluminance = {
  /** On a flat receptor at the face, turned to the camera. */
  readonly planeLux: number;
  /** On a dome at the face, turned to the camera. */
  readonly domeLux: number;
  /** On level ground. */
  readonly groundLux: number;
  /** Share of the sun's disc above the skyline, 0 to 1. */
  readonly discShare: number;
  /** Parts that the sun's beam has in plane and dome: what a panel in it keeps off the subject. */
  readonly beamPlaneLux: number;
  readonly beamDomeLux: number;
};

export const readSkylight = (
  { groundWeight, planeWeight, domeWeight, directions }: SubjectSamples,
  luminanceCdM2: Float64Array,
): Skylight => {
  let groundLux = 0;
  let planeLux = 0;
  let domeLux = 0;
  for (let at = 0; at < directions.length; at += 1) {
    const luminance = luminanceCdM2[at] ?? NaN;
    groundLux += luminance * (groundWeight[at] ?? NaN);
    planeLux += luminance * (planeWeight[at] ?? NaN);
    domeLux += luminance * (domeWeight[at] ?? NaN);
  }
  return { groundLux, planeLux, domeLux };
};

/** Skylight, the beam of the sun where it stands above the skyline, and what the ground gives back. */
export const withBeam = (
  samples: SubjectSamples,
  skylight: Skylight,
  light: {
    readonly sun: SunPosition;
    readonly beamNormalLux: number;
    /** 0 to 1, of everything that is not sky. */
    readonly groundReflectance: number;
  },
): SubjectIlluminance => {
  const { sun } = light;
  const altitudeDeg = sun.apparentAltitudeDeg;
  const skylineDeg = Math.max(0, samples.skylineAltitude(sun.azimuthDeg));
  const discShare = discShareAbove(sun, skylineDeg);
  const beamLux = light.beamNormalLux * discShare;
  const cosineFromAxis = cosDeg(altitudeDeg) * cosDeg(sun.azimuthDeg - samples.scene.facingDeg);
  const beamPlaneLux = beamLux * Math.max(0, cosineFromAxis);
  const beamDomeLux = (beamLux * (1 + cosineFromAxis)) / 2;
  const groundLux = beamLux * Math.max(0, sinDeg(altitudeDeg)) + skylight.groundLux;
  const restCdM2 = (light.groundReflectance * groundLux) / radFromDeg(180);
  return {
    planeLux: beamPlaneLux + skylight.planeLux + restCdM2 * samples.planeWeightOfRest,
    domeLux: beamDomeLux + skylight.domeLux + restCdM2 * samples.domeWeightOfRest,
    groundLux,
    discShare,
    beamPlaneLux,
    beamDomeLux,
  };
};
