import * as z from 'zod/mini';

import { SKY_CONDITIONS } from '../daylight/sky-condition.ts';
import type { Skyline } from '../skyline/skyline.ts';
import {
  civilDate,
  clock,
  id,
  mapOf,
  name,
  numberFrom,
  order,
  positiveUpTo,
  text,
  wholeFrom,
  zone,
} from './fields.ts';
import { OBSTACLES, OUTLINE_SETS } from './obstacle-schema.ts';
import { SHOOT_FRAMING, SPOT } from './spot-schema.ts';

export const ROLES = ['key', 'fill', 'rim', 'background'] as const;

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
  gelId: z.nullable(id),
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
  clockPinned: z.boolean(),
  holdPinned: z.boolean(),
  framingPinned: z.boolean(),
});

export const SHOOT_FORMAT = 'undersky-shoot';
export const SHOOT_VERSION = 2;

export const SHOOT = z.object({
  format: z.literal(SHOOT_FORMAT),
  version: z.literal(SHOOT_VERSION),
  id,
  title: name,
  date: civilDate,
  condition: z.enum(SKY_CONDITIONS),
  spots: mapOf(SPOT),
  obstacles: OBSTACLES,
  outlineSets: OUTLINE_SETS,
  setups: mapOf(SETUP),
});

export type Shoot = Omit<z.output<typeof SHOOT>, 'spots'> & { spots: Record<string, Spot> };
/** `skylineNow` is worked out from trace, terrain and obstacles when a shoot is opened, and never saved. */
export type Spot = z.output<typeof SPOT> & { readonly skylineNow?: Skyline };
export type Setup = z.output<typeof SETUP>;
export type Light = z.output<typeof LIGHT>;
export type LightRole = (typeof ROLES)[number];
export type HoldReference = (typeof HOLD_REFERENCES)[number];
export type Motion = (typeof MOTIONS)[number];
