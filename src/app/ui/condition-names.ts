import type { SkyCondition } from '../../core/daylight/sky-condition.ts';

export const CONDITION_NAMES: Readonly<Record<SkyCondition, string>> = {
  clear: 'clear',
  haze: 'haze',
  'broken-cloud': 'broken cloud',
  'bright-overcast': 'bright overcast',
  'heavy-overcast': 'heavy overcast',
};
