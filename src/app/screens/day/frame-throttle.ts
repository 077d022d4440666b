import { useEffect, useState } from 'react';

type Throttle<Value> = {
  /** The last value of a frame is passed on in the next. */
  readonly put: (value: Value) => void;
  /** Forgets what waits. */
  readonly drop: () => void;
};

/** At most one value a frame. */
export function frameThrottle<Value>(pass: (value: Value) => void): Throttle<Value> {
  let frame: number | null = null;
  let last: Value;
  return {
    put: (value) => {
      last = value;
      frame ??= requestAnimationFrame(() => {
        frame = null;
        pass(last);
      });
    },
    drop: () => {
      if (frame !== null) cancelAnimationFrame(frame);
      frame = null;
    },
  };
}

/** One throttle for a component; `pass` is taken once and must not depend on what is drawn. */
export function useFrameThrottle<Value>(pass: (value: Value) => void): Throttle<Value> {
  const [throttle] = useState(() => frameThrottle(pass));
  useEffect(() => throttle.drop, [throttle]);
  return throttle;
}
