import { Suspense, useEffect, useState, type ReactNode } from 'react';

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
      const wait = setTimeout(() => setDue(true), 0);
      return () => clearTimeout(wait);
    },
    [when],
  );
  return due ? <Suspense fallback={null}>{children}</Suspense> : null;
}
