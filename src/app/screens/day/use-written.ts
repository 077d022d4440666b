import { useEffect, useState } from 'react';

import type { BlockTime } from './block-time.ts';

const GIVEN_UP_MS = 1500;

/** What was just written, until the shoot says so too or refuses it: a block does not jump back in between. */
export function useWritten(
  saved: BlockTime,
): readonly [written: BlockTime | null, setWritten: (block: BlockTime) => void] {
  const [written, setWritten] = useState<BlockTime | null>(null);
  const arrived =
    written !== null &&
    written.startMs === saved.startMs &&
    written.durationMin === saved.durationMin;
  if (arrived) setWritten(null);
  useEffect(
    function forgetWhenRefused() {
      if (written === null) return undefined;
      const timer = setTimeout(() => setWritten(null), GIVEN_UP_MS);
      return () => clearTimeout(timer);
    },
    [written],
  );
  return [written, setWritten];
}
