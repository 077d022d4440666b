import * as z from 'zod/mini';

import {
  civilDate,
  civilDateOrNone,
  contentHash,
  id,
  instantMs,
  mapOf,
  name,
  numberFrom,
  order,
  positiveUpTo,
  text,
  wholeFrom,
  zone,
} from './fields.ts';

/** Where the camera looks and what it sees. */
export const SHOOT_FRAMING = z.object({
  /** Clockwise from true north. */
  bearingDeg: z.number().check(z.gte(0), z.lt(360)),
  /** Up positive. */
  tiltDeg: numberFrom(-89, 89),
  focalLengthMm: numberFrom(4, 2000),
  /** Long side. */
  sensorWidthMm: numberFrom(4, 120),
  /** Short side. */
  sensorHeightMm: numberFrom(3, 100),
  orientation: z.enum(['landscape', 'portrait']),
  /** From the camera to the middle face, level. */
  cameraDistanceM: numberFrom(0.3, 500),
  cameraHeightM: numberFrom(0.05, 50),
});

export const PERMISSIONS = ['unknown', 'asked', 'granted', 'refused'] as const;
export const FOOT_TRAFFIC = ['unknown', 'quiet', 'some', 'busy'] as const;
export const SHELTERS = ['unknown', 'none', 'partial', 'full'] as const;
export const SURFACE_KINDS = ['ground', 'wall', 'panel'] as const;
export const READING_SOURCES = ['photo', 'meter'] as const;

const latitudeDeg = numberFrom(-90, 90);
const longitudeDeg = numberFrom(-180, 180);
const azimuthDeg = z.number().check(z.gte(0), z.lt(360));

/** Sectors of one degree, the first centred on north. */
export const TERRAIN_SECTORS = 360;

export const TERRAIN = z.object({
  /** Highest apparent altitude of each sector, seen from the camera. */
  altitudesDeg: z
    .array(numberFrom(-10, 90))
    .check(z.minLength(TERRAIN_SECTORS), z.maxLength(TERRAIN_SECTORS)),
  origin: text,
  dated: civilDate,
  /** Where it was worked out; a spot moved since needs another. */
  latitudeDeg,
  longitudeDeg,
  /** Share of the heights used that were filled in from their neighbours. */
  voidShare: numberFrom(0, 1),
});

export const SURFACE = z.object({
  order,
  name,
  kind: z.enum(SURFACE_KINDS),
  reflectance: numberFrom(0, 0.95),
  note: text,
});

export const CONTACT = z.object({ order, role: name, note: text });

export const CHECK = z.object({ order, text: name, done: z.boolean() });

/** A scouting photo: its small copy is kept by content hash, what the camera wrote beside it. */
export const PHOTO = z.object({
  order,
  name,
  contentHash,
  widthPx: wholeFrom(0, 100_000),
  heightPx: wholeFrom(0, 100_000),
  takenAtMs: z.nullable(instantMs),
  latitudeDeg: z.nullable(latitudeDeg),
  longitudeDeg: z.nullable(longitudeDeg),
  bearingDeg: z.nullable(azimuthDeg),
  focalLengthMm: z.nullable(numberFrom(1, 5000)),
  focalLength35Mm: z.nullable(numberFrom(1, 5000)),
  fNumber: z.nullable(numberFrom(0.5, 128)),
  shutterS: z.nullable(positiveUpTo(3600)),
  iso: z.nullable(numberFrom(1, 10_000_000)),
  note: text,
});

/** A brightness read on site, EV at ISO 100. */
export const READING = z.object({
  order,
  atMs: z.nullable(instantMs),
  ev100: numberFrom(-12, 24),
  bearingDeg: z.nullable(azimuthDeg),
  from: z.enum(READING_SOURCES),
  photoId: z.nullable(id),
  note: text,
});

export const SPOT = z.object({
  order,
  name,
  latitudeDeg,
  longitudeDeg,
  /** Above sea level. */
  elevationM: numberFrom(-450, 9000),
  zone,
  framing: SHOOT_FRAMING,
  /** The trace: what hides the low sky as seen on site; linear between points, empty is a flat horizon. */
  skyline: mapOf(z.object({ azimuthDeg, altitudeDeg: numberFrom(-10, 89) })),
  skylineOrigin: text,
  skylineDated: civilDateOrNone,
  terrain: z.nullable(TERRAIN),
  /** What the ground reflects onto the subject, 0.2 where unknown. */
  groundReflectance: numberFrom(0, 0.95),
  groundNote: text,
  /** What light can be bounced from. */
  surfaces: mapOf(SURFACE),
  accessNote: text,
  parkingNote: text,
  walkInMin: numberFrom(0, 600),
  toiletsNote: text,
  permission: z.enum(PERMISSIONS),
  /** By whom. */
  permissionNote: text,
  permissionNumber: text,
  permissionFrom: civilDateOrNone,
  permissionUntil: civilDateOrNone,
  permissionConditions: text,
  footTraffic: z.enum(FOOT_TRAFFIC),
  footTrafficNote: text,
  shelter: z.enum(SHELTERS),
  shelterNote: text,
  windNote: text,
  powerNote: text,
  hazards: z.object({
    water: z.boolean(),
    traffic: z.boolean(),
    height: z.boolean(),
    lonely: z.boolean(),
  }),
  hazardsNote: text,
  contacts: mapOf(CONTACT),
  checklist: mapOf(CHECK),
  photos: mapOf(PHOTO),
  readings: mapOf(READING),
});

export type ShootFraming = z.output<typeof SHOOT_FRAMING>;
export type TerrainOfSpot = z.output<typeof TERRAIN>;
export type Photo = z.output<typeof PHOTO>;
export type Reading = z.output<typeof READING>;
export type Permission = (typeof PERMISSIONS)[number];
