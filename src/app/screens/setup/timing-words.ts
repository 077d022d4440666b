import type { Motion } from '../../../core/plan/setup-schema.ts';
import type { PowerControl } from '../../../core/strobe/sync.ts';
import { tenths } from '../../ui/figure-text.ts';

export const CONTROL_WORDS: Readonly<Record<PowerControl, string>> = {
  'tail-cut': ', its tail cut',
  voltage: ', longer than at full',
  'not-known': '',
};

/** What the shutter cuts off a flash. */
export const clippedText = (stops: number): string =>
  stops < 0.05 ? 'less than a tenth of a stop' : `${tenths(stops)} stop`;

const MOVERS: Readonly<Record<Motion, string>> = {
  still: 'someone standing still',
  posing: 'someone posing',
  gesturing: 'a gesture',
  walking: 'someone walking across',
  running: 'someone running across',
  jumping: 'a jump',
};

/** Whether the light freezes whom it lights; how people move is known to a factor of two. */
export function frozenText(circles: number, motion: Motion): string {
  if (circles <= 1) return `it freezes ${MOVERS[motion]}`;
  const width = circles >= 10 ? String(Math.round(circles)) : tenths(circles);
  return `${MOVERS[motion]} blurs ${width} times as wide as sharp`;
}
