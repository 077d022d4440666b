import type { SunPosition } from '../sun-moon/sun-position.ts';
import { SUN_RADIUS_DEG } from '../sun-moon/sun-disc.ts';
import { sinDeg } from '../units/angle.ts';
import { relativeAirMass } from './air-mass.ts';
import { cloudlessLight } from './cloudless-light.ts';
import { moonlightLux, type MoonForLight } from './moonlight.ts';
import {
  SKY_CONDITION_TRAITS,
  type SkyCondition,
  type SkyConditionTraits,
} from './sky-condition.ts';
import { globalSpreadStops } from './spread.ts';

export type DaylightInput = {
  readonly sun: SunPosition;
  readonly condition: SkyCondition;
  /** 1 to 366. */
  readonly dayOfYear: number;
  /** Above sea level, up to 8000; below it the light is that at the sea. */
  readonly elevationM: number;
  /** Counts only with the sun's true altitude below −6°. */
  readonly moon?: MoonForLight | undefined;
};

export type Daylight = {
  /** On a plane facing the sun, the mean over minutes; 0 once the whole disc is down. */
  readonly beamNormalLux: number;
  /** The same in a minute when no cloud hides the sun; 0 under an overcast. */
  readonly clearBeamNormalLux: number;
  /** Share of minutes with sun, 0 to 1; 0 once the whole disc is down. */
  readonly sunShare: number;
  /** From the whole sky on level ground, moonlight included. */
  readonly diffuseHorizontalLux: number;
  /** Beam and sky on level ground, moonlight included. */
  readonly globalHorizontalLux: number;
  /** The moon's part of diffuse and global, to be spread evenly over the sky. */
  readonly moonHorizontalLux: number;
  /** ± round the global: eight of ten one-minute values lie inside. */
  readonly spreadStops: number;
};

/** Extinction of the beam by broken cloud less that by clear air, per air mass. [rp21] */
const BROKEN_CLOUD_EXTINCTION = 0.8 - 0.21;
/** True altitude of the sun under which moonlight counts. */
export const MOONLIGHT_BELOW_DEG = -6;

/**
 * Light of sun and sky at a place without obstacles, one of five sky conditions. Level
 * [explanatorySupplement1992], split [ineichenPerez2002] [littlefair1988], cloud
 * [kastenCzeplak1980] [perez1990] [rp21]. Global and diffuse without moonlight never rise
 * while the sun sinks.
 */
export const daylightAt = ({
  sun,
  condition,
  dayOfYear,
  elevationM,
  moon,
}: DaylightInput): Daylight => {
  const { beam, cloudFactor, linkeTurbidity } = SKY_CONDITION_TRAITS[condition];
  const { trueAltitudeDeg, apparentAltitudeDeg } = sun;
  const sunUp = apparentAltitudeDeg > -SUN_RADIUS_DEG;
  const cloudless = cloudlessLight({ sun, linkeTurbidity, dayOfYear, elevationM });
  const clearBeamNormalLux = beam !== 'none' && sunUp ? cloudless.beamNormalLux : 0;
  const sunShare = sunUp ? shareOfMinutesWithSun(beam, apparentAltitudeDeg) : 0;
  const beamNormalLux = clearBeamNormalLux * sunShare;

  const bySunLux = cloudless.globalLux * cloudFactor;
  const byBeamLux = beamNormalLux * Math.max(sinDeg(apparentAltitudeDeg), 0);
  const moonHorizontalLux =
    moon !== undefined && trueAltitudeDeg < MOONLIGHT_BELOW_DEG
      ? moonlightLux(moon) * cloudless.airFactor * cloudFactor
      : 0;
  return {
    beamNormalLux,
    clearBeamNormalLux,
    sunShare,
    diffuseHorizontalLux: bySunLux - byBeamLux + moonHorizontalLux,
    globalHorizontalLux: bySunLux + moonHorizontalLux,
    moonHorizontalLux,
    spreadStops: globalSpreadStops({ condition, sunTrueAltitudeDeg: trueAltitudeDeg }),
  };
};

const shareOfMinutesWithSun = (
  beam: SkyConditionTraits['beam'],
  apparentAltitudeDeg: number,
): number => {
  switch (beam) {
    case 'whole':
      return 1;
    case 'between-clouds':
      return Math.exp(-BROKEN_CLOUD_EXTINCTION * relativeAirMass(apparentAltitudeDeg));
    case 'none':
      return 0;
  }
};
