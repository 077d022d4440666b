import * as z from 'zod/mini';

import { id, mapOf, name, numberFrom, order, positiveUpTo, wholeFrom } from './fields.ts';

export const CAMERA = z.object({
  order,
  name,
  /** Long side. */
  sensorWidthMm: numberFrom(4, 120),
  /** Short side. */
  sensorHeightMm: numberFrom(3, 100),
  /** Fastest shutter at which the whole picture is open. */
  syncShutterS: numberFrom(1 / 4000, 1 / 30),
  fastestShutterS: numberFrom(1 / 64000, 1 / 250),
  slowestShutterS: numberFrom(1 / 60, 900),
  baseIso: numberFrom(25, 1600),
  maxIso: numberFrom(100, 409600),
  step: z.enum(['third', 'half']),
  /** Darkest the autofocus is stated to work at, EV at ISO 100. */
  autofocusLimitEv: numberFrom(-10, 5),
  /** What the white balance can be set to. */
  minKelvin: numberFrom(1500, 6000),
  maxKelvin: numberFrom(5000, 20000),
  massKg: numberFrom(0, 20),
});

export const LENS = z.object({
  order,
  name,
  minFocalLengthMm: numberFrom(4, 2000),
  maxFocalLengthMm: numberFrom(4, 2000),
  minFNumber: numberFrom(0.7, 64),
  maxFNumber: numberFrom(0.7, 128),
  threadMm: z.nullable(numberFrom(20, 200)),
  /** Fastest shutter of a leaf shutter in the lens, which syncs at every speed. */
  leafShutterS: z.nullable(numberFrom(1 / 4000, 1 / 30)),
  massKg: numberFrom(0, 20),
});

/** One flash-meter reading that makes a head's figure the user's own. */
export const READING = z.object({
  fNumber: numberFrom(0.7, 256),
  iso: numberFrom(3, 409600),
  /** From the modifier's face to the dome. */
  distanceM: numberFrom(0.2, 30),
  /** Reading of the ambient alone at the same shutter, or null when it did not register. */
  ambientFNumber: z.nullable(numberFrom(0.1, 256)),
  /** Below full power: 0 full, −1 half. */
  powerStops: numberFrom(-12, 0),
  diffuser: z.boolean(),
  baffle: z.boolean(),
  grid: z.boolean(),
});

export const POWER_SCALES = [
  'fraction',
  'stops-below-full',
  'numbered-stops',
  'percent',
  'watt-seconds',
] as const;

export const HEAD = z.object({
  order,
  name,
  /** How many of this head are in the car. */
  owned: wholeFrom(1, 20),
  energyWs: z.nullable(positiveUpTo(10000)),
  /** As rated, with the reflector it was rated with, ISO 100. */
  guideNumberM: z.nullable(positiveUpTo(400)),
  /** By modifier id, one shot each. */
  readings: mapOf(READING),
  scale: z.enum(POWER_SCALES),
  /** The number the dial shows at full power, for numbered stops. */
  fullPowerNumber: numberFrom(1, 20),
  stepStops: numberFrom(0.1, 1),
  /** Lowest power: −8 is 1/256. */
  minPowerStops: numberFrom(-12, 0),
  /** Stops lost to high-speed sync against ambient; null: the head has none. */
  hssLossStops: z.nullable(numberFrom(0, 5)),
  hssMeasured: z.boolean(),
  /** t0.1 at full power. */
  flashDurationS: z.nullable(numberFrom(1e-5, 1 / 20)),
  /** t0.1 at the lowest power; shorter where the tail is cut, longer where the voltage is lowered. */
  flashDurationLowestS: z.nullable(numberFrom(1e-6, 1 / 20)),
  recycleS: numberFrom(0.05, 60),
  popsPerCharge: wholeFrom(1, 100000),
  /** Full pops in a row before it has to rest, and how long. */
  burstPops: z.nullable(wholeFrom(1, 10000)),
  burstRestS: numberFrom(0, 3600),
  batteryId: z.nullable(id),
  flashKelvin: numberFrom(3000, 8000),
  massKg: numberFrom(0, 50),
});

