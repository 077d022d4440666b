import type { Daylight } from '../daylight/daylight-at.ts';
import type { SunPosition } from '../sun-moon/sun-position.ts';
import { radFromDeg } from '../units/angle.ts';
import type { Direction } from '../units/direction.ts';
import { type UnitVector, unitVector } from './framing.ts';
import { gradation } from './general-sky.ts';
import type { SkyModel, SkyPoints } from './sky-model.ts';
import { atAngle } from './tabulated-by-angle.ts';
import {
  glowTowards,
  scatteredShare,
  twilightLuminance,
  type TwilightSun,
  twilightSun,
} from './twilight-sky.ts';

/** A condition's sky at one place of the sun. */
export type SkyField = {
  readonly shape: SkyShape;
  /** Luminance in cd/m² per unit of the shape. */
  readonly scale: number;
  /** Moonlight, the same in every direction. */
  readonly evenCdM2: number;
};

type SkyShape = {
  readonly model: SkyModel;
  readonly sun: UnitVector;
  readonly twilight: TwilightSun;
  /** 1 where the standard sky stands alone, 0 where the twilight shape does. */
  readonly standardShare: number;
};

/** True altitudes of the sun between which the twilight shape gives way to the standard sky. */
const TWILIGHT_ALONE_DEG = -4;
const STANDARD_ALONE_DEG = 4;

/**
 * The sky of a condition, its horizontal integral equal to the diffuse illuminance within 0.2 %.
 * Around sunset a geometric mean of both shapes, so that no part of the sky brightens while
 * the sun sinks; an overcast keeps its standard sky, the sun held at the horizon.
 */
export const skyField = (
  model: SkyModel,
  sky: {
    readonly sun: SunPosition;
    readonly daylight: Pick<Daylight, 'diffuseHorizontalLux' | 'moonHorizontalLux'>;
  },
): SkyField => {
  const { sun, daylight } = sky;
  const altitudeDeg = model.takesTwilightShape
    ? sun.apparentAltitudeDeg
    : Math.max(0, sun.apparentAltitudeDeg);
  const shape = {
    model,
    sun: unitVector({ azimuthDeg: sun.azimuthDeg, altitudeDeg }),
    twilight: twilightSun(sun),
    standardShare: model.takesTwilightShape ? standardShare(sun.trueAltitudeDeg) : 1,
  };
  const bySunLux = daylight.diffuseHorizontalLux - daylight.moonHorizontalLux;
  return {
    shape,
    scale: bySunLux / horizontalIntegral(shape, altitudeDeg),
    // A sky of even luminance L lights level ground with π L.
    evenCdM2: daylight.moonHorizontalLux / radFromDeg(180),
  };
};

/** Luminance in cd/m² towards a direction; NaN below 0°. */
export const luminanceTowards = (field: SkyField, direction: Direction): number => {
  if (!(direction.altitudeDeg >= 0)) return NaN;
  const { model, sun, twilight: twilightNow, standardShare: share } = field.shape;
  const { east, north, up } = unitVector(direction);
  const cosineFromSun = east * sun.east + north * sun.north + up * sun.up;
  const standard = gradation(model.standard, up) * atAngle(model.indicatrixTable, cosineFromSun);
  const scattered = scatteredShare(up);
  const twilight = twilightLuminance(
    twilightNow,
    cosineFromSun,
    scattered,
    scattered * glowTowards(direction.altitudeDeg),
  );
  const shape = share === 1 ? standard : share === 0 ? twilight : blend(standard, twilight, share);
  return field.evenCdM2 + field.scale * shape;
};

/** Luminance in cd/m² towards each of the points. */
export const fillLuminance = (field: SkyField, points: SkyPoints, into: Float64Array): void => {
  fillShape(field.shape, field.shape.sun, points, into);
  const { scale, evenCdM2 } = field;
  for (let at = 0; at < points.count; at += 1) {
    into[at] = evenCdM2 + scale * (into[at] ?? NaN);
  }
};

/** The quadrature has its sun in the north: only the sun's altitude counts. */
const horizontalIntegral = (shape: SkyShape, sunAltitudeDeg: number): number => {
  const { points, horizontalWeight } = shape.model.quadrature;
  const values = new Float64Array(points.count);
  fillShape(shape, unitVector({ azimuthDeg: 0, altitudeDeg: sunAltitudeDeg }), points, values);
  let sum = 0;
  for (let at = 0; at < values.length; at += 1) {
    sum += (horizontalWeight[at] ?? NaN) * (values[at] ?? NaN);
  }
  return sum;
};

const fillShape = (
  shape: SkyShape,
  sun: UnitVector,
  points: SkyPoints,
  into: Float64Array,
): void => {
  cosinesFromSun(sun, points, into);
  if (shape.standardShare === 1) standardFromCosines(shape, points, into);
  else if (shape.standardShare === 0) twilightFromCosines(shape, points, into);
  else blendFromCosines(shape, points, into);
};

const cosinesFromSun = (sun: UnitVector, points: SkyPoints, into: Float64Array): void => {
  const { count, east, north, up } = points;
  for (let at = 0; at < count; at += 1) {
    into[at] =
      (east[at] ?? NaN) * sun.east + (north[at] ?? NaN) * sun.north + (up[at] ?? NaN) * sun.up;
  }
};

const standardFromCosines = ({ model }: SkyShape, points: SkyPoints, into: Float64Array): void => {
  const { count, gradation: gradations } = points;
  const { indicatrixTable } = model;
  for (let at = 0; at < count; at += 1) {
    into[at] = (gradations[at] ?? NaN) * atAngle(indicatrixTable, into[at] ?? NaN);
  }
};

const twilightFromCosines = (
  { twilight }: SkyShape,
  points: SkyPoints,
  into: Float64Array,
): void => {
  const { count, scattered, glowing } = points;
  for (let at = 0; at < count; at += 1) {
    into[at] = twilightLuminance(
      twilight,
      into[at] ?? NaN,
      scattered[at] ?? NaN,
      glowing[at] ?? NaN,
    );
  }
};

const blendFromCosines = (shape: SkyShape, points: SkyPoints, into: Float64Array): void => {
  const standard = into.slice();
  standardFromCosines(shape, points, standard);
  twilightFromCosines(shape, points, into);
  for (let at = 0; at < points.count; at += 1) {
    into[at] = blend(standard[at] ?? NaN, into[at] ?? NaN, shape.standardShare);
  }
};

/** Between two luminances in stops. */
const blend = (standard: number, twilight: number, standardShare: number): number =>
  twilight * Math.exp(standardShare * Math.log(standard / twilight));

const standardShare = (sunTrueAltitudeDeg: number): number => {
  const t = (sunTrueAltitudeDeg - TWILIGHT_ALONE_DEG) / (STANDARD_ALONE_DEG - TWILIGHT_ALONE_DEG);
  const held = Math.min(1, Math.max(0, t));
  return held * held * (3 - 2 * held);
};
