import { useLayoutEffect, useRef, type KeyboardEvent, type ReactNode } from 'react';

import { clockTime } from '../../../core/units/civil-time.ts';
import type { PlotFrame } from '../../charts/plot-frame.ts';
import { heldMinute, minutesOfKey } from '../../charts/strip-time.ts';
import { look } from '../../state/view.ts';
import { MS_PER_MIN } from './block-time.ts';
import { downBy } from './CursorLine.tsx';
import type { DayCursor } from './day-cursor.ts';

type CursorHandleProps = {
  readonly cursor: DayCursor;
  readonly frame: PlotFrame;
  /** IANA zone whose clocks it shows. */
  readonly zone: string;
};

/** The cursor's time in the gutter: what keys move and a finger drags. */
export function CursorHandle({ cursor, frame, zone }: CursorHandleProps): ReactNode {
  const track = useRef<HTMLDivElement>(null);
  const handle = useRef<HTMLDivElement>(null);
  useLayoutEffect(
    function followCursor() {
      const place = (): void => {
        const { minuteMs } = cursor.state();
        const text = clockTime(minuteMs, zone);
        if (track.current !== null) track.current.style.transform = downBy(minuteMs, frame);
        if (handle.current === null) return;
        handle.current.textContent = text;
        handle.current.ariaValueText = text;
        handle.current.ariaValueNow = String(Math.round((minuteMs - frame.startMs) / MS_PER_MIN));
      };
      place();
      return cursor.subscribe(place);
    },
    [cursor, frame, zone],
  );
  const onKeyDown = (event: KeyboardEvent): void => {
    const minutes = minutesOfKey(event.key, event.shiftKey);
    const toMs =
      minutes !== null
        ? cursor.state().minuteMs + minutes * MS_PER_MIN
        : event.key === 'Home'
          ? frame.startMs
          : event.key === 'End'
            ? frame.endMs
            : null;
    if (toMs === null) return;
    event.preventDefault();
    cursor.pass(heldMinute(toMs, frame));
  };
  const choose = (): void => {
    const { minuteMs } = cursor.state();
    cursor.rest(minuteMs);
    look({ minuteMs });
  };
  return (
    <div className="cursor-track" ref={track}>
      <div
        ref={handle}
        className="cursor-handle"
        role="slider"
        tabIndex={0}
        aria-orientation="vertical"
        aria-label="Minute of the day"
        aria-valuemin={0}
        aria-valuemax={Math.round((frame.endMs - frame.startMs) / MS_PER_MIN)}
        aria-valuenow={0}
        data-field="minute"
        data-figure="day-minute"
        onKeyDown={onKeyDown}
        onKeyUp={(event) => {
          if (minutesOfKey(event.key, event.shiftKey) !== null || /^(Home|End)$/.test(event.key))
            choose();
        }}
      />
    </div>
  );
}
