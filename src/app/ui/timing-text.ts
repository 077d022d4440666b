import type { LightPace } from '../../core/plan/light-pace.ts';
import { tenths } from './figure-text.ts';

/** '1/310 s', '1/12000 s', '0.02 s': two digits, as a length of flash is known. */
export function flashTimeText(durationS: number): string {
  if (durationS >= 1 / 45) return `${durationS.toFixed(2)} s`;
  return `1/${Number((1 / durationS).toPrecision(2))} s`;
}

/** A rated count is good to about a tenth. */
export const roundedPops = (pops: number): number =>
  pops >= 100 ? Math.round(pops / 10) * 10 : Math.round(pops);

/** 'ready in 0.6 s, 100 frames a minute, about 660 pops a charge; 40 in a row, then 60 s of rest' */
export function paceText(pace: LightPace): string {
  const row =
    pace.popsBeforeRest === null
      ? ''
      : `; ${pace.popsBeforeRest} in a row, then ${pace.restS === 0 ? 'it rests' : `${Math.round(pace.restS)} s of rest`}`;
  return `ready in ${recycleText(pace.recycleS)}, ${frameRateText(pace.framesPerMinute)}, about ${roundedPops(pace.popsPerCharge)} pops a charge${row}`;
}

export const recycleText = (recycleS: number): string => `${tenths(recycleS)} s`;

/** '46 frames a minute': nobody takes more than three a second of a portrait. */
export const frameRateText = (framesPerMinute: number): string =>
  `${framesPerMinute >= 180 ? 'more than 180' : Math.floor(framesPerMinute)} frames a minute`;
