import { Suspense, useEffect, useState, type ReactNode } from 'react';

/** The first figures have the network and the processor to themselves so long. */
const AFTER_MS = 400;

/** A part below the first figures, fetched and drawn once they stand and the page has time. */
export function Later({
  when,
  children,
}: {
  readonly when: boolean;
  readonly children: ReactNode;
}): ReactNode {
  const [due, setDue] = useState(false);
  useEffect(
    function waitForTime() {
      if (!when) return undefined;
      const wait = setTimeout(() => setDue(true), AFTER_MS);
      return () => clearTimeout(wait);
    },
    [when],
  );
  return due ? <Suspense fallback={null}>{children}</Suspense> : null;
}
