import * as z from 'zod/mini';

import { SKY_CONDITIONS } from '../daylight/sky-condition.ts';
import type { Skyline } from '../skyline/skyline.ts';
import { civilDate, id, mapOf, name } from './fields.ts';
import { OBSTACLES, OUTLINE_SETS } from './obstacle-schema.ts';
import { SETUP } from './setup-schema.ts';
import { SPOT } from './spot-schema.ts';

export const SHOOT_FORMAT = 'undersky-shoot';
export const SHOOT_VERSION = 3;

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
