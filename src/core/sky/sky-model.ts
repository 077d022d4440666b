import { SKY_CONDITION_TRAITS, type SkyCondition } from '../daylight/sky-condition.ts';
import { cosDeg, radFromDeg, sinDeg } from '../units/angle.ts';
import type { Direction } from '../units/direction.ts';
import { unitVector } from './framing.ts';
import { gaussLegendre, onSpan } from './gauss-legendre.ts';
import { GENERAL_SKIES, type GeneralSky } from './general-sky.data.ts';
import { gradation, indicatrixOf } from './general-sky.ts';
import { tabulatedByAngle } from './tabulated-by-angle.ts';
import { glowTowards, scatteredShare } from './twilight-sky.ts';

/** What of a condition's sky does not change with the sun. */
export type SkyModel = {
  readonly standard: GeneralSky;
  /** By the angle from the sun. */
  readonly indicatrixTable: Float64Array;
  readonly takesTwilightShape: boolean;
  /** Half the sky, from the sun's azimuth, at 0, to the opposite one. */
  readonly quadrature: {
    readonly points: SkyPoints;
    /** Times luminance, summed: illuminance of level ground by the whole sky. */
    readonly horizontalWeight: Float64Array;
  };
};

/** Directions as unit vectors, with the factors of luminance that depend on altitude alone. */
export type SkyPoints = {
  readonly count: number;
  readonly east: Float64Array;
  readonly north: Float64Array;
  readonly up: Float64Array;
  readonly gradation: Float64Array;
  /** `scatteredShare`, alone and times `glowTowards`. */
  readonly scattered: Float64Array;
  readonly glowing: Float64Array;
};

const ALTITUDES = 12;
const AZIMUTHS = 14;

export const skyModel = (condition: SkyCondition): SkyModel => {
  const { standardSky, takesTwilightShape } = SKY_CONDITION_TRAITS[condition];
  return modelOfStandardSky(GENERAL_SKIES[standardSky], takesTwilightShape);
};

export const modelOfStandardSky = (
  standard: GeneralSky,
  takesTwilightShape: boolean,
): SkyModel => ({
  standard,
  indicatrixTable: tabulatedByAngle(indicatrixOf(standard)),
  takesTwilightShape,
  quadrature: halfSkyQuadrature(standard),
});

export const skyPoints = (standard: GeneralSky, directions: readonly Direction[]): SkyPoints => {
  const column = (): Float64Array => new Float64Array(directions.length);
  const points = {
    count: directions.length,
    east: column(),
    north: column(),
    up: column(),
    gradation: column(),
    scattered: column(),
    glowing: column(),
  };
  directions.forEach((direction, at) => {
    const { east, north, up } = unitVector(direction);
    const scattered = scatteredShare(up);
    points.east[at] = east;
    points.north[at] = north;
    points.up[at] = up;
    points.gradation[at] = gradation(standard, up);
    points.scattered[at] = scattered;
    points.glowing[at] = scattered * glowTowards(direction.altitudeDeg);
  });
  return points;
};

const halfSkyQuadrature = (standard: GeneralSky): SkyModel['quadrature'] => {
  const altitudes = onSpan(gaussLegendre(ALTITUDES), 0, 90);
  const azimuths = onSpan(gaussLegendre(AZIMUTHS), 0, 180);
  const directions: Direction[] = [];
  const horizontalWeight: number[] = [];
  altitudes.nodes.forEach((altitudeDeg, row) => {
    const bandWeight =
      radFromDeg(altitudes.weights[row] ?? NaN) * sinDeg(altitudeDeg) * cosDeg(altitudeDeg);
    azimuths.nodes.forEach((azimuthDeg, column) => {
      directions.push({ azimuthDeg, altitudeDeg });
      horizontalWeight.push(2 * bandWeight * radFromDeg(azimuths.weights[column] ?? NaN));
    });
  });
  return {
    points: skyPoints(standard, directions),
    horizontalWeight: Float64Array.from(horizontalWeight),
  };
};
