import { Suspense, useState, type ReactNode } from 'react';

import { CompareSpots } from './lazy-sections.ts';

/** Opens the table of all spots. */
export function CompareButton(): ReactNode {
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" data-open-compare onClick={() => setOpen(true)}>
        Compare
      </button>
      {open ? (
        <Suspense fallback={null}>
          <CompareSpots onClose={() => setOpen(false)} />
        </Suspense>
      ) : null}
    </>
  );
}
