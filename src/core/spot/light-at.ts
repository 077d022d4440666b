import { civilDateOf, dayOfYear } from '../units/civil-time.ts';
import { type SpotLight, type SpotScene, spotLight } from './spot-light.ts';

/** The light at one minute of a spot. The zone names the civil date that the sun's distance goes by. */
export const lightAt = (
  input: SpotScene & { readonly instantMs: number; readonly zone: string },
): SpotLight => {
  const { instantMs, zone } = input;
  return spotLight(input)({ instantMs, dayOfYear: dayOfYear(civilDateOf(instantMs, zone)) });
};
