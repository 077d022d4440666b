import { useCallback, useEffect, useRef, useState, type RefObject } from 'react';

import {
  useOrientation,
  type OrientationReading,
  type OrientationState,
} from './use-orientation.ts';

/** Ten minutes at 100 readings a second. */
const MOST_READINGS = 60_000;

export type Recording = {
  readonly state: OrientationState;
  readonly startSensor: () => void;
  readonly stopSensor: () => void;
  /** The last reading, for what is pressed; shown at most once a frame. */
  readonly latest: RefObject<OrientationReading | null>;
  readonly shown: OrientationReading | null;
  readonly isRecording: boolean;
  /** How many are recorded so far. */
  readonly count: number;
  readonly recorded: readonly OrientationReading[];
  readonly record: () => void;
  readonly stop: () => void;
  readonly drop: () => void;
};

/** The phone's readings: the last one, and those kept while recording. */
export function useRecording(): Recording {
  const latest = useRef<OrientationReading | null>(null);
  const samples = useRef<OrientationReading[]>([]);
  const recording = useRef(false);
  const frame = useRef(0);
  const [shown, setShown] = useState<OrientationReading | null>(null);
  const [isRecording, setIsRecording] = useState(false);
  const [recorded, setRecorded] = useState<readonly OrientationReading[]>([]);
  const [count, setCount] = useState(0);

  const stop = useCallback((): void => {
    recording.current = false;
    setIsRecording(false);
    setRecorded([...samples.current]);
  }, []);
  const hear = useCallback(
    (reading: OrientationReading): void => {
      latest.current = reading;
      if (recording.current) {
        samples.current.push(reading);
        if (samples.current.length >= MOST_READINGS) stop();
      }
      if (frame.current !== 0) return;
      frame.current = requestAnimationFrame(() => {
        frame.current = 0;
        setShown(latest.current);
        setCount(samples.current.length);
      });
    },
    [stop],
  );
  useEffect(() => () => cancelAnimationFrame(frame.current), []);
  const { state, start, stop: stopSensor } = useOrientation(hear);
  const begin = (on: boolean): void => {
    samples.current = [];
    recording.current = on;
    setIsRecording(on);
    setRecorded([]);
    setCount(0);
  };
  return {
    state,
    startSensor: start,
    stopSensor,
    latest,
    shown,
    isRecording,
    count,
    recorded,
    record: () => begin(true),
    stop,
    drop: () => begin(false),
  };
}
