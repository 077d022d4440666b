import fc from 'fast-check';

import {
  OBSTACLE_KINDS,
  type ObstacleEntry,
  type OutlineSet,
} from '../../src/core/plan/obstacle-schema.ts';
import type { Spot } from '../../src/core/plan/shoot.ts';
import {
  FOOT_TRAFFIC,
  PERMISSIONS,
  READING_SOURCES,
  SHELTERS,
  SURFACE_KINDS,
} from '../../src/core/plan/spot-schema.ts';
import {
  angle,
  characters,
  dateOrNone,
  id,
  mapOf,
  name,
  number,
  order,
  orNull,
  positive,
  record,
  text,
  whole,
} from './field-arbitraries.ts';

export const framing = record({
  bearingDeg: angle,
  tiltDeg: number(-89, 89),
  focalLengthMm: number(4, 2000),
  sensorWidthMm: number(4, 120),
  sensorHeightMm: number(3, 100),
  orientation: fc.constantFrom('landscape' as const, 'portrait' as const),
  cameraDistanceM: number(0.3, 500),
  cameraHeightM: number(0.05, 50),
});

const civilDate = fc.constantFrom('2011-12-30', '2027-05-14', '2028-02-29');
const instant = whole(0, 4_000_000_000_000);

const photo = record({
  order,
  name,
  contentHash: fc.string({
    unit: fc.constantFrom(...'0123456789abcdef'.split('')),
    minLength: 64,
    maxLength: 64,
  }),
  widthPx: whole(0, 9000),
  heightPx: whole(0, 9000),
  takenAtMs: orNull(instant),
  latitudeDeg: orNull(number(-90, 90)),
  longitudeDeg: orNull(number(-180, 180)),
  bearingDeg: orNull(angle),
  focalLengthMm: orNull(number(1, 5000)),
  focalLength35Mm: orNull(number(1, 5000)),
  fNumber: orNull(number(0.5, 128)),
  shutterS: orNull(positive(3600)),
  iso: orNull(number(1, 10_000_000)),
  note: text,
});

export const spot: fc.Arbitrary<Spot> = record<Omit<Spot, 'skylineNow'>>({
  order,
  name,
  latitudeDeg: number(-90, 90),
  longitudeDeg: number(-180, 180),
  elevationM: number(-450, 9000),
  zone: fc.constantFrom('Europe/Rome', 'Pacific/Apia', 'America/St_Johns', 'UTC'),
  framing,
  skyline: mapOf(record({ azimuthDeg: angle, altitudeDeg: number(-10, 89) })),
  skylineOrigin: text,
  skylineDated: dateOrNone,
  terrain: orNull(
    record({
      altitudesDeg: fc.array(number(-10, 90), { minLength: 360, maxLength: 360 }),
      origin: text,
      dated: civilDate,
      latitudeDeg: number(-90, 90),
      longitudeDeg: number(-180, 180),
      voidShare: number(0, 1),
    }),
  ),
  groundReflectance: number(0, 0.95),
  groundNote: text,
  surfaces: mapOf(
    record({
      order,
      name,
      kind: fc.constantFrom(...SURFACE_KINDS),
      reflectance: number(0, 0.95),
      note: text,
    }),
  ),
  accessNote: text,
  parkingNote: text,
  walkInMin: number(0, 600),
  toiletsNote: text,
  permission: fc.constantFrom(...PERMISSIONS),
  permissionNote: text,
  permissionNumber: text,
  permissionFrom: dateOrNone,
  permissionUntil: dateOrNone,
  permissionConditions: text,
  footTraffic: fc.constantFrom(...FOOT_TRAFFIC),
  footTrafficNote: text,
  shelter: fc.constantFrom(...SHELTERS),
  shelterNote: text,
  windNote: text,
  powerNote: text,
  hazards: record({
    water: fc.boolean(),
    traffic: fc.boolean(),
    height: fc.boolean(),
    lonely: fc.boolean(),
  }),
  hazardsNote: text,
  contacts: mapOf(record({ order, role: name, note: text })),
  checklist: mapOf(record({ order, text: name, done: fc.boolean() })),
  photos: mapOf(photo),
  readings: mapOf(
    record({
      order,
      atMs: orNull(instant),
      ev100: number(-12, 24),
      bearingDeg: orNull(angle),
      from: fc.constantFrom(...READING_SOURCES),
      photoId: orNull(id),
      note: text,
    }),
  ),
});

const corner = fc.tuple(number(-180, 180), number(-90, 90));

export const obstacle: fc.Arbitrary<ObstacleEntry> = record({
  order,
  name,
  kind: fc.constantFrom(...OBSTACLE_KINDS),
  closed: fc.boolean(),
  outline: fc.array<[number, number]>(corner, { minLength: 2, maxLength: 5 }),
  heightM: number(0.1, 1000),
  crownBaseM: number(0, 100),
  passesInLeaf: number(0, 1),
  passesBare: number(0, 1),
  footElevationM: orNull(number(-450, 9000)),
  origin: text,
  dated: civilDate,
});

export const outlineSet: fc.Arbitrary<OutlineSet> = record({
  order,
  name,
  origin: text,
  dated: civilDate,
  outlineCount: whole(1, 20_000),
  geoJson: text,
  hidden: fc.dictionary(characters('0123456789', 6), fc.constant(true as const), {
    maxKeys: 2,
    noNullPrototype: true,
  }),
});
