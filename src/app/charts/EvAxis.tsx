import type { ReactNode } from 'react';

import { evTicks, shareOfEv, type PlotFrame } from './plot-frame.ts';

/** The EV scale under a plot. */
export const EvAxis = ({
  frame,
  every,
}: {
  readonly frame: PlotFrame;
  readonly every: number;
}): ReactNode => (
  <div className="ev-axis" aria-hidden="true">
    {evTicks(frame)
      .filter((ev) => ev % every === 0)
      .map((ev) => (
        <span key={ev} style={{ left: `${100 * shareOfEv(ev, frame)}%` }}>
          {String(ev).replace('-', '−')}
        </span>
      ))}
  </div>
);
