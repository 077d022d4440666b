import './day-strip.css';
import { useEffect, useRef, type KeyboardEvent, type PointerEvent, type ReactNode } from 'react';

import { clockTime } from '../../core/units/civil-time.ts';
import { fullHours, heldMinute, minuteAtShare, minutesOfKey, shareOf } from './strip-time.ts';

export type StripBand = {
  readonly fromMs: number;
  readonly toMs: number;
  /** 'night' darkens the strip, 'hold' stands along its edge. */
  readonly kind: 'night' | 'hold';
};

export type DayStripProps = {
  readonly startMs: number;
  readonly endMs: number;
  /** IANA zone whose clocks are shown. */
  readonly zone: string;
  readonly minuteMs: number;
  readonly onMinute: (minuteMs: number) => void;
  readonly bands?: readonly StripBand[];
  readonly events: readonly { readonly ms: number; readonly label: string }[];
};

const MOST_HOURS_ONE_BY_ONE = 18;

/** The day with time running down; the minute is dragged, or moved by keys. */
export function DayStrip(props: DayStripProps): ReactNode {
  const { startMs, endMs, zone, minuteMs, onMinute, bands = [], events } = props;
  const range = { startMs, endMs };
  const track = useRef<HTMLDivElement>(null);
  const report = useOncePerFrame(onMinute);
  const everyHours = (endMs - startMs) / 3_600_000 > MOST_HOURS_ONE_BY_ONE ? 2 : 1;
  const top = (ms: number): string => `${100 * shareOf(ms, range)}%`;

  const takeFrom = (event: PointerEvent<HTMLDivElement>): void => {
    const box = track.current?.getBoundingClientRect();
    if (box === undefined || box.height === 0) return;
    report(minuteAtShare((event.clientY - box.top) / box.height, range));
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const minutes = minutesOfKey(event.key, event.shiftKey);
    const toMs =
      minutes !== null
        ? minuteMs + minutes * 60_000
        : event.key === 'Home'
          ? startMs
          : event.key === 'End'
            ? endMs
            : null;
    if (toMs === null) return;
    event.preventDefault();
    onMinute(heldMinute(toMs, range));
  };

  return (
    <div
      className="day-strip"
      role="slider"
      tabIndex={0}
      aria-orientation="vertical"
      aria-label="Minute of the day"
      aria-valuemin={startMs}
      aria-valuemax={endMs}
      aria-valuenow={minuteMs}
      aria-valuetext={clockTime(minuteMs, zone)}
      data-field="minute"
      onKeyDown={onKeyDown}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        takeFrom(event);
      }}
      onPointerMove={(event) => {
        if (event.currentTarget.hasPointerCapture(event.pointerId)) takeFrom(event);
      }}
    >
      <div ref={track} className="track">
        {bands.map(({ fromMs, toMs, kind }) => (
          <i
            key={`${kind} ${fromMs}`}
            className={`band ${kind}`}
            style={{ top: top(fromMs), bottom: `${100 - 100 * shareOf(toMs, range)}%` }}
          />
        ))}
        {fullHours(range, zone, everyHours).map(({ ms, text }) => (
          <span key={ms} className="hour" style={{ top: top(ms) }}>
            {text}
          </span>
        ))}
        {events.map(({ ms, label }) => (
          <span key={`${label} ${ms}`} className="event" style={{ top: top(ms) }}>
            <span>{label}</span>
          </span>
        ))}
        <output className="cursor" style={{ top: top(minuteMs) }} data-figure="minute">
          <b>{clockTime(minuteMs, zone)}</b>
        </output>
      </div>
    </div>
  );
}

/** Passes on the last value of a frame. */
function useOncePerFrame(pass: (value: number) => void): (value: number) => void {
  const waiting = useRef<{ frame: number; value: number } | null>(null);
  const latest = useRef(pass);
  useEffect(() => {
    latest.current = pass;
  }, [pass]);
  useEffect(
    () => () => {
      if (waiting.current !== null) cancelAnimationFrame(waiting.current.frame);
      waiting.current = null;
    },
    [],
  );
  return (value) => {
    if (waiting.current !== null) {
      waiting.current.value = value;
      return;
    }
    const frame = requestAnimationFrame(() => {
      const last = waiting.current?.value ?? value;
      waiting.current = null;
      latest.current(last);
    });
    waiting.current = { frame, value };
  };
}
