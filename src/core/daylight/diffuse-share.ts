import { sinDeg } from '../units/angle.ts';
import { pressureRatio, relativeAirMass } from './air-mass.ts';

type ClearSky = {
  readonly apparentAltitudeDeg: number;
  /** At air mass 2; 3 is clear temperate air, 5 summer haze. */
  readonly linkeTurbidity: number;
  readonly elevationM: number;
};

export type ClearIrradiance = {
  readonly globalWm2: number;
  readonly beamNormalWm2: number;
  readonly diffuseWm2: number;
};

const SOLAR_CONSTANT_WM2 = 1364;

/**
 * Irradiance under a clear sky, for an air mass corrected for pressure. With the sun on or
 * under the horizon global and diffuse are 0. [ineichenPerez2002]
 */
export const clearIrradianceAt = (atmosphere: {
  readonly sinAltitude: number;
  readonly absoluteAirMass: number;
  readonly linkeTurbidity: number;
  readonly elevationM: number;
}): ClearIrradiance => {
  const { absoluteAirMass, linkeTurbidity, elevationM } = atmosphere;
  const sinAltitude = Math.max(atmosphere.sinAltitude, 0);
  const fh1 = Math.exp(-elevationM / 8000);
  const fh2 = Math.exp(-elevationM / 1250);
  const cg1 = 5.09e-5 * elevationM + 0.868;
  const cg2 = 3.92e-5 * elevationM + 0.0387;
  const globalOverSine =
    cg1 *
    SOLAR_CONSTANT_WM2 *
    Math.exp(-cg2 * absoluteAirMass * (fh1 + fh2 * (linkeTurbidity - 1)));
  const beamNormalWm2 = Math.min(
    SOLAR_CONSTANT_WM2 *
      (0.664 + 0.163 / fh1) *
      Math.exp(-0.09 * absoluteAirMass * (linkeTurbidity - 1)),
    globalOverSine * (1 - (0.1 - 0.2 * Math.exp(-linkeTurbidity)) / (0.1 + 0.882 / fh1)),
  );
  return {
    globalWm2: globalOverSine * sinAltitude,
    beamNormalWm2,
    diffuseWm2: (globalOverSine - beamNormalWm2) * sinAltitude,
  };
};

/** The same from the sun's apparent altitude, 0 to 90. [ineichenPerez2002] */
export const clearIrradiance = (sky: ClearSky): ClearIrradiance =>
  clearIrradianceAt({
    sinAltitude: sinDeg(sky.apparentAltitudeDeg),
    absoluteAirMass: relativeAirMass(sky.apparentAltitudeDeg) * pressureRatio(sky.elevationM),
    linkeTurbidity: sky.linkeTurbidity,
    elevationM: sky.elevationM,
  });

/** Luminous efficacy of the light of a clear sky without its sun. [littlefair1988] */
export const CLEAR_DIFFUSE_LM_PER_W = 144;

/** Luminous efficacy of direct sun: 70 at 10°, linear to 95 at 60°, held outside. [littlefair1988] */
export const directLmPerW = (apparentAltitudeDeg: number): number =>
  70 + (25 * (Math.min(Math.max(apparentAltitudeDeg, 10), 60) - 10)) / 50;

/**
 * Share of the sky in the global horizontal illuminance under a clear sky, 0 to 1; 1 with the
 * sun on or under the horizon. [ineichenPerez2002] [littlefair1988]
 */
export const clearDiffuseShare = (sky: ClearSky): number => {
  const sinAltitude = sinDeg(sky.apparentAltitudeDeg);
  if (sinAltitude <= 0) return 1;
  const { beamNormalWm2, diffuseWm2 } = clearIrradiance(sky);
  const diffuseLux = CLEAR_DIFFUSE_LM_PER_W * diffuseWm2;
  const beamLux = directLmPerW(sky.apparentAltitudeDeg) * beamNormalWm2 * sinAltitude;
  return diffuseLux / (diffuseLux + beamLux);
};
