import * as z from 'zod/mini';

import { civilDate, mapOf, name, numberFrom, order, text, wholeFrom } from './fields.ts';

export const OBSTACLE_KINDS = ['building', 'wall', 'trees'] as const;

const corner = z.tuple([numberFrom(-180, 180), numberFrom(-90, 90)]);

/** Something that stands on the ground and hides sky: drawn on the map, or taken over from an outline set. */
export const OBSTACLE = z.object({
  order,
  name,
  kind: z.enum(OBSTACLE_KINDS),
  /** A ring, its first corner not repeated, or else a line. */
  closed: z.boolean(),
  /** Longitude and latitude of each corner, degrees, one fact that is replaced whole. */
  outline: z.array(corner).check(z.minLength(2), z.maxLength(2000)),
  /** Of its top above its foot. */
  heightM: numberFrom(0.1, 1000),
  /** Of the lowest leaves above the foot; 0 for buildings and walls. */
  crownBaseM: numberFrom(0, 100),
  /** Share of the light that comes through, in leaf and bare; 0 for buildings and walls. */
  passesInLeaf: numberFrom(0, 1),
  passesBare: numberFrom(0, 1),
  /** Above sea level; null: on the level of the spot it is seen from. */
  footElevationM: z.nullable(numberFrom(-450, 9000)),
  origin: text,
  dated: civilDate,
});

export const OUTLINE_SET_LENGTH = 12_000_000;

/** Outlines of one import, kept as the text of a GeoJSON feature collection. [rfc7946] */
export const OUTLINE_SET = z.object({
  order,
  name,
  origin: text,
  dated: civilDate,
  outlineCount: wholeFrom(1, 100_000),
  geoJson: z.string().check(z.maxLength(OUTLINE_SET_LENGTH)),
  /** Numbers of the outlines that were taken out or taken over for editing. */
  hidden: z.record(
    z.string().check(z.regex(/^\d{1,6}$/, 'the number of an outline')),
    z.literal(true),
  ),
});

export const OBSTACLES = mapOf(OBSTACLE);
export const OUTLINE_SETS = mapOf(OUTLINE_SET);

export type ObstacleEntry = z.output<typeof OBSTACLE>;
export type OutlineSet = z.output<typeof OUTLINE_SET>;
export type ObstacleKind = (typeof OBSTACLE_KINDS)[number];
