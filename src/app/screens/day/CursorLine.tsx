import { useLayoutEffect, useRef, type ReactNode } from 'react';

import type { PlotFrame } from '../../charts/plot-frame.ts';
import { shareOf } from '../../charts/strip-time.ts';
import type { DayCursor } from './day-cursor.ts';

type CursorLineProps = {
  readonly cursor: DayCursor;
  readonly frame: PlotFrame;
  readonly chosenMs: number;
};

/** A share of the plots' height, as a share of the nearest container that is as tall. */
export const downBy = (minuteMs: number, frame: PlotFrame): string =>
  `translateY(${(100 * shareOf(minuteMs, frame)).toFixed(3)}cqh)`;

/** The line across all columns, moved by its transform alone; a dotted one stays at the chosen minute. */
export function CursorLine({ cursor, frame, chosenMs }: CursorLineProps): ReactNode {
  const line = useRef<HTMLDivElement>(null);
  useLayoutEffect(
    function followCursor() {
      const place = (): void => {
        if (line.current !== null)
          line.current.style.transform = downBy(cursor.state().minuteMs, frame);
      };
      place();
      return cursor.subscribe(place);
    },
    [cursor, frame],
  );
  return (
    <>
      <div className="chosen-line" style={{ transform: downBy(chosenMs, frame) }} />
      <div className="cursor-line" ref={line} />
    </>
  );
}
