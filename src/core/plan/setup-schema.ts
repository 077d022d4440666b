import * as z from 'zod/mini';

import { clock, id, mapOf, name, numberFrom, order, positiveUpTo, wholeFrom } from './fields.ts';
import { SHOOT_FRAMING } from './spot-schema.ts';

export const ROLES = ['key', 'fill', 'rim', 'background', 'cross'] as const;
export const POSES = ['standing', 'sitting', 'lying'] as const;

/** Light off a matt surface; the light's distance then counts from the patch on it. */
export const BOUNCE = z.object({
  /** 0 to 1 of luminance. */
  reflectance: numberFrom(0.01, 0.95),
  /** sRGB of the surface as six hexadecimal digits, or '' where it is neutral. */
  colour: z.string().check(z.regex(/^([0-9a-f]{6})?$/, 'six hexadecimal digits, or nothing')),
  headToSurfaceM: numberFrom(0.1, 20),
  /** Between the beam and the surface's normal. */
  incidenceDeg: numberFrom(0, 80),
  /** Between the normal and the way to the subject. */
  exitDeg: numberFrom(0, 80),
  /** Side of a square panel; null: a wall larger than the patch. */
  panelSideM: z.nullable(numberFrom(0.1, 20)),
});

export const LIGHT = z.object({
  order,
  role: z.enum(ROLES),
  /** Against the camera setting: the key 0, a fill −1.6. */
  stops: numberFrom(-8, 4),
  headId: id,
  /** Equal heads side by side in this role. */
  headCount: wholeFrom(1, 20),
  modifierId: id,
  diffuser: z.boolean(),
  baffle: z.boolean(),
  grid: z.boolean(),
  /** One of the modifier's own settings; null: as its figures stand. */
  modifierSettingId: z.nullable(id),
  gelId: z.nullable(id),
  /** On top of the first. */
  secondGelId: z.nullable(id),
  standId: z.nullable(id),
  /** How far the axis is turned off the subject. */
  featherDeg: numberFrom(0, 80),
  /** Null: aimed straight at the subject. */
  bounce: z.nullable(BOUNCE),
  /** From the modifier's face to the middle face. */
  distanceM: numberFrom(0.2, 30),
  /** From the line subject to camera, positive to the camera's right. */
  angleDeg: numberFrom(-180, 180),
  heightM: numberFrom(0, 8),
  /** 0 full, −1 half; null leaves it to the solver. */
  pinnedPowerStops: z.nullable(numberFrom(-12, 0)),
  distancePinned: z.boolean(),
  modifierPinned: z.boolean(),
});

export const MOTIONS = ['still', 'posing', 'gesturing', 'walking', 'running', 'jumping'] as const;
export const HOLD_REFERENCES = ['patch', 'frame', 'incident'] as const;

export const SETUP = z.object({
  order,
  name,
  spotId: id,
  /** Clock time in the spot's zone on the shoot's date. */
  startClock: clock,
  durationMin: wholeFrom(5, 720),
  /** Its own, or null for the spot's. */
  framing: z.nullable(SHOOT_FRAMING),
  /** Fractions of the picture from its centre; null for the default beside the head. */
  patch: z.nullable(
    z.object({
      xFraction: numberFrom(-0.5, 0.5),
      yFraction: numberFrom(-0.5, 0.5),
      widthFraction: positiveUpTo(1),
      heightFraction: positiveUpTo(1),
    }),
  ),
  holdStops: numberFrom(-3, 10),
  holdUnder: z.enum(HOLD_REFERENCES),
  /** How far the unlit face must lie under the key. */
  unlitUnderStops: numberFrom(0, 8),
  people: wholeFrom(1, 20),
  spacingM: numberFrom(0.2, 5),
  faceHeightM: numberFrom(0.3, 4),
  /** One behind the other, the first at the camera's distance. */
  rows: wholeFrom(1, 5),
  rowSpacingM: numberFrom(0.2, 5),
  pose: z.enum(POSES),
  /** Of the skins in the picture, share of light. */
  darkestSkin: numberFrom(0.03, 0.9),
  lightestSkin: numberFrom(0.03, 0.9),
  /** How far nearest and farthest face may differ. */
  spreadLimitStops: positiveUpTo(3),
  motion: z.enum(MOTIONS),
  tripod: z.boolean(),
  /** A panel or a wall keeps the direct sun off the subject. */
  shaded: z.boolean(),
  cameraId: id,
  lensId: id,
  wishFNumber: numberFrom(0.7, 64),
  lights: mapOf(LIGHT),
  pinnedShutterS: z.nullable(positiveUpTo(900)),
  pinnedFNumber: z.nullable(numberFrom(0.7, 128)),
  pinnedIso: z.nullable(numberFrom(25, 409600)),
  /** Exactly these filters; null leaves them to the solver. */
  pinnedFilterIds: z.nullable(z.record(id, z.literal(true))),
  whiteBalanceKelvin: numberFrom(2000, 15000),
  /** Thousandths across the locus, positive to magenta. */
  whiteBalanceTint: numberFrom(-50, 50),
  /** Colour temperature of the ambient on the subject; null: by the sky condition and the sun. */
  ambientKelvin: z.nullable(numberFrom(1800, 25000)),
  /** Where a graduated filter's middle lies, fraction of the picture's height above its centre. */
  graduationFraction: numberFrom(-0.5, 0.5),
  /** Frames to be taken with the flash. */
  frames: wholeFrom(1, 5000),
  airC: numberFrom(-30, 45),
  /** Strongest gust expected; null: not known. */
  gustMS: z.nullable(numberFrom(0, 40)),
  clockPinned: z.boolean(),
  holdPinned: z.boolean(),
  framingPinned: z.boolean(),
});

export type Setup = z.output<typeof SETUP>;
export type Light = z.output<typeof LIGHT>;
export type BounceOfLight = z.output<typeof BOUNCE>;
export type LightRole = (typeof ROLES)[number];
export type HoldReference = (typeof HOLD_REFERENCES)[number];
export type Motion = (typeof MOTIONS)[number];
export type Pose = (typeof POSES)[number];
