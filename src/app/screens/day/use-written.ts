import { useEffect, useState } from 'react';

import type { BlockTime } from './block-time.ts';

const GIVEN_UP_MS = 1500;

type Written = { readonly block: BlockTime; readonly over: BlockTime };

/** What was just written, until the shoot says otherwise or refuses it: a block does not jump back in between. */
export function useWritten(
  saved: BlockTime,
): readonly [written: BlockTime | null, setWritten: (block: BlockTime) => void] {
  const [written, setWritten] = useState<Written | null>(null);
  useEffect(
    function forgetWhenRefused() {
      if (written === null) return undefined;
      const timer = setTimeout(() => setWritten(null), GIVEN_UP_MS);
      return () => clearTimeout(timer);
    },
    [written],
  );
  const stands =
    written !== null &&
    written.over.startMs === saved.startMs &&
    written.over.durationMin === saved.durationMin;
  return [stands ? written.block : null, (block) => setWritten({ block, over: saved })];
}
