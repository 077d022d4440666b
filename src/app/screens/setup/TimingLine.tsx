import type { ReactNode } from 'react';

import type { LightTiming } from '../../../core/plan/light-timing.ts';
import type { Motion } from '../../../core/plan/setup-schema.ts';
import { tenths } from '../../ui/figure-text.ts';
import { flashTimeText } from '../../ui/timing-text.ts';

type TimingLineProps = {
  readonly lightId: string;
  readonly timing: LightTiming;
  readonly motion: Motion;
};

/** A light's flash against the shutter, and whether it freezes whom it lights. */
export function TimingLine({ lightId, timing, motion }: TimingLineProps): ReactNode {
  const { flashDurationS, control, clippedStops, blurCircles, highSpeedSync } = timing;
  if (blurCircles === null)
    return (
      <p className="quiet" data-figure={`flash-duration-${lightId}`}>
        How long its flash lasts is not in the kit: nothing is taken off for a shutter that cuts it.
      </p>
    );
  return (
    <p className="quiet">
      <span data-figure={`flash-duration-${lightId}`}>
        {highSpeedSync || flashDurationS === null
          ? 'High-speed sync: it lights as long as the shutter is open'
          : `t0.1 ${flashTimeText(flashDurationS)} at this power${CONTROL_WORDS[control]}`}
      </span>
      {highSpeedSync || clippedStops === null ? null : (
        <>
          ; the shutter cuts off{' '}
          <span data-figure={`clipped-${lightId}`}>{clippedText(clippedStops)}</span>, reckoned with
        </>
      )}
      ; <span data-figure={`frozen-${lightId}`}>{frozenText(blurCircles, motion)}</span>.
    </p>
  );
}

const CONTROL_WORDS: Readonly<Record<LightTiming['control'], string>> = {
  'tail-cut': ', its tail cut',
  voltage: ', longer than at full',
  'not-known': '',
};

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

/** What people move by is known to a factor of two. */
export function frozenText(circles: number, motion: Motion): string {
  if (circles <= 1) return `it freezes ${MOVERS[motion]}`;
  const width = circles >= 10 ? String(Math.round(circles)) : tenths(circles);
  return `${MOVERS[motion]} blurs ${width} times as wide as sharp`;
}
