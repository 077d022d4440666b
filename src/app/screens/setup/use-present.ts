import { useEffect, useState } from 'react';

import { useServices } from '../../state/services.ts';

const EVERY_MS = 5_000;

/** The real clock, a few seconds old at most. */
export function usePresent(): number {
  const { nowMs } = useServices();
  const [presentMs, setPresentMs] = useState(nowMs);
  useEffect(
    function followClock() {
      const timer = setInterval(() => setPresentMs(nowMs()), EVERY_MS);
      return () => clearInterval(timer);
    },
    [nowMs],
  );
  return presentMs;
}