export const MODIFIER = z.object({
  order,
  name,
  /** Stops against the bare reflector the guide number was rated with, all removable parts off; negative where it gains. */
  lossStops: numberFrom(-4, 8),
  lossSpreadStops: numberFrom(0, 3),
  widthM: numberFrom(0.02, 5),
  heightM: numberFrom(0.02, 5),
  round: z.boolean(),
  /** What each removable part costs; null: it has none. */
  diffuserStops: z.nullable(numberFrom(0, 4)),
  baffleStops: z.nullable(numberFrom(0, 4)),
  gridStops: z.nullable(numberFrom(0, 6)),
  /** Full angle inside which it lights evenly, and with its grid on; null: not known. */
  beamDeg: z.nullable(numberFrom(2, 180)),
  gridBeamDeg: z.nullable(numberFrom(2, 180)),
  /** The user's own table: stops against the figures above, negative where it gains. */
  settings: mapOf(z.object({ order, name, beamDeg: numberFrom(2, 180), stops: numberFrom(-6, 6) })),
  massKg: numberFrom(0, 50),
});

export const FILTER_KINDS = ['nd', 'variable-nd', 'graduated-nd', 'polariser', 'colour'] as const;

export const FILTER = z.object({
  order,
  name,
  kind: z.enum(FILTER_KINDS),
  /** Of a variable one, at its weakest. */
  stops: numberFrom(0, 20),
  /** Of a variable one, at its strongest; null for all others. */
  maxStops: z.nullable(numberFrom(0, 20)),
  /** Positive is warmer. */
  miredShift: numberFrom(-400, 400),
  /** Green passed more than red and blue; negative is magenta. */
  greenStops: numberFrom(-3, 3),
  /** Depth of its ring. */
  ringMm: numberFrom(0, 30),
  /** What is engraved on its ring. */
  engraving: z.string().check(z.maxLength(40)),
  threadMm: z.nullable(numberFrom(20, 200)),
});

export const GEL = z.object({
  order,
  name,
  stops: numberFrom(0, 8),
  /** Positive is warmer. */
  miredShift: numberFrom(-400, 400),
  /** Green passed more than red and blue; negative is magenta. */
  greenStops: numberFrom(-3, 3),
});

export const STAND = z.object({
  order,
  name,
  owned: wholeFrom(1, 20),
  maxHeightM: numberFrom(0.2, 12),
  /** From its middle to the foot of a leg. */
  legSpreadM: numberFrom(0.1, 3),
  legs: z.union([z.literal(3), z.literal(4)]),
  massKg: numberFrom(0, 100),
  /** Above this gust the user does not put it up. */
  maxGustMS: numberFrom(1, 40),
});

export const BATTERY = z.object({
  order,
  name,
  owned: wholeFrom(1, 50),
  wattHours: numberFrom(0.1, 5000),
  massKg: numberFrom(0, 50),
});

export const KIT_FORMAT = 'undersky-kit';
export const KIT_VERSION = 2;

export const KIT = z.object({
  format: z.literal(KIT_FORMAT),
  version: z.literal(KIT_VERSION),
  id,
  cameras: mapOf(CAMERA),
  lenses: mapOf(LENS),
  heads: mapOf(HEAD),
  modifiers: mapOf(MODIFIER),
  filters: mapOf(FILTER),
  gels: mapOf(GEL),
  stands: mapOf(STAND),
  batteries: mapOf(BATTERY),
});

export type Kit = z.output<typeof KIT>;
export type Camera = z.output<typeof CAMERA>;
export type Lens = z.output<typeof LENS>;
export type Head = z.output<typeof HEAD>;
export type Reading = z.output<typeof READING>;
export type Modifier = z.output<typeof MODIFIER>;
export type Filter = z.output<typeof FILTER>;
export type Gel = z.output<typeof GEL>;
export type Stand = z.output<typeof STAND>;
export type Battery = z.output<typeof BATTERY>;
export type PowerScale = (typeof POWER_SCALES)[number];
export type KitShelf =
  | 'cameras'
  | 'lenses'
  | 'heads'
  | 'modifiers'
  | 'filters'
  | 'gels'
  | 'stands'
  | 'batteries';
