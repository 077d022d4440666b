import type { ReactNode } from 'react';

import type { LightTiming } from '../../../core/plan/light-timing.ts';
import type { Motion } from '../../../core/plan/setup-schema.ts';
import { flashTimeText } from '../../ui/timing-text.ts';
import { clippedText, CONTROL_WORDS, frozenText } from './timing-words.ts';

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
