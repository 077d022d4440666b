import { daylightAt, type DaylightInput } from '../daylight/daylight-at.ts';
import type { Direction } from '../units/direction.ts';
import { luminanceTowards, skyField } from './sky-field.ts';
import { skyModel } from './sky-model.ts';

/** Luminance of the sky in cd/m² towards a direction; NaN below 0°. */
export type Sky = (direction: Direction) => number;

/**
 * The sky under a condition. Standard skies have no aureole: within 5° of the sun the real sky
 * is brighter. The twilight shape is an approximation, spread at least one stop. Moonlight, when
 * a moon is given, is spread evenly. [iso15469] [schaefer1998]
 */
export const conditionSky = (input: DaylightInput): Sky => {
  const field = skyField(skyModel(input.condition), {
    sun: input.sun,
    daylight: daylightAt(input),
  });
  return (direction) => luminanceTowards(field, direction);
};

export const luminancesTowards = (sky: Sky, directions: readonly Direction[]): Float64Array => {
  const luminances = new Float64Array(directions.length);
  directions.forEach((direction, at) => {
    luminances[at] = sky(direction);
  });
  return luminances;
};
