import type { SunPosition } from '../sun-moon/sun-position.ts';
import { sinDeg } from '../units/angle.ts';
import { relativeAirMass } from './air-mass.ts';
import { clearLevelLux, dayFactor } from './clear-level.ts';
import { clearDiffuseShare, clearIrradiance } from './diffuse-share.ts';

/** Turbidity that the level and its change with height are taken for. */
const CLEAR_LINKE_TURBIDITY = 3;
/** Under this the models are not asked how the light changes with turbidity or height. */
const LOWEST_MODEL_ALTITUDE_DEG = 10;
/** Under this the split between beam and sky is no longer asked how strong the beam is. */
const LOWEST_SPLIT_ALTITUDE_DEG = 2.5;
/** Power of the model's fall that the beam takes below: the most that lets the sky's light sink with the sun at every height. */
const LOW_BEAM_FALL = 0.75;
/** Under this the split's beam is past all bounds. */
const LOWEST_SPLIT_ANSWER_DEG = 0.1;
/** Coefficient of the global light in the air mass, per unit of turbidity. [ineichenPerez2002] */
const GLOBAL_EXTINCTION = 0.0387;

export type CloudlessLight = {
  /** Beam and sky on level ground. */
  readonly globalLux: number;
  /** Global light over that of clear air at sea level, the sun as high. */
  readonly airFactor: number;
  /** On a plane facing the sun, were its whole disc up: under the horizon the value there. */
  readonly beamNormalLux: number;
};

/**
 * Light of sun and sky without cloud: level [explanatorySupplement1992], its change with
 * turbidity and height [ineichenPerez2002], its split [ineichenPerez2002] [littlefair1988].
 */
export const cloudlessLight = (place: {
  readonly sun: SunPosition;
  readonly linkeTurbidity: number;
  /** 1 to 366. */
  readonly dayOfYear: number;
  /** Above sea level, up to 8000; below it the light is that at the sea. */
  readonly elevationM: number;
}): CloudlessLight => {
  const { trueAltitudeDeg, apparentAltitudeDeg } = place.sun;
  const air: Air = {
    linkeTurbidity: place.linkeTurbidity,
    elevationM: Math.max(place.elevationM, 0),
  };
  const airFactor = airFactorOnLevel(air, apparentAltitudeDeg);
  const globalLux = clearLevelLux(trueAltitudeDeg) * dayFactor(place.dayOfYear) * airFactor;
  return {
    globalLux,
    airFactor,
    beamNormalLux: cloudlessBeamLux(air, {
      apparentAltitudeDeg,
      cloudlessLux: globalLux,
      dayOfYear: place.dayOfYear,
    }),
  };
};

type Air = { readonly linkeTurbidity: number; readonly elevationM: number };

/** Global light of the cloudless sky over that of clear air at sea level. */
const airFactorOnLevel = ({ linkeTurbidity, elevationM }: Air, altitudeDeg: number): number => {
  const apparentAltitudeDeg = Math.max(altitudeDeg, LOWEST_MODEL_ALTITUDE_DEG);
  const hazeFactor =
    linkeTurbidity === CLEAR_LINKE_TURBIDITY
      ? 1
      : Math.exp(
          -GLOBAL_EXTINCTION *
            (linkeTurbidity - CLEAR_LINKE_TURBIDITY) *
            relativeAirMass(apparentAltitudeDeg),
        );
  if (elevationM === 0) return hazeFactor;
  const globalWm2 = (heightM: number): number =>
    clearIrradiance({
      apparentAltitudeDeg,
      linkeTurbidity: CLEAR_LINKE_TURBIDITY,
      elevationM: heightM,
    }).globalWm2;
  return (hazeFactor * globalWm2(elevationM)) / globalWm2(0);
};

/** Share of the sky in the cloudless global light, at a height above the sea. */
const diffuseShare = ({ linkeTurbidity, elevationM }: Air, apparentAltitudeDeg: number): number => {
  const shareAt = (altitudeDeg: number, heightM: number): number =>
    clearDiffuseShare({
      apparentAltitudeDeg: altitudeDeg,
      linkeTurbidity,
      elevationM: heightM,
    });
  const share = shareAt(apparentAltitudeDeg, 0);
  if (elevationM === 0) return share;
  const modelledDeg = Math.max(apparentAltitudeDeg, LOWEST_MODEL_ALTITUDE_DEG);
  return (share * shareAt(modelledDeg, elevationM)) / shareAt(modelledDeg, 0);
};

/**
 * What the split leaves to the beam. The model's sky light vanishes at the horizon and the
 * level does not, so that under 2.5° the rest would grow without bound: there the beam
 * falls from its value at 2.5° with the model's beam, and the sky keeps the difference.
 */
const cloudlessBeamLux = (
  air: Air,
  sun: {
    readonly apparentAltitudeDeg: number;
    readonly cloudlessLux: number;
    readonly dayOfYear: number;
  },
): number => {
  const altitudeDeg = sun.apparentAltitudeDeg;
  const splitBeamLux =
    altitudeDeg > LOWEST_SPLIT_ANSWER_DEG
      ? (sun.cloudlessLux * (1 - diffuseShare(air, altitudeDeg))) / sinDeg(altitudeDeg)
      : Infinity;
  if (altitudeDeg >= LOWEST_SPLIT_ALTITUDE_DEG) return splitBeamLux;
  const cloudlessThereLux =
    clearLevelLux(LOWEST_SPLIT_ALTITUDE_DEG) *
    dayFactor(sun.dayOfYear) *
    airFactorOnLevel(air, LOWEST_SPLIT_ALTITUDE_DEG);
  const beamThereLux =
    (cloudlessThereLux * (1 - diffuseShare(air, LOWEST_SPLIT_ALTITUDE_DEG))) /
    sinDeg(LOWEST_SPLIT_ALTITUDE_DEG);
  const beamWm2 = (apparentAltitudeDeg: number): number =>
    clearIrradiance({
      apparentAltitudeDeg,
      linkeTurbidity: air.linkeTurbidity,
      elevationM: air.elevationM,
    }).beamNormalWm2;
  return Math.min(
    splitBeamLux,
    beamThereLux * (beamWm2(altitudeDeg) / beamWm2(LOWEST_SPLIT_ALTITUDE_DEG)) ** LOW_BEAM_FALL,
  );
};
